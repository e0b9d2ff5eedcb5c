/** What a change of a plan changes: in its words, and in what follows from them. */

import type {
  ComparedFinding,
  ComparedPlan,
  ComparedShot,
  Comparison,
  EntryChange,
  FieldChange,
  FieldTexts,
  FindingsChange,
  PlanFinding,
  ShotChange,
} from '../../api/compared.ts';
import { inOneGo, type Steps } from '../../engine/steps.ts';
import { entryAt } from '../../plan/entry-id.ts';
import { editChanges } from './edit.ts';
import { renamed, shownText } from './field-texts.ts';
import { isAlike, shotFigureChanges } from './figures.ts';
import { renamesIn } from './renames.ts';

const SHOTS = 'shots';

export const comparePlans = (before: ComparedPlan, after: ComparedPlan): Comparison =>
  inOneGo(comparing(before, after));

/** The same, shot by shot. */
export function* comparing(before: ComparedPlan, after: ComparedPlan): Steps<Comparison> {
  const renames = new Map<string, ReadonlyMap<string, string>>();
  // What others refer to comes first: kit, then what is made of it, then the shots.
  const sections = sectionsOf(before, after);
  const rename = (name: string): string => {
    for (const section of renames.values()) {
      const now = section.get(name);
      if (now !== undefined) return now;
    }
    return name;
  };
  for (const section of sections)
    renames.set(section, renamesIn(entriesIn(before, section), entriesIn(after, section), rename));
  const changes = (section: string) =>
    entryChanges(
      entriesIn(before, section),
      entriesIn(after, section),
      renames.get(section) ?? new Map(),
      rename,
    );
  const ownChanges = changes(SHOTS);
  yield;
  const came = renames.get(SHOTS) ?? new Map();
  const shots = yield* shotChanges(before, after, ownChanges, came, rename);
  const all = new Set([
    ...after.shots.keys(),
    ...[...before.shots.keys()].map((name) => renames.get(SHOTS)?.get(name) ?? name),
  ]);
  return {
    entries: sections
      .filter((section) => section !== SHOTS)
      .flatMap((section) => changes(section).map((change) => inSection(section, change))),
    shots,
    sameShots: all.size - shots.length,
    edit: editChanges(before.edit, after.edit),
    findings: findingsChange(before.findings, after.findings, rename),
  };
}

/** Nothing that a plan says is different, nor anything that follows. */
export const isSame = ({ entries, shots, edit, findings }: Comparison): boolean =>
  entries.length + shots.length + edit.length === 0 && !hasFindings(findings);

const hasFindings = ({ gone, new: come, changed }: FindingsChange): boolean =>
  gone.length + come.length + changed.length > 0;

const entriesIn = (plan: ComparedPlan, section: string): ReadonlyMap<string, FieldTexts> =>
  plan.sections.get(section) ?? new Map();

const ORDER = ['', 'kit', 'lights', 'subjects', 'rigs', SHOTS, 'edit', 'clips'];

function sectionsOf(before: ComparedPlan, after: ComparedPlan): readonly string[] {
  const place = (section: string): number => {
    const at = ORDER.indexOf(section.split('/')[0] ?? '');
    return at < 0 ? ORDER.length : at;
  };
  return [...new Set([...before.sections.keys(), ...after.sections.keys()])].sort(
    (a, b) => place(a) - place(b) || (a < b ? -1 : 1),
  );
}

const inSection = (section: string, change: EntryChange): EntryChange =>
  section === '' ? change : { ...change, entry: entryAt(section, change.entry) };

function entryChanges(
  before: ReadonlyMap<string, FieldTexts>,
  after: ReadonlyMap<string, FieldTexts>,
  renames: ReadonlyMap<string, string>,
  rename: (name: string) => string,
): readonly EntryChange[] {
  const came = new Map([...renames].map(([old, name]) => [name, old]));
  const NOTHING: FieldTexts = new Map();
  const there = [...after].flatMap(([name, texts]): EntryChange[] => {
    const old = came.get(name);
    const was = before.get(old ?? name);
    if (!was) return [{ entry: name, state: 'new', fields: fieldChanges(NOTHING, texts, rename) }];
    const fields = fieldChanges(was, texts, rename);
    return fields.length > 0 || old !== undefined
      ? [{ entry: name, state: 'changed', ...(old !== undefined && { before: old }), fields }]
      : [];
  });
  const gone = [...before].flatMap(([name, texts]): EntryChange[] =>
    after.has(name) || renames.has(name)
      ? []
      : [{ entry: name, state: 'gone', fields: fieldChanges(texts, NOTHING, rename) }],
  );
  return [...there, ...gone];
}

function fieldChanges(
  before: FieldTexts,
  after: FieldTexts,
  rename: (name: string) => string,
): readonly FieldChange[] {
  // Under its new name; shown with the one that it had.
  const old = new Map([...before].map(([path, text]) => [renamed(path, rename), text]));
  const paths = [...new Set([...old.keys(), ...after.keys()])].sort();
  return paths.flatMap((path): FieldChange[] => {
    const [was, is] = [old.get(path), after.get(path)];
    if (was === undefined ? is === undefined : renamed(was, rename) === is) return [];
    const shown = (text: string | undefined) => (text === undefined ? null : shownText(text));
    return [{ path: shownText(path), before: shown(was), after: shown(is) }];
  });
}

const NO_SHOT: ComparedShot = { figures: { notKnown: {} }, findings: [], review: [] };

function* shotChanges(
  before: ComparedPlan,
  after: ComparedPlan,
  changes: readonly EntryChange[],
  renames: ReadonlyMap<string, string>,
  rename: (name: string) => string,
): Steps<readonly ShotChange[]> {
  const own = new Map(changes.map((change) => [change.entry, change]));
  const came = new Map([...renames].map(([old, name]) => [name, old]));
  const names = [
    ...after.shots.keys(),
    ...[...before.shots.keys()].filter((name) => !after.shots.has(name) && !renames.has(name)),
  ];
  const changed: ShotChange[] = [];
  for (const name of names) {
    yield;
    const change = own.get(name);
    const was = before.shots.get(came.get(name) ?? name);
    const is = after.shots.get(name);
    const state = change?.state ?? (was ? (is ? 'changed' : 'gone') : 'new');
    const isBoth = state === 'changed';
    const shot: ShotChange = {
      shot: name,
      state,
      ...(change?.before !== undefined && { before: change.before }),
      fields: isBoth ? (change?.fields ?? []) : [],
      figures: isBoth ? shotFigureChanges(was ?? NO_SHOT, is ?? NO_SHOT) : [],
      findings: findingsChange((was ?? NO_SHOT).findings, (is ?? NO_SHOT).findings, rename),
    };
    const isQuiet =
      isBoth &&
      shot.before === undefined &&
      shot.fields.length + shot.figures.length === 0 &&
      !hasFindings(shot.findings);
    if (!isQuiet) changed.push(shot);
  }
  return changed;
}

/**
 * First what is found again as it was, then what its rule still finds: at the same place with other
 * facts, or elsewhere.
 */
function findingsChange(
  before: readonly PlanFinding[],
  after: readonly PlanFinding[],
  rename: (name: string) => string,
): FindingsChange {
  const same = (a: unknown, b: unknown): boolean => isAlike(a, b, rename);
  const isStill = (a: PlanFinding, b: PlanFinding): boolean =>
    a.rule === b.rule && a.severity === b.severity;
  const isThere = (a: PlanFinding, b: PlanFinding): boolean =>
    isStill(a, b) && same(a.place, b.place);
  let [gone, come] = [before, after];
  const pairs = (alike: typeof isStill) => {
    const found = paired(gone, come, alike);
    gone = found.gone;
    come = found.come;
    return found.pairs;
  };
  pairs((a, b) => isThere(a, b) && same(a.facts, b.facts));
  const changed = [...pairs(isThere), ...pairs(isStill)].map(([was, is]) => ({
    before: said(was),
    after: said(is),
  }));
  return { gone: gone.map(said), new: come.map(said), changed };
}

const said = ({ rule, severity, what }: PlanFinding): ComparedFinding => ({ rule, severity, what });

/** Each of `come` with the first of `gone` that is alike; what is left of both. */
function paired<T>(
  gone: readonly T[],
  come: readonly T[],
  alike: (gone: T, come: T) => boolean,
): {
  readonly gone: readonly T[];
  readonly come: readonly T[];
  readonly pairs: readonly (readonly [T, T])[];
} {
  const left = [...gone];
  const pairs: [T, T][] = [];
  const unpaired = come.filter((one) => {
    const at = left.findIndex((old) => alike(old, one));
    if (at >= 0) pairs.push([left.splice(at, 1)[0]!, one]);
    return at < 0;
  });
  return { gone: left, come: unpaired, pairs };
}
