/** A shot laid out again with some values changed: what a figure would be at the end of a width. */

import { entryAt } from '../plan/entry-id.ts';
import type { Field } from '../plan/field.ts';
import type { Place } from '../plan/place.ts';
import type { Bench } from './bench.ts';
import type { Constants, EntryStands } from './constants.ts';
import { fittedEntry } from './fitted-entry.ts';
import type { Named } from './named.ts';
import { ofLayout, readBench } from './read-bench.ts';
import type { PlanReader } from './reader.ts';
import { layOutRig, type RigLayout } from './rig-layout.ts';
import { type Change, isRigsPlace } from './width.ts';

type FieldChange = Extract<Change, { kind: 'field' }>;

/** The bench of the same shot where these values stand otherwise. */
export function changedBench(bench: Bench, changes: readonly Change[]): Bench {
  const { source } = bench;
  const fields = changes.filter((change) => change.kind === 'field');
  const constants = constantsOf(source.reader, changes);
  const reader = changedReader(source.reader, fields, constants);
  // Nothing is read otherwise for the constants of light alone, but exposures on a light's bench.
  if (
    fields.length === 0 &&
    isSameLens(constants, source.reader.constants) &&
    isSameBefore(constants, source.reader.constants) &&
    constants.entryStands === source.reader.constants.entryStands &&
    !(constants.incident !== source.reader.constants.incident && hasFittedLight(bench))
  )
    return { ...bench, constants, source: { ...source, reader } };
  // How a lens stands changes the layout of its rig, and nothing else is read by it.
  if (
    bench.rig &&
    changes.every(({ kind }) => kind === 'lens-axis') &&
    constants.irisKeepsSize === source.reader.constants.irisKeepsSize
  )
    return {
      ...bench,
      constants,
      source: { ...source, reader },
      ...ofLayout(reader.rig(bench.rig), bench.filters),
    };
  return readBench(reader, changedEntry(source.shot, fields));
}

/** Whether sheets and diffusers take as much: that is read with the lights. */
const isSameBefore = (one: Constants, other: Constants): boolean =>
  one.sheetStops === other.sheetStops && one.diffuserStops === other.diffuserStops;

function constantsOf({ constants }: PlanReader, changes: readonly Change[]): Constants {
  const changed = changes.flatMap((change) =>
    change.kind === 'constant' ? [[change.key, change.value] as const] : [],
  );
  const stands = [...(constants.lensStands ?? [])];
  for (const change of changes) if (change.kind === 'lens-axis') stands[change.axis] = change.value;
  const entryStands = changes.reduce(standing, constants.entryStands);
  return changed.length === 0 && stands.length === 0 && entryStands === constants.entryStands
    ? constants
    : {
        ...constants,
        ...Object.fromEntries(changed),
        ...(stands.length > 0 && { lensStands: Array.from(stands, (stand) => stand ?? 0) }),
        entryStands,
      };
}

function standing(all: readonly EntryStands[], change: Change): readonly EntryStands[] {
  if (change.kind !== 'entry-axis') return all;
  const { file, entry, axis, value } = change;
  const isIt = (one: EntryStands): boolean => one.file === file && one.entry === entry;
  const stands = [...(all.find(isIt)?.stands ?? [])];
  stands[axis] = value;
  const whole = { file, entry, stands: Array.from(stands, (stand) => stand ?? 0) };
  return [...all.filter((one) => !isIt(one)), whole];
}

const hasFittedLight = ({ lights }: Bench): boolean =>
  lights.known && lights.value.some(({ fields }) => fields.bench.state === 'known');

/** Whether a lens does the same by both. */
const isSameLens = (a: Constants, b: Constants): boolean =>
  a.irisKeepsSize === b.irisKeepsSize &&
  JSON.stringify(a.lensStands) === JSON.stringify(b.lensStands);

function changedReader(
  reader: PlanReader,
  changes: readonly FieldChange[],
  constants: Constants,
): PlanReader {
  const ofRig = changes.filter(({ at }) => isRigsPlace(at));
  const isRigAsItWas =
    isSameLens(constants, reader.constants) &&
    ofRig.length === 0 &&
    constants.entryStands === reader.constants.entryStands;
  const changed: PlanReader = {
    ...reader,
    asWritten: reader.asWritten ?? reader,
    constants,
    find: (group, name) => {
      const entry = reader.find(group, name);
      return entry && changedEntry(fittedEntry(entry, constants), changes);
    },
    rig: (rig) => {
      const asItWas = reader.rig(rig);
      return isRigAsItWas
        ? asItWas
        : rememberedRig(asItWas, constants, ofRig, () => layOutRig(changed, rig));
    },
    plan: (key) =>
      changes
        .filter(({ at }) => at.entry === entryAt(key) && at.file === reader.file)
        .reduce<Field<unknown>>(
          (field, { at, value }) => withValue(field, at.path, value),
          reader.plan(key),
        ) as ReturnType<typeof reader.plan<typeof key>>,
  };
  return changed;
}

/** What a rig becomes by changes of it, for all the shots that use it. */
const changedRigs = new WeakMap<RigLayout, Map<string, RigLayout>>();
const MOST_KEPT = 64;

function rememberedRig(
  asItWas: RigLayout,
  { irisKeepsSize, lensStands, entryStands }: Constants,
  changes: readonly FieldChange[],
  layOut: () => RigLayout,
): RigLayout {
  let kept = changedRigs.get(asItWas);
  if (!kept) {
    kept = new Map();
    changedRigs.set(asItWas, kept);
  }
  const key = JSON.stringify([irisKeepsSize, lensStands, entryStands, changes]);
  let layout = kept.get(key);
  if (!layout) {
    layout = layOut();
    if (kept.size >= MOST_KEPT) kept.clear();
    kept.set(key, layout);
  }
  return layout;
}

function changedEntry<T>(entry: Named<T>, changes: readonly FieldChange[]): Named<T> {
  const own = changes.filter(({ at }) => at.entry === entry.entry && at.file === entry.file);
  if (own.length === 0) return entry;
  const fields = { ...(entry.fields as Readonly<Record<string, Field<unknown>>>) };
  for (const { at, value } of own) {
    const [key, ...rest] = at.path;
    const field = fields[String(key)];
    if (field) fields[String(key)] = withValue(field, rest, value);
  }
  return { ...entry, fields: fields as T };
}

/** The field with another value below it; where nothing stands on the way there, as it was. */
function withValue(field: Field<unknown>, path: Place['path'], value: unknown): Field<unknown> {
  const [step, ...rest] = path;
  if (step === undefined) return { state: 'known', value, at: field.at };
  if (field.state !== 'known') return field;
  const inner = field.value;
  if (inner instanceof Map) {
    const item = inner.get(step) as Field<unknown> | undefined;
    return item
      ? { ...field, value: new Map(inner).set(step, withValue(item, rest, value)) }
      : field;
  }
  if (Array.isArray(inner)) {
    const items = inner as readonly Field<unknown>[];
    const changed = items.map((item, index) =>
      index === step ? withValue(item, rest, value) : item,
    );
    return { ...field, value: changed };
  }
  const record = inner as Readonly<Record<string, Field<unknown>>>;
  const item = record[String(step)];
  return item
    ? { ...field, value: { ...record, [String(step)]: withValue(item, rest, value) } }
    : field;
}
