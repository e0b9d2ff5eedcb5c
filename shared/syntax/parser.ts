/**
 * Parses a chunk in one pass, whatever state it is in. Of a text in the profile's common shapes
 * (block and flow mappings and lists, plain and quoted scalars on one line, comments) the tree is
 * what YAML 1.2.2 says; that is tested against `yaml` on mutated plans. Of any other text it is what
 * the lines' columns and the brackets say, and the defects name where it departs from the common.
 */
import { MAX_DEPTH } from './budgets.ts';
import {
  FlowParser,
  isOpening,
  isPlainStart,
  isQuote,
  MAX_KEY_LENGTH,
  SPACE,
  tooDeep,
  unlessTooDeep,
} from './flow.ts';
import { type KeyShape, keyAt } from './keys.ts';
import { contentLines, isBlank } from './lines.ts';
import { blockMap, blockSeq, keyOf, pair, scalar } from './nodes.ts';
import type { Outer, Syntax } from './syntax.ts';
import type { MapNode, Node, Pair, ScalarNode, SeqNode } from './tree.ts';

const NONE: readonly Outer[] = [];

/** `above`: the mappings that hold the text, outermost first. null: it nests too deep to be read. */
export function parse(text: string, above: readonly Outer[] = NONE): Syntax | null {
  const parser = new Parser(text);
  const root = unlessTooDeep(() => parser.root(above));
  const { defects, more, marks } = parser;
  return root && { root, defects, more, marks };
}

const nothingMore = new Map<Node, Node[]>();

class Parser extends FlowParser {
  more = nothingMore;
  /** Where a key was looked for last, and what stands there. */
  private keyStart = -1;
  private key: KeyShape | null = null;

  root(above: readonly Outer[]): MapNode {
    this.nextContent();
    return this.blockMap(above[0]?.column ?? Math.max(0, this.column()), -1, 0, false, above);
  }

  /**
   * The lines right of column `outer` as a mapping whose keys stand in column `indent`. A key in
   * another column is one of its own too: no other place could be meant for it.
   */
  private blockMap(
    indent: number,
    outer: number,
    depth: number,
    takesDashes = false,
    above = NONE,
  ): MapNode {
    if (depth > MAX_DEPTH) throw tooDeep;
    const pairs: Pair[] = [];
    const holder = above[0];
    if (holder) {
      const inner = above[1];
      const held = inner && this.blockMap(inner.column, indent, depth + 1, true, above.slice(1));
      pairs.push(pair(scalar(holder.key, 'plain', 0, 0), held ?? this.below(indent, depth), 0));
    }
    let last = indent;
    // A first key is there already, wherever it stands.
    for (let column = this.column(); ; column = this.column()) {
      const isOwn = column > outer || (column === outer && takesDashes && this.goesOn());
      if (!isOwn && (pairs.length > 0 || column < 0)) break;
      // Further keys in one column too far right are out of line together.
      if (column !== indent && (column < indent || column !== last)) {
        this.note('out-of-line', this.at, this.at + 1);
      }
      last = column;
      // Behind a key that slipped to the left, its mapping goes on.
      pairs.push(this.blockPair(Math.max(column, indent), depth));
    }
    return blockMap(pairs);
  }

  private blockPair(indent: number, depth: number): Pair {
    const key = this.blockKey();
    if (key) {
      const colonEnd = this.at;
      if (!this.skipToValue()) return pair(key, this.below(indent, depth), colonEnd);
      const value = this.inline(indent, depth);
      this.behindValue(value, indent, depth, true, true);
      return pair(key, value, colonEnd);
    }
    const bare = this.plain();
    this.note('no-colon', bare.span.start, bare.span.end);
    this.finishLine();
    return pair(bare, this.below(indent, depth), bare.span.end);
  }

  /** Reads a key and its colon; leaves just behind the colon. null: no key stands here. */
  private blockKey(): ScalarNode | null {
    const { text, at } = this;
    const shape = this.keyHere();
    if (!shape) return null;
    const { key, start, end, colon } = shape;
    const isQuoted = isQuote(text.charCodeAt(start));
    const isCommon =
      start === at &&
      end === colon &&
      this.isGap(colon + 1) &&
      (isQuoted
        ? !key.includes('\\')
        : isPlainStart(text.charCodeAt(start)) &&
          end - start <= MAX_KEY_LENGTH &&
          !key.includes('\t'));
    if (!isCommon) this.note('uncommon', at, colon + 1);
    this.at = colon + 1;
    return keyOf(text, shape);
  }

  /** `key:`, as in `- file: x`. */
  private keyHere(): KeyShape | null {
    const { text, at } = this;
    if (this.keyStart !== at) {
      this.keyStart = at;
      const isPlain = isPlainStart(text.charCodeAt(at));
      this.key = keyAt(text, at, isPlain ? text.length : this.lineEnd(at));
    }
    return this.key;
  }

  /** A scalar or flow collection on the line at hand; leaves at the next content line. */
  private inline(indent: number, depth: number): Node {
    const { text } = this;
    const code = text.charCodeAt(this.at);
    if (code === 0x7c || code === 0x3e) return this.prose(indent);
    const value = isOpening(code)
      ? this.flow(indent, depth + 1)
      : isQuote(code)
        ? this.linesQuoted()
        : this.plain();
    if (this.end < text.length) {
      // The next key's line was reached within brackets.
      this.end = text.length;
      this.nextContent();
    } else this.finishLine();
    return value;
  }

  /** `|` or `>` and the lines under it, as they are written: up to the next one in column `indent`. */
  private prose(indent: number): ScalarNode {
    const { text } = this;
    const start = this.at;
    this.note('uncommon', start, start + 1);
    let end = this.lineEnd(start);
    for (this.at = end; this.at < text.length; ) {
      const from = this.overBreak(this.at);
      let at = from;
      while (text.charCodeAt(at) === SPACE) at++;
      const stop = this.lineEnd(at);
      const isEmpty = isBlank(text, at, stop);
      this.at = from;
      this.line = from;
      if (!isEmpty && at - from <= indent) break;
      if (!isEmpty || at - from > indent) end = stop;
      this.at = stop;
    }
    const style = text[start] === '|' ? 'literal' : 'folded';
    this.nextContent();
    return scalar(text.slice(start, end), style, start, end);
  }

  /** What stands on the lines below a key in column `indent`, or below a dash there. */
  private below(indent: number, depth: number, isItem = false): Node | null {
    // Properties may stand on lines of their own.
    let isBehind = false;
    while (!isBehind && this.column() > indent && this.startsProperty() && !this.keyHere()) {
      isBehind = this.skipToValue();
    }
    const column = this.column();
    const isDash = this.isDash(this.at);
    if (column < indent || (column === indent && (!isDash || isItem))) return null;
    let value: Node;
    if (isBehind) value = this.inline(indent, depth);
    else if (isDash) value = this.blockSeq(indent + (isItem ? 0 : -1), depth + 1);
    else if (this.keyHere() || this.isKeyAhead(indent))
      value = this.blockMap(column, indent, depth + 1, !isItem);
    else {
      this.note('uncommon', this.at, this.at + 1);
      value = this.inline(indent, depth);
    }
    this.behindValue(value, indent, depth, !isItem, false);
    return value;
  }

  private startsProperty(): boolean {
    const code = this.text.charCodeAt(this.at);
    return code === 0x26 || code === 0x21;
  }

  /** Whether a word without its colon stands here, with keys on the lines below. */
  private isKeyAhead(indent: number): boolean {
    const { text } = this;
    if (!isPlainStart(text.charCodeAt(this.at))) return false;
    for (const line of contentLines(text, this.overBreak(this.lineEnd(this.at)), text.length)) {
      if (line.indent <= indent) return false;
      if (keyAt(text, line.at, line.end)) return true;
    }
    return false;
  }

  /**
   * Lines that belong to a value in column `indent` and can't: lists and mappings are kept aside. A
   * key behind a value that is whole may be left to the mapping that holds it.
   */
  private behindValue(
    value: Node,
    indent: number,
    depth: number,
    takesDashes: boolean,
    leavesKeys: boolean,
  ): void {
    for (;;) {
      const column = this.column();
      if (column < indent || this.at >= this.text.length) return;
      if (column === indent && !(takesDashes && this.goesOn())) return;
      const isDash = this.isDash(this.at);
      const start = this.at;
      if (isDash || this.keyHere()) {
        if (leavesKeys && !isDash) return;
        this.note('second', start, start + 1);
        this.keep(
          value,
          isDash ? this.blockSeq(indent - 1, depth + 1) : this.blockMap(column, indent, depth + 1),
        );
      } else {
        this.note('stray', start, this.lineEnd(start));
        this.at = this.overBreak(this.lineEnd(start));
        this.nextContent();
      }
    }
  }

  private keep(value: Node, node: Node): void {
    if (this.more === nothingMore) this.more = new Map();
    const known = this.more.get(value);
    if (known) known.push(node);
    else this.more.set(value, [node]);
  }

  /** The items right of column `outer`, all meant to stand below the first one. */
  private blockSeq(outer: number, depth: number): SeqNode {
    if (depth > MAX_DEPTH) throw tooDeep;
    const items: (Node | null)[] = [];
    const dashes: number[] = [];
    const start = this.at;
    const indent = this.column();
    let dash = start;
    for (let column = indent; this.isDash(this.at); column = this.column()) {
      if (column <= outer && items.length > 0) break;
      if (column !== indent) this.note('out-of-line', this.at, this.at + 1);
      dash = this.at++;
      dashes.push(dash);
      items.push(this.item(Math.max(column, indent), depth));
    }
    const node = blockSeq(items, start, dash);
    this.marks.set(node, dashes);
    return node;
  }

  /** What stands behind a dash, or below it. */
  private item(indent: number, depth: number): Node | null {
    if (!this.skipToValue()) return this.below(indent, depth, true);
    const column = this.at - this.line;
    let value: Node;
    if (this.isDash(this.at)) {
      this.note('uncommon', this.at, this.at + 1);
      value = this.blockSeq(indent, depth + 1);
    } else if (this.keyHere()) value = this.blockMap(column, indent, depth + 1);
    else value = this.inline(indent, depth);
    this.behindValue(value, indent, depth, false, false);
    return value;
  }
}
