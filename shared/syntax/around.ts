/** What stands round a place in a text, whatever state the text is in. */
import { isInside, type Place, placeInFlow } from './around-flow.ts';
import { isEmptyValue } from './keys.ts';
import { contentLines, indentAt, isBlank, type Line, LineTable } from './lines.ts';
import { colonOf } from './nodes.ts';
import { parse } from './parser.ts';
import type { Outer, Syntax } from './syntax.ts';
import type { MapNode, Node, Pair, Path, ScalarNode, SeqNode } from './tree.ts';

export interface Around extends Place {
  readonly flow: boolean;
  /** Nothing else stands on the line, and it may be indented anew. */
  readonly blank: boolean;
  /** Where a key or a dash begins, in its line. */
  readonly column: number;
}

/**
 * `above`: the mappings that hold the text, outermost first; `behind`: the column of what follows it
 * in the file. null: within a comment or prose, or where nothing can be written.
 */
export function around(
  text: string,
  at: number,
  above: readonly Outer[],
  behind: number,
): Around | null {
  const syntax = parse(text, above);
  return syntax && new Reader(text, at, syntax, above, behind).read();
}

/** A block mapping or list that is open at the place. */
interface Level {
  readonly node: MapNode | SeqNode;
  readonly column: number;
  readonly path: Path;
  /** The key or item that stands last before the place; -1: none does. */
  readonly index: number;
}

type Found = Pick<Around, 'path' | 'slot' | 'from' | 'to'> & Partial<Around>;

class Reader {
  readonly #text: string;
  readonly #at: number;
  readonly #syntax: Syntax;
  readonly #above: readonly Outer[];
  readonly #behind: number;
  readonly #lines: LineTable;
  readonly #line: Line;
  readonly #levels: Level[] = [];
  /** Below the last level's last key or item: the value there, what of it the place is in or behind … */
  #value: Node | null = null;
  #here: Node | null = null;
  /** … and the block that follows the place. */
  #next: MapNode | SeqNode | null = null;

  constructor(text: string, at: number, syntax: Syntax, above: readonly Outer[], behind: number) {
    this.#text = text;
    this.#at = at;
    this.#syntax = syntax;
    this.#above = above;
    this.#behind = behind;
    this.#lines = new LineTable(text);
    this.#line = this.#lines.of(at);
    this.#descend();
  }

  #descend(): void {
    const at = this.#at;
    let path: Path = [];
    for (let node: Node | null = this.#syntax.root; node; node = this.#here) {
      if (!isBlock(node)) return;
      const starts =
        node.kind === 'map' ? node.pairs.map(({ span }) => span.start) : this.#dashes(node);
      const index = starts.findLastIndex((start) => start <= at);
      const depth = this.#levels.length;
      const column = this.#above[depth]?.column ?? this.#columnOf(node);
      this.#levels.push({ node, column, path, index });
      if (index < 0) return;
      const step = node.kind === 'map' ? node.pairs[index]!.key.text : index;
      path = [...path, step];
      this.#value = (node.kind === 'map' ? node.pairs[index]!.value : node.items[index]) ?? null;
      const all: Node[] = this.#value
        ? [this.#value, ...(this.#syntax.more.get(this.#value) ?? [])]
        : [];
      this.#here = all.findLast(({ span }) => span.start <= at) ?? null;
      this.#next = all.filter(isBlock).find(({ span }) => span.start > at) ?? null;
    }
  }

  /** On the key's line; a line without one may still become a key. */
  #colonOf(pair: Pair): number {
    const colon = colonOf(this.#text, pair);
    return colon > this.#lines.of(pair.key.span.end).end ? -1 : colon;
  }

  #dashes(list: SeqNode): readonly number[] {
    return this.#syntax.marks.get(list)!;
  }

  /** Properties may stand before a key, and dashes before a mapping's first one. */
  #columnOf(node: MapNode | SeqNode): number {
    const { start } = node.span;
    const line = this.#lines.of(start).start;
    if (node.kind === 'seq') return start - line;
    return /^ *(?:- +)*/.exec(this.#text.slice(line, start))![0].length;
  }

  read(): Around | null {
    const text = this.#text;
    const at = this.#at;
    const here = this.#here;
    const { start: lineStart, end } = this.#line;
    const top = this.#levels.at(-1)!;
    const content = lineStart + indentAt(text, lineStart, end);
    const isEmpty = isBlank(text, content, end);
    if (here && here.kind !== 'scalar' && isInside(here, this.#syntax.marks, at)) {
      const place = placeInFlow(text, here, this.#syntax.marks, this.#below(top), at);
      return place && this.#mark({ ...place, flow: true });
    }
    if (isProse(here) && here.span.start < lineStart) {
      const column = isEmpty ? at - lineStart : content - lineStart;
      if (column > top.column) return null;
    }
    if (isEmpty) return this.#onEmptyLine(content, top);
    if (at < content || top.index < 0) return null;
    return top.node.kind === 'map'
      ? this.#atPair(top, top.node, top.node.pairs[top.index]!)
      : this.#atItem(top, this.#dashes(top.node)[top.index]!);
  }

  #below(level: Level): Path {
    const { node, path, index } = level;
    return [...path, node.kind === 'map' ? node.pairs[index]!.key.text : index];
  }

  #onEmptyLine(content: number, top: Level): Around | null {
    const text = this.#text;
    const at = this.#at;
    if (at > content && text[content] === '#') return null;
    const after = text[at] === '#' ? ' ' : '';
    // What is written before the next line must not stand left of it.
    const written = Math.max(at - this.#line.start, this.#nextColumn());
    const common = { from: at, to: at, blank: true, after };
    const outer = this.#levels.find(({ column }) => column >= written);
    if (!outer && this.#isPending(top)) {
      const path = this.#below(top);
      if (this.#next) return this.#mark({ ...common, path, ...this.#within(this.#next) });
      return this.#mark({ ...common, path, slot: 'open', column: written });
    }
    const { node, path, column } = outer ?? top;
    return this.#mark({ ...common, path, ...this.#within(node), column });
  }

  #nextColumn(): number {
    const { next, end } = this.#line;
    const behind = contentLines(this.#text, next, next > end ? this.#text.length : next).next();
    return behind.done ? this.#behind : behind.value.indent;
  }

  /** Nothing stands yet behind the level's last key or dash. */
  #isPending({ node, index }: Level): boolean {
    if (index < 0 || this.#here) return false;
    return node.kind === 'seq' || !isOuter(node.pairs[index]!);
  }

  /** A further key, or item, of a collection. */
  #within(node: MapNode | SeqNode) {
    const slot = node.kind === 'map' ? ('key' as const) : ('item' as const);
    return { slot, column: this.#columnOf(node), beside: this.#names(node) };
  }

  #names(node: MapNode | SeqNode, but?: Pair): string[] {
    const text = this.#text;
    if (node.kind === 'map')
      return node.pairs
        .filter((pair) => pair !== but && !isOuter(pair) && this.#colonOf(pair) >= 0)
        .map(({ key }) => key.text);
    return this.#dashes(node)
      .map((dash) => text.slice(dash + 1, this.#lines.of(dash).end))
      .map((written) => written.replace(/\s+#.*$/, '').trim())
      .filter(Boolean);
  }

  #atPair(level: Level, node: MapNode, pair: Pair): Around | null {
    const text = this.#text;
    const at = this.#at;
    const { start, end } = pair.key.span;
    const { path, column } = level;
    const colon = this.#colonOf(pair);
    const asKey = { path, slot: 'key' as const, from: start, column };
    if (colon < 0) {
      // A line may hold more than the word that is to become a key.
      const word = /^[a-z0-9-]*/i.exec(text.slice(start, end))![0];
      const to = start + word.length;
      if (at > to) return null;
      return this.#mark({ ...asKey, to, beside: this.#names(node) });
    }
    if (at <= end) {
      const isEmpty = isEmptyValue(text, colon + 1, this.#line.end) && !this.#next;
      return this.#mark({
        ...asKey,
        to: end,
        colonEnd: colon + 1,
        pair: isEmpty ? 'colon' : 'value',
        beside: this.#names(node, pair),
      });
    }
    if (at <= colon) return null;
    return colon < this.#line.start
      ? this.#onOwnLine(level)
      : this.#behindColon(colon + 1, this.#below(level));
  }

  /** `from`: behind the colon, on the line of the place. */
  #behindColon(from: number, path: Path): Around | null {
    const text = this.#text;
    const at = this.#at;
    const value = this.#value;
    const start = from + indentAt(text, from, this.#line.end);
    if (!isBlank(text, start, this.#line.end)) {
      return value?.kind === 'scalar' ? this.#onScalar(value, from, path, 'value') : null;
    }
    if (at > start || this.#next) return null;
    return this.#mark({
      path,
      slot: 'value',
      from: at,
      to: at,
      before: at === from ? ' ' : '',
      after: text[at] === '#' ? ' ' : '',
    });
  }

  #atItem(level: Level, dash: number): Around | null {
    const text = this.#text;
    const at = this.#at;
    const { start: lineStart, end } = this.#line;
    if (dash < lineStart) return this.#onOwnLine(level);
    const start = dash + 1 + indentAt(text, dash + 1, end);
    if (at <= dash) return null;
    if (!isBlank(text, start, end)) return at < start ? null : this.#onOwnLine(level);
    if (at > start) return null;
    const before = at === dash + 1 ? ' ' : '';
    const common = { path: this.#below(level), from: at, to: at, before };
    if (this.#next) return this.#mark({ ...common, ...this.#within(this.#next) });
    const column = at - lineStart + before.length;
    const beside = this.#names(level.node);
    return this.#mark({ ...common, slot: 'open', column, beside });
  }

  /** On a line on which a value begins: below its key, or behind its dash. */
  #onOwnLine(level: Level): Around | null {
    const value = this.#here;
    if (value?.kind !== 'scalar' || value.span.start < this.#line.start) return null;
    return this.#onScalar(value, value.span.start, this.#below(level), 'open');
  }

  #onScalar(value: ScalarNode, from: number, path: Path, slot: 'value' | 'open'): Around | null {
    const text = this.#text;
    const at = this.#at;
    const { start, end } = value.span;
    const isPlain = value.style === 'plain';
    if (isProse(value)) return null;
    // Behind a plain value new text still goes on with it, up to a comment.
    const gap = text.slice(end, this.#line.end).search(/#/);
    const until = !isPlain ? end : gap < 0 ? this.#line.end : end + gap;
    if (at > until) return null;
    return this.#mark({
      path,
      slot,
      from: Math.min(at, start),
      to: Math.max(at, end),
      before: at === from && from < start ? ' ' : '',
      after: at === until && text[at] === '#' ? ' ' : '',
      column: start - this.#line.start,
    });
  }

  #mark(found: Found): Around {
    return {
      before: '',
      after: '',
      flow: false,
      blank: false,
      pair: 'word',
      column: found.from - this.#line.start,
      colonEnd: found.to,
      beside: [],
      ...found,
    };
  }
}

const isBlock = (node: Node): node is MapNode | SeqNode => node.kind !== 'scalar' && !node.flow;

/** The key of a mapping that holds the text. */
const isOuter = ({ key }: Pair): boolean => key.span.end === 0;

const isProse = (node: Node | null): node is ScalarNode =>
  node?.kind === 'scalar' && (node.style === 'literal' || node.style === 'folded');
