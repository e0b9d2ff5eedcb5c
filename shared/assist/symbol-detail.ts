/** The few values of an entry that tell it from its neighbours in an outline, as written. */
import { ENTRIES } from '../plan/generated/entries.ts';
import { inertLine } from '../report/inert.ts';
import type { Node } from '../text/tree.ts';
import { message } from '../words/message.ts';
import type { EntryKind } from '../workspace/entry-kinds.ts';

/** Longer than this an outline cuts off anyway. */
const LONGEST = 60;

/** Keys that hold a record whose values say more than its keys. */
const ROWS_OF_VALUES: ReadonlySet<string> = new Set(['deliver', 'music']);

export function detailOf(kind: EntryKind, value: Node | null): string {
  const text = inertLine(detailText(kind, value));
  return text.length > LONGEST ? `${[...text].slice(0, LONGEST - 1).join('')}…` : text;
}

function detailText(kind: EntryKind, value: Node | null): string {
  switch (kind.kind) {
    case 'entry':
      return value?.kind === 'map' ? valuesOf(value, ENTRIES[kind.home.group].outline) : '';
    case 'clips': {
      const count = value?.kind === 'seq' ? value.items.length : 0;
      return count === 1 ? message`1 clip` : message`${count} clips`;
    }
    case 'key':
      return value?.kind === 'map' && !ROWS_OF_VALUES.has(kind.key)
        ? value.pairs.map((pair) => pair.key.text).join(', ')
        : flat(value);
    default:
      return '';
  }
}

const valuesOf = (map: Node & { kind: 'map' }, keys: readonly string[]): string =>
  keys
    .map((key) => flat(map.pairs.find((pair) => pair.key.text === key)?.value ?? null))
    .filter((text) => text !== '')
    .join(', ');

/** The scalars of a value in a row, as far as an outline shows them. */
function flat(value: Node | null): string {
  if (value === null) return '';
  if (value.kind === 'scalar') return value.text;
  const inner = value.kind === 'seq' ? value.items : value.pairs.map((pair) => pair.value);
  return inner
    .slice(0, LONGEST)
    .map(flat)
    .filter((text) => text !== '')
    .join(', ');
}
