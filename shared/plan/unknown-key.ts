/** A key that its record doesn't have: misspelt, or at home elsewhere. */

import type { Node } from '../syntax/tree.ts';
import { withArticle } from '../words/article.ts';
import { anyOf } from '../words/listed.ts';
import { message } from '../words/message.ts';
import { removal } from './fixes.ts';
import type { DefName } from './generated/names.ts';
import { SHAPES } from './generated/shapes.ts';
import { insteadOf } from './instead.ts';
import { nearest, plain } from './nearest.ts';
import type { Place } from './place.ts';
import type { PlanFix, ShapeProblem } from './problem.ts';
import type { Shape } from './shape.ts';
import { problem } from './shape-problems.ts';

const MOST_HOMES = 3;

const DEFS = Object.keys(SHAPES) as readonly DefName[];

/** For each key, the definitions that have it. */
const HOMES = new Map<string, DefName[]>();
for (const def of DEFS)
  for (const key of Object.keys(SHAPES[def].keys)) HOMES.set(key, [...(HOMES.get(key) ?? []), def]);

/** Few who write a key elsewhere mean one of these. */
const isBenchRow = (def: DefName): boolean => def.endsWith('bench-row');

/** Definitions that have the key, nearest kin first: what `def` holds, then all others. */
function homesOf(key: string, def: DefName): string[] {
  // What a take was really set to only repeats keys of the shot.
  const homes = (HOMES.get(key) ?? []).filter(
    (other) => other !== def && other !== 'clip-settings',
  );
  const held = new Set(
    Object.values(SHAPES[def].keys).map(({ shape }) => ('of' in shape ? shape.of : '')),
  );
  return homes
    .sort(
      (a, b) =>
        Number(held.has(b)) - Number(held.has(a)) || Number(isBenchRow(a)) - Number(isBenchRow(b)),
    )
    .map((home) => withArticle(SHAPES[home].title));
}

interface UnknownKey {
  readonly problem: ShapeProblem;
  /** The key that was meant, whose value is not known unless it counts. */
  readonly meant: string | undefined;
  /** What stands there is the value of the key that was meant: its name is another word for it. */
  readonly counts: boolean;
}

/** For each definition, the other words for its keys. */
const ALSO = new Map(
  DEFS.map((def) => {
    const words = new Map<string, string>();
    for (const [key, { also }] of Object.entries(SHAPES[def].keys))
      for (const word of also ?? []) if (!words.has(word)) words.set(word, key);
    return [def, words] as const;
  }),
);

/** The key of a record that `word` is another word for. */
const keyMeant = (def: DefName, word: string): string | undefined => ALSO.get(def)!.get(word);

/** `elevation 26 deg` where `elevation: 26 deg` is meant; undefined: it is no key and its value. */
export function withoutColon(
  def: DefName,
  text: string,
  at: Place,
  taken: ReadonlySet<string>,
): UnknownKey | undefined {
  const [, key, value] = /^(\S+)\s+(\S.*)$/.exec(text) ?? [];
  if (key === undefined) return undefined;
  const meant = Object.hasOwn(SHAPES[def].keys, key) ? key : keyMeant(def, plain(key));
  if (meant === undefined || taken.has(meant)) return undefined;
  const fixed = `${meant}: ${value}`;
  const place: Place = { ...at, part: 'key' };
  const fix: PlanFix = {
    title: message`Write ${fixed}`,
    edits: [{ op: 'rename-key', at, text: fixed }],
  };
  return {
    problem: problem('unknown-key', 'missing-colon', place, { key }, [fix]),
    meant,
    counts: false,
  };
}

/** Where another kind of entry has a key that `word` is another word for: that key, and its homes. */
function homesMeant(
  word: string,
  def: DefName,
): { readonly key: string; readonly homes: readonly string[] } | undefined {
  const held = new Set(
    Object.values(SHAPES[def].keys).map(({ shape }) => ('of' in shape ? shape.of : '')),
  );
  const meant = DEFS.map((home) => ({ home, key: keyMeant(home, word) })).sort(
    (a, b) => Number(held.has(b.home)) - Number(held.has(a.home)),
  );
  const key = meant.find((one) => one.key !== undefined)?.key;
  return key === undefined
    ? undefined
    : {
        key,
        homes: meant
          .filter((one) => one.key === key)
          .map(({ home }) => withArticle(SHAPES[home].title)),
      };
}

/** Calls a key by its own name; a value that belongs one level deeper goes there with it. */
function callIt(def: DefName, word: string, key: string, at: Place, value: Node | null): PlanFix {
  const { shape } = SHAPES[def].keys[key]!;
  const inner = isDeeper(shape, value) ? keyMeant(shape.of, word) : undefined;
  const rename: PlanFix['edits'] = [{ op: 'rename-key', at, text: key }];
  return {
    title: message`Call it \`${key}\``,
    edits:
      inner === undefined || value?.kind !== 'scalar'
        ? rename
        : [...rename, { op: 'set', at, text: `{ ${inner}: ${value.text} }` }],
  };
}

const isDeeper = (shape: Shape, value: Node | null): shape is Extract<Shape, { kind: 'record' }> =>
  shape.kind === 'record' && value?.kind === 'scalar';

/** The one key of a record whose own record has this key: `closest` of a lens has `magnification`. */
function holderOf(def: DefName, key: string): string | undefined {
  const holders = Object.entries(SHAPES[def].keys).filter(
    ([, { shape }]) => shape.kind === 'record' && Object.hasOwn(SHAPES[shape.of].keys, key),
  );
  return holders.length === 1 ? holders[0]?.[0] : undefined;
}

/** Moves a value one level deeper, where nothing stands there yet and its place can be read. */
function moveInto(
  holder: string,
  key: string,
  at: Place,
  value: Node | null,
  beside: Node | null | undefined,
): readonly PlanFix[] {
  if (value?.kind !== 'scalar') return [];
  const title = message`Move it into \`${holder}\``;
  if (beside === undefined)
    return [
      {
        title,
        edits: [
          { op: 'rename-key', at, text: holder },
          { op: 'set', at, text: `{ ${key}: ${value.text} }` },
        ],
      },
    ];
  if (beside?.kind !== 'map' || beside.pairs.some((pair) => pair.key.text === key)) return [];
  const there: Place = { ...at, path: [...at.path.slice(0, -1), holder, key] };
  return [
    {
      title,
      edits: [
        { op: 'set', at: there, text: value.text },
        { op: 'remove', at: { ...at, part: 'pair' } },
      ],
    },
  ];
}

/**
 * @param taken the keys that stand in the record, which no fix may make twice
 * @param value what stands under the key, where it was read
 * @param siblingOf what stands under another key of the record; undefined: it has no such key
 */
export function unknownKey(
  def: DefName,
  key: string,
  at: Place,
  taken: ReadonlySet<string>,
  value: Node | null = null,
  siblingOf: (key: string) => Node | null | undefined = () => null,
): UnknownKey {
  const of = SHAPES[def].title;
  const word = plain(key);
  const place: Place = { ...at, part: 'key' };
  const remove = removal(message`Remove ${key}`, at, message`what it says is lost`);
  const none = { meant: undefined, counts: false };
  const right = keyMeant(def, word);
  if (right !== undefined) {
    const args = { key, of, right };
    if (taken.has(right))
      return { problem: problem('unknown-key', 'synonym-twice', place, args, [remove]), ...none };
    const fixes = [callIt(def, word, right, at, value), remove];
    return {
      problem: problem('unknown-key', 'synonym', place, args, fixes),
      meant: right,
      counts: !isDeeper(SHAPES[def].keys[right]!.shape, value),
    };
  }
  const instead = insteadOf(def, word);
  if (instead !== undefined) {
    const args = { key, of, instead };
    return { problem: problem('unknown-key', 'no-such-key', place, args, [remove]), ...none };
  }
  const holder = holderOf(def, key);
  if (holder !== undefined) {
    const args = { key, of, belongs: `\`${holder}\`` };
    const fixes = [...moveInto(holder, key, at, value, siblingOf(holder)), remove];
    return { problem: problem('unknown-key', 'belongs-elsewhere', place, args, fixes), ...none };
  }
  const homes = homesOf(key, def);
  const elsewhere = homes.length === 0 ? homesMeant(word, def) : undefined;
  if (elsewhere) {
    const belongs = anyOf(elsewhere.homes.slice(0, MOST_HOMES));
    const args = { key, of, right: elsewhere.key, belongs };
    return { problem: problem('unknown-key', 'synonym-elsewhere', place, args, [remove]), ...none };
  }
  const near = nearest(key, Object.keys(SHAPES[def].keys));
  const meant = near !== undefined && !taken.has(near) ? near : undefined;
  const rename: PlanFix[] = meant
    ? [{ title: message`Write ${meant}`, edits: [{ op: 'rename-key', at, text: meant }] }]
    : [];
  const code = homes.length > 0 && meant === undefined ? 'belongs-elsewhere' : 'unknown-key';
  return {
    problem: problem(
      'unknown-key',
      code,
      place,
      {
        key,
        of,
        nearest: near,
        belongs: anyOf(homes.slice(0, MOST_HOMES)),
        keys: Object.keys(SHAPES[def].keys).join(', '),
      },
      [...rename, remove],
    ),
    meant,
    counts: false,
  };
}
