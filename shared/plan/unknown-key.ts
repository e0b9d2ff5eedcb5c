/** A key that its record doesn't have: misspelt, or at home elsewhere. */
import { withArticle } from '../words/article.ts';
import { anyOf } from '../words/listed.ts';
import { message } from '../words/message.ts';
import type { DefName } from './generated/names.ts';
import { SHAPES } from './generated/shapes.ts';
import { nearest } from './nearest.ts';
import type { Place } from './place.ts';
import type { PlanFix, ShapeProblem } from './problem.ts';
import { problem } from './shape-problems.ts';

const MOST_HOMES = 3;

/** Definitions that have the key, nearest kin first: what `def` holds, then all others. */
function homesOf(key: string, def: DefName): string[] {
  const homes = (Object.keys(SHAPES) as DefName[]).filter(
    (other) => other !== def && Object.hasOwn(SHAPES[other].keys, key),
  );
  const held = new Set(
    Object.values(SHAPES[def].keys).map(({ shape }) => ('of' in shape ? shape.of : '')),
  );
  return homes
    .sort((a, b) => Number(held.has(b)) - Number(held.has(a)))
    .map((home) => withArticle(SHAPES[home].title));
}

interface UnknownKey {
  readonly problem: ShapeProblem;
  /** The key that was meant, whose value is not known then. */
  readonly meant: string | undefined;
}

/** `up 26 deg` where `elevation: 26 deg` is meant; undefined: it is no key and its value. */
export function withoutColon(
  def: DefName,
  text: string,
  at: Place,
  taken: ReadonlySet<string>,
): UnknownKey | undefined {
  const [, key, value] = /^(\S+)\s+(\S.*)$/.exec(text) ?? [];
  if (key === undefined || !Object.hasOwn(SHAPES[def].keys, key) || taken.has(key))
    return undefined;
  const fixed = `${key}: ${value}`;
  const place: Place = { ...at, part: 'key' };
  const fix: PlanFix = {
    title: message`Write ${fixed}`,
    edits: [{ op: 'rename-key', at, text: fixed }],
  };
  return { problem: problem('unknown-key', 'missing-colon', place, { key }, [fix]), meant: key };
}

/** `taken`: the keys that stand in the record, which no fix may make twice. */
export function unknownKey(
  def: DefName,
  key: string,
  at: Place,
  taken: ReadonlySet<string>,
): UnknownKey {
  const record = SHAPES[def];
  const near = nearest(key, Object.keys(record.keys));
  const homes = homesOf(key, def);
  const meant = near !== undefined && !taken.has(near) ? near : undefined;
  const rename: PlanFix[] = meant
    ? [{ title: message`Write ${meant}`, edits: [{ op: 'rename-key', at, text: meant }] }]
    : [];
  const remove: PlanFix = {
    title: message`Remove ${key}`,
    sideEffects: message`what it says is lost`,
    edits: [{ op: 'remove', at: { file: at.file, entry: at.entry, path: at.path, part: 'pair' } }],
  };
  const code = homes.length > 0 && meant === undefined ? 'belongs-elsewhere' : 'unknown-key';
  return {
    problem: problem(
      'unknown-key',
      code,
      { ...at, part: 'key' },
      {
        key,
        of: record.title,
        nearest: near,
        belongs: anyOf(homes.slice(0, MOST_HOMES)),
        keys: Object.keys(record.keys).join(', '),
      },
      [...rename, remove],
    ),
    meant,
  };
}
