/** Keys that fit a mapping, each with a value to begin with. */

import type { About, CompletionKind } from '../../api/completions.ts';
import { ifKnown, isKnown } from '../../plan/field.ts';
import type { DefName } from '../../plan/generated/names.ts';
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Subject } from '../../plan/generated/types.ts';
import { lowerKey } from '../../plan/lower.ts';
import { referencesAt } from '../../plan/references.ts';
import type { KeyShape } from '../../plan/shape.ts';
import { inlineText, keyed } from '../../text/layout-text.ts';
import type { Node } from '../../text/tree.ts';
import { inLanguage, message } from '../../words/message.ts';
import { defaultAt, newEntry } from './defaults.ts';
import { fillable, type Piece } from './pieces.ts';
import { below, shapeOf, type Where } from './where.ts';

/** A key with its value, before it is known where it is written. */
export interface KeyProposal {
  readonly key: string;
  readonly detail: string;
  readonly rank: number;
  readonly kind: CompletionKind;
  readonly pieces: readonly Piece[];
  /** Something can be chosen where it ends. */
  readonly choice: boolean;
  readonly about: About;
}

/** Of each list one at most stands in an entry: the others follow from it. */
const ONE_OF: Partial<Record<DefName, readonly (readonly string[])[]>> = {
  shot: [
    ['field', 'magnification', 'ring'],
    ['take', 'time-lapse'],
    ['record', 'time-lapse'],
  ],
  'time-lapse': [['duration', 'frames']],
};

export function keysFor(
  where: Where,
  of: DefName,
  taken: readonly string[],
  flow: boolean,
): readonly KeyProposal[] {
  const isTaken = (key: string) =>
    taken.includes(key) ||
    (ONE_OF[of] ?? []).some(
      (keys) => keys.includes(key) && keys.some((other) => taken.includes(other)),
    ) ||
    (of === 'subject' && key === 'film' && !mayFloatFilm(where));
  return Object.entries(SHAPES[of].keys).flatMap(([key, shape], index): KeyProposal[] => {
    const at = isTaken(key) ? null : below(where, key);
    const pieces = at && piecesFor(at, key, flow);
    if (!pieces) return [];
    return [
      {
        key,
        detail: detailOf(key, shape),
        rank: (shape.required ? 0 : key === 'about' ? 900 : 100) + index,
        kind: 'key',
        pieces,
        choice: isChoice(at),
        about: { kind: 'key', of, key },
      },
    ];
  });
}

/** Only on a liquid surface does a film float. */
function mayFloatFilm({ context, file, place }: Where): boolean {
  const fields = context.analysis.entries.lowered(file, place.entry)?.value as Subject | undefined;
  const kind = fields && ifKnown(fields.kind);
  return kind === undefined || kind === 'surface';
}

const detailOf = (key: string, { title, required }: KeyShape): string =>
  [title === key.replaceAll('-', ' ') ? '' : inLanguage(title), required ? message`required` : '']
    .filter(Boolean)
    .join(' · ');

function isChoice(where: Where): boolean {
  const shape = shapeOf(where);
  const item = shape.kind === 'list' ? shape.item : shape;
  return ['ref', 'enum', 'quantity', 'yes-no'].includes(item.kind);
}

function piecesFor(where: Where, key: string, flow: boolean): readonly Piece[] | null {
  const shape = shapeOf(where);
  if (shape.kind === 'map' && shape.item.kind === 'record' && !shape.names) {
    const entry = isOfEntries(where) ? newEntry(where, shape.item.of) : null;
    if (entry) return entryPieces(`${key}:`, entry, flow);
    if (isOfEntries(where)) return [`${key}: {}`];
  }
  const value = defaultAt(where);
  if (value === null) return null;
  return fillable(flow ? `${key}: ${inlineText(value)}` : keyed(key, value, 0, 2, '\n'));
}

/** Not findings that are accepted: those are named after rules. */
const isOfEntries = ({ meaning }: Where): boolean => meaning?.key !== 'allow';

/** A section with its first entry, the entry's name to be filled in first. */
function entryPieces(
  section: string,
  { name, body }: { name: string; body: string },
  flow: boolean,
): Piece[] {
  const [first = '', ...others] = fillable(bodyText(body, flow));
  const pieces: Piece[] = flow ? [`${section} { `] : [`${section}\n  `];
  const indentedRest = [first, ...others].map((piece) =>
    typeof piece === 'string' && !flow ? piece.replaceAll('\n', '\n  ') : piece,
  );
  return [...pieces, { fill: name }, ...indentedRest, ...(flow ? [' }'] : [])];
}

/** An entry's text from its colon on. */
const bodyText = (body: string, flow: boolean): string =>
  flow ? `: ${inlineText(body)}` : keyed('', body, 0, 2, '\n');

export function entryKey(
  where: Where,
  of: DefName,
  taken: readonly string[],
  flow: boolean,
): KeyProposal[] {
  const entry = newEntry(where, of, taken);
  if (!entry) return [];
  const { title } = SHAPES[of];
  return [
    {
      key: entry.name,
      detail: message`new ${inLanguage(title)}`,
      rank: 0,
      kind: 'entry',
      pieces: [{ fill: entry.name }, ...fillable(bodyText(entry.body, flow))],
      choice: false,
      about: { kind: 'kind', of },
    },
  ];
}

/** Keys that could have the value that stands there already. */
export function keysThatFit(
  where: Where,
  of: DefName,
  present: string,
  value: Node | null,
  taken: readonly string[],
): readonly KeyProposal[] {
  const { keys } = SHAPES[of];
  const own = Object.hasOwn(keys, present) ? keys[present] : undefined;
  if (own?.required) return [];
  return keysFor(where, of, taken, false).filter(({ key }) => {
    if (key === present) return true;
    if (own && JSON.stringify(own.shape) !== JSON.stringify(keys[key]!.shape)) return false;
    return fits(where, of, key, value);
  });
}

function fits(where: Where, of: DefName, key: string, value: Node | null): boolean {
  const { file, context, place } = where;
  const { field, problems } = lowerKey(of, key as never, value, { file, entry: place.entry });
  if (problems.some(({ rule }) => rule !== 'usual-spelling') || !isKnown(field)) return false;
  const { names } = context.analysis;
  return referencesAt(field, SHAPES[of].keys[key]!.shape).every(({ name, groups }) =>
    groups.some((group) => group !== 'recordings' && names.define(file, group, name)),
  );
}
