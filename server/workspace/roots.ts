/** Which folder a file may use others from: its workspace folder, or what the host takes for it. */
import type { FileId } from '../../shared/plan/place.ts';
import { canonicalUri, isBelow } from '../canonical-uri.ts';

export class Roots {
  readonly #fallback: (file: FileId) => FileId;
  readonly #lent = new Map<FileId, FileId>();
  #folders: FileId[] = [];

  /** @param fallback the root of a file that lies in no workspace folder */
  constructor(fallback: (file: FileId) => FileId) {
    this.#fallback = fallback;
  }

  change(added: readonly string[], removed: readonly string[]): void {
    const gone = new Set(removed.map(asFolder));
    const kept = this.#folders.filter((folder) => !gone.has(folder));
    this.#folders = [...new Set([...kept, ...added.map(asFolder)])];
  }

  of(file: FileId): FileId {
    const holding = this.#folders.filter((folder) => isBelow(folder, file));
    // The innermost: folders of a workspace may lie in one another.
    const folder = holding.sort((a, b) => b.length - a.length)[0];
    return folder ?? this.#lent.get(file) ?? this.#fallback(file);
  }

  /** The workspace's other folders, for a file that lies in one of them. */
  beside(file: FileId): readonly FileId[] {
    const own = this.of(file);
    return this.#folders.includes(own) ? this.#folders.filter((folder) => folder !== own) : [];
  }

  /** Outside every folder, a used file has the root of the plan that uses it. */
  lend(file: FileId, root: FileId): void {
    this.#lent.set(file, root);
  }

  takeBack(file: FileId): void {
    this.#lent.delete(file);
  }
}

const asFolder = (uri: string): FileId => canonicalUri(uri).replace(/\/$/, '');
