/** A new entry of a group, filled in with what works together. */
import { above, entryAt } from '../../plan/entry-id.ts';
import { ENTRIES } from '../../plan/generated/entries.ts';
import type { AnyGroup, DefName, GroupName } from '../../plan/generated/names.ts';
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { EntryShape } from '../../plan/shape.ts';
import { KINDS } from '../../quantity/index.ts';
import { ChunkedText } from '../../text/chunked-text.ts';
import { planTemplate } from '../template.ts';
import { newShot } from './new-shot.ts';
import { partsOf } from './rig-parts.ts';
import type { Where } from './where.ts';

export interface NewEntry {
  readonly name: string;
  /** Block YAML without indentation of its own. */
  readonly body: string;
}

/** The kind of entry that a definition is, if it is one. */
const entryOf = (of: DefName) =>
  (Object.entries(ENTRIES) as [AnyGroup, EntryShape][]).find(([, { def }]) => def === of);

/** Pairs of a record at a place, as far as they can be written. */
type PairsOf = (where: Where, keys: readonly string[]) => readonly string[];

/** null where it would have to name what there is none of. `where`: the group, or a place in it. */
export function newEntry(
  where: Where,
  of: DefName,
  pairsOf: PairsOf,
  taken: readonly string[],
): NewEntry | null {
  const body = bodyOf(where, of, pairsOf);
  const all = [...taken, ...namesOf(where, of)];
  return body === null ? null : { name: freeName(nameFor(of), all), body };
}

function bodyOf(where: Where, of: DefName, pairsOf: PairsOf): string | null {
  if (of === 'shot') return newShot(where.context, where.file);
  if (of === 'rig') return rigBody(where);
  const own = fromTemplate(of)?.body;
  if (own !== undefined) return own;
  const keys = entryOf(of)?.[1].first?.keys;
  if (!keys) return null;
  const pairs = pairsOf(entryWhere(where, of), keys);
  const required = Object.entries(SHAPES[of].keys).filter(([, { required: must }]) => must);
  const isWhole = required.every(([key]) => pairs.some((pair) => pair.startsWith(`${key}:`)));
  if (!isWhole) return null;
  return pairs.length > 4 ? pairs.join('\n') : `{ ${pairs.join(', ')} }`;
}

/** A place in an entry that isn't there yet. */
function entryWhere(where: Where, of: DefName): Where {
  const home = entryOf(of)?.[1].home ?? null;
  if (home === null) {
    const { place, meaning } = where;
    return {
      ...where,
      place: { ...place, path: [...place.path, 'new'] },
      meaning: meaning && { ...meaning, shape: { kind: 'record', of } },
    };
  }
  const entry = entryAt(home, 'new');
  return {
    ...where,
    place: { file: where.file, entry, path: [] },
    meaning: { key: '', keyShape: EMPTY, of, shape: { kind: 'record', of } },
  };
}

const EMPTY = {
  shape: { kind: 'text' },
  required: false,
  title: '',
  description: '',
  examples: [],
} as const;

function rigBody(where: Where): string | null {
  const parts = partsOf(where);
  if (parts === null) return null;
  const { names } = where.context.analysis;
  const [head] = names.namesIn(where.file, 'heads');
  const [lens = ''] = names.namesIn(where.file, 'lenses');
  const foot = footFor(where, lens);
  return [
    `parts: ${parts}`,
    ...(head === undefined ? [] : [`support: { head: ${head}, foot: ${foot} }`]),
  ].join('\n');
}

/** Where a bare lens on a body about balances: the middle of its length. */
function footFor({ context, file }: Where, lens: string): string {
  const length = context.analysis.names.find(file, 'lenses', lens)?.fields.length;
  const mm = length?.state === 'known' ? Math.round(length.value / 20) * 10 : 60;
  return KINDS.offset.print(mm as never);
}

/** The first entry of that kind in the plan that people start from. */
function fromTemplate(of: DefName): NewEntry | undefined {
  const home = entryOf(of)?.[1].home ?? null;
  if (home === null) return undefined;
  const { chunks } = ChunkedText.from(planTemplate());
  const chunk = chunks.find(
    ({ kind, path }) => kind === 'entry' && above(entryAt(...path)) === home,
  );
  if (!chunk) return undefined;
  const [first = '', ...lines] = chunk.text.trimEnd().split('\n');
  const inline = first.slice(first.indexOf(':') + 1).trim();
  const body = inline || lines.map((line) => line.slice(chunk.indent + 2)).join('\n');
  return { name: chunk.path.at(-1)!, body };
}

const nameFor = (of: DefName): string =>
  entryOf(of)?.[1].first?.name ?? fromTemplate(of)?.name ?? of;

function namesOf({ context, file }: Where, of: DefName): readonly string[] {
  const [group, entry] = entryOf(of) ?? [];
  if (group === undefined || !entry?.home || group === 'clips') return [];
  return context.analysis.names.namesIn(file, group as GroupName);
}

/** "tube-12", else with the next number that is free. */
function freeName(wanted: string, taken: readonly string[]): string {
  if (!taken.includes(wanted)) return wanted;
  const stem = wanted.replace(/-(?:[0-9]+|[a-z])$/, '');
  for (let count = 2; ; count++) if (!taken.includes(`${stem}-${count}`)) return `${stem}-${count}`;
}
