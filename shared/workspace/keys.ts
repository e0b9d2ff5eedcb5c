/**
 * One key for a file and something in it. The same two always give the same string object, so its
 * hash is calculated once and not at each of the many look-ups of a check.
 *
 * Names are added and removed while a plan is written. Keys are therefore kept only as long as
 * they are used: those that nobody used between two renewals are dropped.
 */
import type { EntryId, FileId } from '../plan/place.ts';

declare const of: unique symbol;
/** A file and something in it, as one string. Made and taken apart here alone. */
export type Key<I extends string = EntryId> = string & { readonly [of]: I };

type Split<I extends string = string> = readonly [file: FileId, id: I];

interface Generation {
  readonly keys: Map<FileId, Map<string, Key<string>>>;
  readonly splits: Map<string, Split>;
}

const generation = (): Generation => ({ keys: new Map(), splits: new Map() });

/** Used since the last renewal. */
let young = generation();
/** Used before the last renewal, and not since. */
let old = generation();
/** Most keys that are asked for one after another are of one file. */
let last: { readonly file: FileId; readonly keys: Map<string, Key<string>> } | null = null;

/**
 * Number of keys between two renewals. A plan with more entries is read no slower; its keys are
 * only hashed again.
 */
const MOST_KEPT = 200_000;

/** Neither part holds it. */
const BETWEEN = '\u0000';

export function keyOf<I extends string>(file: FileId, id: I): Key<I> {
  const ofFile = last?.file === file ? last.keys : keysOf(file);
  const kept = ofFile.get(id);
  if (kept !== undefined) return kept as Key<I>;
  const key = (old.keys.get(file)?.get(id) ?? `${file}${BETWEEN}${id}`) as Key<I>;
  ofFile.set(id, key);
  young.splits.set(key, old.splits.get(key) ?? [file, id]);
  if (young.splits.size >= MOST_KEPT) renewKeys();
  return key;
}

function keysOf(file: FileId): Map<string, Key<string>> {
  let ofFile = young.keys.get(file);
  if (!ofFile) {
    ofFile = new Map();
    young.keys.set(file, ofFile);
  }
  last = { file, keys: ofFile };
  return ofFile;
}

export function splitKey<I extends string>(key: Key<I>): Split<I> {
  const kept = young.splits.get(key) ?? old.splits.get(key);
  if (kept) return kept as Split<I>;
  const at = key.indexOf(BETWEEN);
  return [key.slice(0, at), key.slice(at + 1) as I];
}

/** Drops keys that nobody used since the last time. */
export function renewKeys(): void {
  old = young;
  young = generation();
  last = null;
}

/** Drops the keys of a closed file. */
export function forgetKeys(file: FileId): void {
  for (const { keys, splits } of [young, old]) {
    for (const key of keys.get(file)?.values() ?? []) splits.delete(key);
    keys.delete(file);
  }
  last = null;
}

/** How many keys are held, for tests of memory. */
export const keptKeys = (): number => young.splits.size + old.splits.size;
