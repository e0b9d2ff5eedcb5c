/**
 * Where a value stands, said without offsets: which file, which entry, which keys below it. A
 * place stays true while lines are added above the entry; it becomes a range only at the edge.
 */
import type { Path, Span } from '../syntax/tree.ts';

/** An absolute URI; opaque to the core except for resolving `use`. */
export type FileId = string;

/** The last part of a file's id, as people write it. */
export function fileName(file: FileId): string {
  const last = file.slice(file.lastIndexOf('/') + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}

declare const ofEntry: unique symbol;
/**
 * Keys from the top joined by '/': 'shots/drift', 'kit/bodies/body-a', 'deliver', '' (the file). Made and
 * taken apart by entry-id.ts alone.
 */
export type EntryId = string & { readonly [ofEntry]: true };

export interface Place {
  readonly file: FileId;
  readonly entry: EntryId;
  readonly path: Path;
  /** Which part of the pair at `path`: its key, its value (default), or both. */
  readonly part?: 'key' | 'value' | 'pair';
  /** Of text that couldn't be read, in place of a path: `entry` is its chunk, and this is in it. */
  readonly span?: Span;
}

/** The place of what stands under these keys at a place. */
export const below = ({ file, entry, path }: Place, ...keys: Path): Place => ({
  file,
  entry,
  path: [...path, ...keys],
});

/** The same entry and path, whichever part of it is meant. */
export const samePlace = (a: Place, b: Place): boolean =>
  a.entry === b.entry &&
  a.file === b.file &&
  a.path.length === b.path.length &&
  a.path.every((step, index) => step === b.path[index]);
