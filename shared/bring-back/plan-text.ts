/** A plan's text while values are laid into it, one after the other. */
import { toTextEdits } from '../plan/edits.ts';
import { entryAt } from '../plan/entry-id.ts';
import type { Node, Path } from '../syntax/tree.ts';
import { ChunkedText } from '../text/chunked-text.ts';
import { parseChunk } from '../text/parse.ts';
import { isBelow, nodeAt } from '../text/path.ts';

/** Problems of a text that leave open what belongs to what. */
const IN_DOUBT: ReadonlySet<string> = new Set(['syntax', 'duplicate-name', 'too-much']);

export class PlanText {
  readonly #text: ChunkedText;

  constructor(text: string) {
    this.#text = ChunkedText.from(text);
  }

  text(): string {
    return this.#text.text();
  }

  /** Whether its structure is clear: nothing is laid into a text that may mean something else. */
  get isWhole(): boolean {
    const seen = new Set<string>();
    return this.#text.chunks.every((chunk) => {
      const { tree, problems } = parseChunk(chunk);
      const id = chunk.path.join('/');
      const isTwice = chunk.kind !== 'loose' && seen.has(id);
      seen.add(id);
      const isRead = chunk.kind === 'loose' || tree !== null;
      return !isTwice && isRead && !problems.some(({ rule }) => IN_DOUBT.has(rule));
    });
  }

  get #problems(): number {
    return this.#text.chunks.reduce((sum, chunk) => sum + parseChunk(chunk).problems.length, 0);
  }

  /** The value at a path from the top; null: nothing, or a section whose entries are chunks. */
  at(...path: Path): Node | null {
    for (const chunk of this.#text.chunks) {
      if (chunk.kind !== 'entry' || !isBelow(path, chunk.path)) continue;
      return nodeAt(parseChunk(chunk).tree, path.slice(chunk.path.length - 1));
    }
    return null;
  }

  /** Whether there is a key at a path, with or without a value. */
  has(...path: Path): boolean {
    if (this.#text.chunks.some(({ path: own }) => own.length >= path.length && isBelow(own, path)))
      return true;
    const parent = this.at(...path.slice(0, -1));
    return parent?.kind === 'map' && parent.pairs.some(({ key }) => key.text === path.at(-1));
  }

  /** Names of the entries of a section. */
  names(section: string): readonly string[] {
    return this.#text.chunks.flatMap(({ kind, path }) =>
      kind === 'entry' && path.length === 2 && path[0] === section ? [String(path[1])] : [],
    );
  }

  /** The text of a scalar; null: there is none. */
  scalar(...path: Path): string | null {
    const node = this.at(...path);
    return node?.kind === 'scalar' ? node.text : null;
  }

  /**
   * Writes a value in YAML at a path.
   * @returns false, and the text as it was, where it can't stand there
   */
  set(path: Path, written: string): boolean {
    const [first = '', ...rest] = path;
    const at = { file: '', entry: entryAt(String(first)), path: rest };
    const edits = toTextEdits({ op: 'set', at, text: written }, this.#text)
      .map(({ chunk, span, text }) => ({
        from: this.#text.absolute(chunk, span.start),
        to: this.#text.absolute(chunk, span.end),
        text,
      }))
      .sort((a, b) => b.from - a.from);
    const before = this.#problems;
    const undo = edits.map(({ from, to, text }) => this.#text.replace(from, to, text).undo);
    const isThere = edits.length > 0 && this.at(...path) !== null;
    if (isThere && this.#problems <= before && this.isWhole) return true;
    for (const one of undo.reverse()) one();
    return false;
  }
}
