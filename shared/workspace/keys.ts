/**
 * One key for a file and something in it, always the same string object for the same two: its
 * hash is worked out once and not at each of the many look-ups of a check.
 */
import type { FileId } from '../plan/place.ts';

type Split = readonly [file: FileId, id: string];

const keys = new Map<FileId, Map<string, string>>();
/** Most keys that are asked for one after another are of one file. */
let last: { readonly file: FileId; readonly keys: Map<string, string> } | null = null;
const splits = new Map<string, Split>();

/** Keys kept for a file; a plan with more entries than that is read no slower, only hashed anew. */
const MOST_KEPT = 100_000;

/** Neither part holds a NUL. */
export function keyOf(file: FileId, id: string): string {
  const ofFile = last?.file === file ? last.keys : keysOf(file);
  const kept = ofFile.get(id);
  if (kept !== undefined) return kept;
  const key = `${file}\u0000${id}`;
  if (ofFile.size < MOST_KEPT) {
    ofFile.set(id, key);
    splits.set(key, [file, id]);
  }
  return key;
}

function keysOf(file: FileId): Map<string, string> {
  let ofFile = keys.get(file);
  if (!ofFile) {
    ofFile = new Map();
    keys.set(file, ofFile);
  }
  last = { file, keys: ofFile };
  return ofFile;
}

export function splitKey(key: string): Split {
  const kept = splits.get(key);
  if (kept) return kept;
  const at = key.indexOf('\u0000');
  return [key.slice(0, at), key.slice(at + 1)];
}

/** Lets go of a closed file's keys. */
export function forgetKeys(file: FileId): void {
  for (const key of keys.get(file)?.values() ?? []) splits.delete(key);
  keys.delete(file);
  last = null;
}
