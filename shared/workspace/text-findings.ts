/** Findings about the text, the shape and the names of one entry, or of one chunk. */

import { CONSTANTS } from '../figures/constants.ts';
import { layOutParts } from '../figures/parts.ts';
import { keyOfEntry, plainId } from '../plan/entry-id.ts';
import type { Field } from '../plan/field.ts';
import type { GroupName } from '../plan/generated/names.ts';
import { SHAPES } from '../plan/generated/shapes.ts';
import type { Day, Preflight, Rig, Shot } from '../plan/generated/types.ts';
import { checkDay, checkKeys } from '../plan/key-checks.ts';
import { NAME } from '../plan/lower-scalar.ts';
import { asName, nearest } from '../plan/nearest.ts';
import type { EntryId, FileId, Place } from '../plan/place.ts';
import type { ShapeProblem } from '../plan/problem.ts';
import { type Reference, referencesAt, referencesIn } from '../plan/references.ts';
import { notAName } from '../plan/shape-problems.ts';
import { checkMeant, ruleMeant } from '../rules/other-names.ts';
import { RESERVED_NAMES, RULE_NAMES, ruleNamed } from '../rules/registry.ts';
import { rigProblems } from '../rules/rig-parts.ts';
import type { Finding, Related, Severity } from '../rules/rule.ts';
import { nodeAt, pairAt } from '../text/path.ts';
import type { TextProblem, Wording } from '../text/problem.ts';
import type { Span } from '../text/tree.ts';
import { anyOf } from '../words/listed.ts';
import { message } from '../words/message.ts';
import type { Entries, Lowered } from './entries.ts';
import { type EntryKind, isShared, nounOf } from './entry-kinds.ts';
import type { Names } from './names.ts';

/** Of what is written: it has its fixes with it. */
export type TextFinding = Finding<Wording>;

const severityOf = (rule: string): Severity => ruleNamed(rule)?.severity ?? 'error';

/** What is wrong with a chunk's text itself. */
export function chunkFindings(entries: Entries, file: FileId, chunk: EntryId): TextFinding[] {
  const { problems } = entries.parsed(file, chunk);
  const told = isTabbed(problems) ? problems.filter(({ code }) => code === TAB) : problems;
  const placed = (span: Span): Place => ({ file, entry: chunk, path: [], span });
  return told.map(({ related, ...problem }) =>
    findingOf(
      problem,
      placed(problem.at),
      related ? [{ at: placed(related), words: message`the first one` }] : [],
    ),
  );
}

const TAB = 'tab';

/** Where a tab indents, nothing is sure of what stands below what: the tab is the one thing to tell. */
const isTabbed = (problems: readonly TextProblem[]): boolean =>
  problems.some(({ code }) => code === TAB);

const findingOf = (
  { rule, code, args, fixes }: TextProblem | ShapeProblem,
  at: Place,
  related: readonly Related[],
): TextFinding => ({
  rule,
  severity: severityOf(rule),
  at,
  facts: { code, args },
  related,
  fixes,
});

export const shapeFinding = (
  problem: ShapeProblem,
  related: readonly Related[] = [],
): TextFinding => findingOf(problem, problem.at, related);

/** What is wrong with an entry's shape and names. */
export function entryFindings(
  entries: Entries,
  names: Names,
  file: FileId,
  id: EntryId,
): TextFinding[] {
  const lowered = entries.lowered(file, id);
  if (!lowered) return [];
  const { kind } = lowered;
  const source = entries.source(file, id);
  if (source && isTabbed(entries.parsed(file, source.chunk).problems)) return [];
  const found = lowered.problems
    .filter((problem) => !saidByText(entries, file, problem))
    .map((problem) => shapeFinding(problem));
  // What is no record at all has no keys to weigh against one another.
  const isRecord = !lowered.problems.some(
    ({ at, rule }) => at.path.length === 0 && rule === 'wrong-value',
  );
  if (lowered.def !== null && kind.kind === 'entry' && isRecord)
    found.push(...checkKeys(lowered.def, lowered.value).map((problem) => shapeFinding(problem)));
  if (kind.kind === 'key' && kind.key === 'day')
    found.push(...checkDay(lowered.value as Field<Day>).map((problem) => shapeFinding(problem)));
  const misnamed = kind.kind === 'entry' ? badName(kind, { file, entry: id, path: [] }) : undefined;
  if (misnamed) found.push(misnamed);
  for (const name of ruleNamesIn(lowered)) {
    const unknown = unknownRule(name);
    if (unknown) found.push(unknown);
  }
  for (const name of checkNamesIn(lowered)) {
    const other = otherCheck(name);
    if (other) found.push(other);
  }
  for (const reference of [...referencesOf(lowered), ...shotOfClips(lowered, file, id)]) {
    const unknown = unknownName(entries, names, file, reference);
    if (unknown) found.push(unknown);
  }
  if (lowered.def === 'rig') {
    const parts = layOutParts(
      { file, constants: CONSTANTS, find: (group, name) => names.find(file, group, name) },
      { name: plainId(id), group: 'rigs', file, entry: id, fields: lowered.value as Rig },
    );
    const at: Place = { file, entry: id, path: ['parts'], part: 'key' };
    found.push(...rigProblems(parts, at).map((problem) => shapeFinding(problem)));
  }
  if (id !== plainId(id)) found.push(duplicateEntry(file, id));
  return found;
}

/** A name that nothing could refer to. */
function badName({ name, home }: Extract<EntryKind, { kind: 'entry' }>, entry: Place) {
  if (NAME.test(name)) return undefined;
  const label = { key: name, title: SHAPES[home.def].title, examples: [] };
  return shapeFinding(notAName({ ...entry, part: 'key' }, label, name, asName(name)));
}

/** The names of rules that an entry accepts or sets severities of, where they stand. */
function ruleNamesIn({ kind, def, value }: Lowered): { name: string; at: Place }[] {
  const byRule = kind.kind === 'key' && (kind.key === 'allow' || kind.key === 'severity');
  const map = def === 'shot' ? (value as Shot).allow : byRule ? value : undefined;
  const field = map as Field<ReadonlyMap<string, Field<unknown>>> | undefined;
  if (field?.state !== 'known') return [];
  return [...field.value].map(([name, { at }]) => ({ name, at: { ...at, part: 'key' } }));
}

function unknownRule({ name, at }: { name: string; at: Place }): TextFinding | undefined {
  if (RULE_NAMES.includes(name) || RESERVED_NAMES.includes(name)) return undefined;
  const other = ruleMeant(name);
  const near = other ?? nearest(name, RULE_NAMES);
  const title = other === undefined ? message`Write ${near ?? ''}` : message`Call it \`${other}\``;
  const args = { text: name, ...(near !== undefined && { nearest: near }) };
  return shapeFinding({
    rule: 'unknown-name',
    code: 'unknown-rule',
    at,
    args,
    fixes: near === undefined ? [] : [{ title, edits: [{ op: 'rename-key', at, text: near }] }],
  });
}

/** The names of checks that an entry has, where they stand: keys of a mapping, or items of a list. */
function checkNamesIn({ kind, def, value }: Lowered): { name: string; at: Place }[] {
  const isOwn = kind.kind === 'key' && kind.key === 'preflight';
  const said = (def === 'shot' ? (value as Shot).preflight : isOwn ? value : undefined) as
    | Field<unknown>
    | undefined;
  return checksOf(said);
}

function checksOf(field: Field<unknown> | undefined): { name: string; at: Place }[] {
  if (field?.state !== 'known') return [];
  const { value } = field;
  if (value instanceof Map)
    return [...(value as ReadonlyMap<string, Field<unknown>>)].map(([name, { at }]) => ({
      name,
      at: { ...at, part: 'key' },
    }));
  if (Array.isArray(value))
    return (value as readonly Field<string>[]).flatMap((item) =>
      item.state === 'known' ? [{ name: item.value, at: item.at }] : [],
    );
  const { once, 'every-shot': every } = value as Preflight;
  return [...checksOf(once), ...checksOf(every)];
}

/** Checks may have names of one's own; one that is known by another name is called by that. */
function otherCheck({ name, at }: { name: string; at: Place }): TextFinding | undefined {
  const usual = checkMeant(name);
  if (usual === undefined) return undefined;
  const op = at.part === 'key' ? 'rename-key' : 'set';
  return shapeFinding({
    rule: 'usual-spelling',
    code: 'usual-spelling',
    at,
    args: { key: name, text: name, usual },
    fixes: [{ title: message`Call it \`${usual}\``, edits: [{ op, at, text: usual }] }],
  });
}

/** What the text already says of a value (a comma that ends it) is not said again of its shape. */
function saidByText(entries: Entries, file: FileId, { rule, at }: ShapeProblem): boolean {
  const source = entries.source(file, at.entry);
  if (!source) return false;
  const { tree, problems } = entries.parsed(file, source.chunk);
  if (problems.length === 0) return false;
  const key = tree?.pairs[0]?.key.text ?? '';
  // A key may be lacking because the text where it stands can't be read: the whole record is in doubt.
  const own = rule === 'missing-key' ? at.path.slice(0, -1) : at.path;
  const path = [key, ...source.within, ...own];
  // An empty item has no place of its own: it is where its list is.
  const span = (pairAt(tree, path) ?? nodeAt(tree, path) ?? nodeAt(tree, path.slice(0, -1)))?.span;
  return (
    span !== undefined &&
    problems.some(({ at: place, doubt = place }) =>
      [place, doubt].some((other) => other.start < span.end && span.start < other.end),
    )
  );
}

function referencesOf({ kind, def, value }: Lowered): readonly Reference[] {
  if (value === undefined) return [];
  if (kind.kind === 'entry' && def !== null) return referencesIn(def, value);
  if (kind.kind !== 'key') return [];
  const shape = SHAPES[kind.def].keys[kind.key]?.shape;
  return shape ? referencesAt(value as Field<unknown>, shape) : [];
}

/** Clips are listed by the shot that they were recorded for. */
const shotOfClips = ({ kind }: Lowered, file: FileId, id: EntryId): readonly Reference[] =>
  kind.kind === 'clips'
    ? [{ name: kind.name, groups: ['shots'], at: { file, entry: id, path: [], part: 'key' } }]
    : [];

const MOST_NAMES = 8;

function unknownName(
  entries: Entries,
  names: Names,
  file: FileId,
  { name, groups, at }: Reference,
): TextFinding | undefined {
  const isThere = groups.some(
    (group) => group !== 'recordings' && names.define(file, group as GroupName, name),
  );
  if (isThere) return undefined;
  if (names.reaches(file).some((one) => entries.isNamedUnread(one, name))) return undefined;
  const known = groups.flatMap((group) =>
    group === 'recordings'
      ? (recordingNames(entries, names, file, at) ?? [name])
      : [...names.namesIn(file, group as GroupName)],
  );
  if (known.includes(name)) return undefined;
  const mayStandElsewhere = groups.some(isShared);
  if (mayStandElsewhere && names.isIncomplete(file)) return undefined;
  // Where entries can't be told apart, the one that is named may well be among them.
  if (groups.some((group) => group !== 'recordings' && names.isBroken(file, group as GroupName)))
    return undefined;
  const near = nearest(name, known);
  const listed = known.slice(0, MOST_NAMES).join(', ');
  const args = {
    text: name,
    groups: anyOf(groups.map(nounOf)),
    ...(near !== undefined && { nearest: near }),
    names: known.length > MOST_NAMES ? `${listed} …` : listed,
  };
  const op = at.part === 'key' ? 'rename-key' : 'set';
  return shapeFinding({
    rule: 'unknown-name',
    code: 'unknown-name',
    at,
    args,
    fixes:
      near === undefined
        ? []
        : [{ title: message`Write ${near}`, edits: [{ op, at, text: near }] }],
  });
}

/** Recording settings of the body in the shot's own rig; undefined where they can't be told. */
function recordingNames(
  entries: Entries,
  names: Names,
  file: FileId,
  at: Place,
): readonly string[] | undefined {
  const shot = entries.lowered(file, at.entry)?.value as { rig?: Field<string> } | undefined;
  if (shot?.rig?.state !== 'known') return undefined;
  const rig = names.find(file, 'rigs', shot.rig.value);
  if (rig?.fields.parts.state !== 'known') return undefined;
  for (const part of rig.fields.parts.value) {
    if (part.state !== 'known') continue;
    const body = names.find(file, 'bodies', part.value);
    if (body)
      return body.fields['recording-modes'].state === 'known'
        ? [...body.fields['recording-modes'].value.keys()]
        : undefined;
  }
  return undefined;
}

function duplicateEntry(file: FileId, id: EntryId): TextFinding {
  const first: Place = { file, entry: plainId(id), path: [], part: 'key' };
  return shapeFinding(
    {
      rule: 'duplicate-name',
      code: 'duplicate-entry',
      at: { file, entry: id, path: [], part: 'key' },
      args: { key: keyOfEntry(plainId(id)) },
      fixes: [],
    },
    [{ at: first, words: message`the first one` }],
  );
}
