/** A plan, and all that it uses, made ready to be compared. */

import type { ComparedPlan, ComparedShot, FieldTexts, PlanFinding } from '../api/compared.ts';
import type { LocatedFinding } from '../api/located.ts';
import type { Steps } from '../engine/steps.ts';
import { boundsOfNamed } from '../figures/bounds-json.ts';
import { figuresJson } from '../figures/contract.ts';
import { editJson } from '../figures/edit-contract.ts';
import type { UncertainShot } from '../figures/uncertain.ts';
import type { Change } from '../figures/width.ts';
import { above, keyOfEntry, keysOf, nameOf, plainId } from '../plan/entry-id.ts';
import type { Field } from '../plan/field.ts';
import { SHAPES } from '../plan/generated/shapes.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import { entryTexts, keyTexts } from '../report/compare/field-texts.ts';
import { commentsOf } from '../report/review.ts';
import type { Finding } from '../rules/rule.ts';
import type { Context } from '../workspace/context.ts';
import { shotAt } from './sheet.ts';

/** Where a plan's files lie is not what it says. */
const NOT_COMPARED: ReadonlySet<string> = new Set(['use']);

const CLIPS = { kind: 'list', item: { kind: 'record', of: 'clip' } } as const;

/**
 * @param findings those of every file that the plan reaches
 * @param originOf what a located one was made from
 */
export function* comparedSteps(
  context: Context,
  file: FileId,
  findings: readonly LocatedFinding[],
  originOf: (located: LocatedFinding) => Finding | undefined,
): Steps<ComparedPlan> {
  const { analysis } = context;
  const sections = new Map<string, Map<string, FieldTexts>>();
  for (const reached of analysis.names.reaches(file))
    for (const { id } of analysis.entries.list(reached)) {
      yield;
      // A plan's own keys are its own; what it uses brings in entries.
      const texts = textsOf(context, reached, id, reached === file);
      if (texts === null) continue;
      const [section, name] = placeOf(id);
      const entries = sections.get(section) ?? new Map<string, FieldTexts>();
      sections.set(section, entries);
      if (!entries.has(name)) entries.set(name, texts);
    }
  const byShot = new Map<string, PlanFinding[]>();
  const others: PlanFinding[] = [];
  const names = new Set(analysis.shots(file).map((id) => nameOf('shots', id)));
  for (const located of findings) {
    const { rule, severity, what, shot, file: at, range } = located;
    if (severity === 'hint') continue;
    const name = shot ?? (at === file ? shotAt(context, file, range.start) : null);
    const origin = originOf(located);
    const finding = { rule, severity, what, place: placeSteps(origin), facts: origin?.facts };
    if (name === null || !names.has(name)) others.push(finding);
    else byShot.set(name, [...(byShot.get(name) ?? []), finding]);
  }
  const shots = new Map<string, ComparedShot>();
  for (const id of analysis.shots(file)) {
    const figures = analysis.figures(file, id);
    const uncertain = analysis.uncertain(file, id);
    const name = nameOf('shots', id);
    shots.set(name, {
      figures: figures ? figuresJson(figures) : { notKnown: {} },
      ...(uncertain && { sure: sureOf(uncertain) }),
      findings: byShot.get(name) ?? [],
      review: commentsOf(analysis.bench(file, id)?.fields.review),
    });
    yield;
  }
  return {
    sections,
    shots,
    edit: editJson(analysis.edit(file)),
    findings: others,
  };
}

function sureOf(uncertain: UncertainShot): NonNullable<ComparedShot['sure']> {
  const end = (change: Change): unknown => change.value;
  return {
    inputs: JSON.stringify(
      uncertain.widths.map(({ key, of, low, high, direction }) => [
        key,
        of,
        end(low),
        end(high),
        direction,
      ]),
    ),
    bounds: (figure) => boundsOfNamed(uncertain, figure),
  };
}

/** Of a finding of the text none: where its chunk lies changes with every line above it. */
const placeSteps = (finding: Finding | undefined): readonly string[] =>
  !finding || finding.at.span ? [] : [...keysOf(finding.at.entry), ...finding.at.path.map(String)];

const placeOf = (id: EntryId): readonly [section: string, name: string] => [
  above(id) ?? '',
  keyOfEntry(id),
];

function textsOf(
  { analysis }: Context,
  file: FileId,
  id: EntryId,
  isOwn: boolean,
): FieldTexts | null {
  if (id !== plainId(id)) return null;
  const lowered = analysis.entries.lowered(file, id);
  if (!lowered || lowered.value === undefined) return null;
  const { kind, def, value } = lowered;
  if (kind.kind === 'clips') return isOwn ? keyTexts(CLIPS, value as Field<unknown>) : null;
  if (kind.kind === 'key') {
    const shape = SHAPES[kind.def].keys[kind.key]?.shape;
    if (!isOwn || !shape || NOT_COMPARED.has(kind.key)) return null;
    return keyTexts(shape, value as Field<unknown>);
  }
  return def === null ? null : entryTexts(def, value as object);
}
