/**
 * What a key is written with when it is chosen: the value that works best where that can be told,
 * else the schema's example. As block YAML without indentation of its own; null where nothing can
 * stand there yet without a new error (a rig, before there are any).
 */

import { nameOf } from '../../plan/entry-id.ts';
import type { DefName } from '../../plan/generated/names.ts';
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Shot } from '../../plan/generated/types.ts';
import type { Shape } from '../../plan/shape.ts';
import { significant } from '../../say/say.ts';
import { keyed } from '../../text/layout-text.ts';
import { measureAdvice } from '../measure.ts';
import { otherBenchRow } from './bench-rows.ts';
import { checksFor } from './checks.ts';
import { newEntry as entryFor, type NewEntry } from './new-entry.ts';
import { partsOf } from './rig-parts.ts';
import { SETTINGS } from './settings.ts';
import { valuesAt } from './values.ts';
import { below, shapeOf, type Where } from './where.ts';

export function defaultAt(where: Where): string | null {
  const shape = shapeOf(where);
  switch (shape.kind) {
    case 'text':
      return where.place.entry === 'use' ? (valuesAt(where)[0]?.text ?? null) : exampleOf(where);
    case 'ref':
      return refAt(where, shape);
    case 'list':
      return listAt(where);
    case 'map':
      return mapAt(where, shape.item);
    case 'record':
      return recordAt(where, shape.of);
    case 'word-or-record':
      return shape.words[0] ?? null;
    default:
      return scalarAt(where);
  }
}

const exampleOf = ({ meaning }: Where): string | null => meaning?.keyShape.examples[0] ?? null;

function scalarAt(where: Where): string | null {
  const { meaning, shot, place } = where;
  const key = meaning?.key as keyof Shot;
  if (shot && meaning?.of === 'shot' && place.path.length === 1)
    return SETTINGS[key]?.first(shot) ?? exampleOf(where);
  // What a rule's findings are made must not make errors of them by itself.
  if (key === ('severity' as string)) return 'note';
  return valuesAt(where)[0]?.text ?? exampleOf(where);
}

function refAt(where: Where, { groups }: Shape & { kind: 'ref' }): string | null {
  const [first] = valuesAt(where);
  if (first) return first.text;
  // Before there is a rig nobody knows its body's settings: any name may be one.
  const isOpen = groups.includes('recordings') && where.shot?.now.bench.body === undefined;
  return isOpen ? exampleOf(where) : null;
}

function listAt(where: Where): string | null {
  const { key } = where.meaning ?? { key: '' };
  if (key === 'parts') return partsOf(where);
  if (key === 'every-shot') {
    const checks = checksFor(where);
    const called = checks.filter(({ rank }) => rank < 20);
    return (called.length > 0 ? called : checks.slice(0, 5))
      .map(({ text }) => `- ${text}`)
      .join('\n');
  }
  // What somebody says of a shot nobody can guess: the example is written over.
  if (key === 'review') return exampleOf(where);
  const item = below(where, 0);
  const first = item && defaultAt(item);
  if (key === 'bench') return first === null ? null : `- ${first}`;
  return first === null ? null : `[${first}]`;
}

function mapAt(where: Where, item: Shape): string | null {
  const { key } = where.meaning ?? { key: '' };
  const { shot } = where;
  if (key === 'preflight' || key === 'once') {
    const checks = checksFor(where);
    const called = checks.filter(({ rank }) => rank < 10).slice(0, shot ? 20 : 1);
    const chosen = called.length > 0 ? called : checks.slice(0, 1);
    return chosen.map(({ text }) => `${text}: open`).join('\n');
  }
  if (key === 'allow' || key === 'severity') return exampleOf(where);
  if (key === 'relight') {
    const [light] = where.context.analysis.names.namesIn(where.file, 'lights');
    return light === undefined ? null : `{ ${light}: { dimmed: 1 stop } }`;
  }
  if (key === 'clips') {
    const [first] = where.context.analysis.names.namesIn(where.file, 'shots');
    return first === undefined ? null : `${first}:\n  - { file: media/0001.mp4, verdict: keep }`;
  }
  if (item.kind !== 'record') return exampleOf(where);
  const entry = newEntry(where, item.of);
  return entry ? keyed(entry.name, entry.body, 0, 2, '\n') : null;
}

/** A new entry of a kind, filled in; null where it would have to name what there is none of. */
export const newEntry = (
  where: Where,
  of: DefName,
  taken: readonly string[] = [],
): NewEntry | null => entryFor(where, of, pairsOf, taken);

/** What is worth saying first, of records that are no entries. */
const FIRST_KEYS: Partial<Record<DefName, readonly string[]>> = {
  deliver: ['resolution', 'rate', 'duration'],
  'iso-limits': ['lowest', 'highest', 'usable-to'],
  closest: ['from-sensor', 'magnification'],
  'bench-row': ['with', 'ring', 'field'],
  'light-bench-row': ['distance', 'illuminance'],
  'body-bench-row': ['set', 'found'],
  'converter-bench-row': ['field', 'field-without'],
  'close-up-bench-row': ['working-distance'],
  placement: ['distance', 'elevation', 'azimuth'],
  reading: ['aperture', 'shutter', 'iso', 'through'],
  support: ['head', 'foot'],
  move: ['kind', 'speed'],
  take: ['duration', 'count', 'settle'],
  stack: ['with', 'settle'],
  'check-state': ['done', 'by'],
  allowance: ['because'],
  'edit-music': ['tempo', 'first-beat', 'bar'],
  relight: ['dimmed'],
  clip: ['file', 'verdict'],
};

const KIT_GROUPS = ['bodies', 'lenses', 'heads'];

/** What is worked out now, to be written over by what the bench says; of a rig its mass. */
function measuredAt({ shot }: Where): string {
  const field = shot?.now.figures.fieldMm;
  const width = field?.known ? field.value[0] : Number.NaN;
  if (Number.isFinite(width)) return `{ field: ${significant(width)} mm }`;
  return `{ mass: ${SHAPES.measured.keys.mass?.examples[0] ?? '1 kg'} }`;
}

function recordAt(where: Where, of: DefName): string | null {
  if (of === 'measured') return measuredAt(where);
  if (of === 'bench-row') {
    const row = benchRowAt(where);
    if (row !== null) return row;
  }
  const other = otherBenchRow(where, of);
  if (other !== null) return other;
  const keys = FIRST_KEYS[of];
  if (keys) return `{ ${pairsOf(where, keys).join(', ')} }`;
  if (of === 'kit') return pairsOf(where, KIT_GROUPS).join('\n');
  if (of === 'edit') return pairsOf(where, ['music']).join('\n');
  if (of === 'preflight') return pairsOf(where, ['every-shot']).join('\n');
  return newEntry(where, of)?.body ?? exampleOf(where);
}

/** Keys with their values, those left out that nothing can be written for. */
function pairsOf(where: Where, keys: readonly string[]): string[] {
  return keys.flatMap((key) => {
    const at = below(where, key);
    const value = at && defaultAt(at);
    return value === null ? [] : [keyed(key, value, 0, 2, '\n')];
  });
}

/** Any marked f-number does: how far light falls off is the same at all of them. */
const MARKED = 8;

/**
 * A row of a lens's bench that is worth measuring next. What is calculated now stands where the number goes, to be written over by what the ruler says;
 * null: no shot would be surer for a row.
 */
function benchRowAt({ context, file, place }: Where): string | null {
  const [advice] = measureAdvice(context, file, nameOf('lenses', place.entry));
  const next = advice?.next;
  if (!next) return null;
  const value =
    next.measure === 'effective-f-number'
      ? `${significant(MARKED * 2 ** (next.expected / 2))}, marked: f/${MARKED}`
      : `${significant(next.expected)} mm`;
  return `{ with: [${next.with.join(', ')}], ring: ${next.ring}, ${next.measure}: ${value} }`;
}
