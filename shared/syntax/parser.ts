/**
 * Parses a chunk in one pass, whatever state it is in. Of a text in the profile's common shapes
 * (block and flow mappings and lists, plain and quoted scalars on one line, comments) the tree is
 * what YAML 1.2.2 says; that is tested against `yaml` on mutated plans. Of any other text it is what
 * the lines' columns and the brackets say, and the defects name where it departs from the common.
 */
import { MAX_DEPTH } from './budgets.ts';
import {
  COLON,
  FlowParser,
  HASH,
  isOpening,
  isPlainStart,
  isQuote,
  isSpecial,
  MAX_KEY_LENGTH,
  SPACE,
  TAB,
  tooDeep,
  unlessTooDeep,
} from './flow.ts';
import { closingQuote, keyAt } from './keys.ts';
import { isBlank } from './lines.ts';
import { blockMap, blockSeq, keyOf, pair, scalar } from './nodes.ts';
import type { Outer, Syntax } from './syntax.ts';
import type { MapNode, Node, Pair, ScalarNode, SeqNode } from './tree.ts';

const NONE: readonly Outer[] = [];

/** `above`: the mappings that hold the text, outermost first. null: it nests too deep to be read. */
export function parse(text: string, above: readonly Outer[] = NONE): Syntax | null {
  const marks = new Map<Node, readonly number[]>();
  const parser = new Parser(text, marks);
  const root = unlessTooDeep(() => parser.root(above));
  return root && { root, defects: parser.defects, more: parser.more ?? new Map(), marks };
}

/** The tree of `text`, null where it holds anything out of the common. */
export function readCommon(text: string): MapNode | null {
  const parser = new Parser(text, null);
  const root = unlessTooDeep(() => parser.root(NONE));
  return root && parser.defects.length === 0 && root.pairs.length > 0 ? root : null;
}

class Parser extends FlowParser {
  more: Map<Node, Node[]> | null = null;
  /** Where a key was looked for last, and its colon: -1 where there is none. */
  private keyStart = -1;
  private keyColon = -1;

  root(above: readonly Outer[]): MapNode {
    this.nextContent();
    const root = this.blockMap(above[0]?.column ?? Math.max(0, this.column()), 0, above);
    // Left of the key that leads the text nothing of it may stand.
    if (this.at < this.text.length) this.below(root, -1, 0, true);
    return root;
  }

  /** At a line in column `indent`; leaves at the first content line that is none of its own. */
  private blockMap(indent: number, depth: number, above = NONE): MapNode {
    if (depth > MAX_DEPTH) throw tooDeep;
    const pairs: Pair[] = [];
    const outer = above[0];
    if (outer) {
      const inner = above.slice(1);
      const held = inner[0] ? this.blockMap(inner[0].column, depth + 1, inner) : null;
      const value = this.below(held, indent, depth, true);
      pairs.push(pair(scalar(outer.key, 'plain', 0, 0), value, 0));
    }
    while (this.column() === indent) pairs.push(this.blockPair(indent, depth));
    return blockMap(pairs);
  }

  private blockPair(indent: number, depth: number): Pair {
    const key = this.blockKey();
    if (key) {
      const colonEnd = this.at;
      const value = this.skipToValue() ? this.inline(indent, depth) : null;
      return pair(key, this.below(value, indent, depth, true), colonEnd);
    }
    const bare = this.plain();
    this.note('no-colon', bare.span.start, bare.span.end);
    this.finishLine();
    return pair(bare, this.below(null, indent, depth, true), bare.span.end);
  }

  /** Reads a key and its colon; leaves just behind the colon. null: no key stands here. */
  private blockKey(): ScalarNode | null {
    const { text } = this;
    const start = this.at;
    const code = text.charCodeAt(start);
    if (isQuote(code)) {
      const close = closingQuote(text, start, text.length, true);
      if (close < 0 || text.charCodeAt(close + 1) !== COLON || !this.isGap(close + 2)) {
        return this.uncommonKey();
      }
      const key = this.quoted();
      this.at++;
      return key;
    }
    if (!isPlainStart(code)) return this.uncommonKey();
    const colon = this.keyStart === start ? this.keyColon : this.plainKeyEnd(start);
    if (colon < 0 || colon - start > MAX_KEY_LENGTH || text.charCodeAt(colon - 1) === SPACE) {
      return this.uncommonKey();
    }
    this.at = colon + 1;
    return scalar(text.slice(start, colon), 'plain', start, colon);
  }

  /** The colon of the plain key that starts at `start`; -1 where there is none. */
  private plainKeyEnd(start: number): number {
    const { text } = this;
    for (let at = start; at < text.length; at++) {
      const code = text.charCodeAt(at);
      if (!isSpecial(code)) continue;
      if (code === COLON && this.isGap(at + 1)) return at;
      if (code === HASH && text.charCodeAt(at - 1) === SPACE) return -1;
      if (code === 0x0a || code === 0x0d || code === TAB) return -1;
    }
    return -1;
  }

  private uncommonKey(): ScalarNode | null {
    const { text, at } = this;
    const shape = keyAt(text, at, this.lineEnd(at));
    if (!shape) return null;
    this.note('uncommon', at, shape.colon + 1);
    this.at = shape.colon + 1;
    return keyOf(text, shape);
  }

  /** Whether `key:` stands here, as in `- file: x`. */
  private startsKey(): boolean {
    const { text, at } = this;
    const code = text.charCodeAt(at);
    if (isPlainStart(code)) {
      this.keyStart = at;
      this.keyColon = this.plainKeyEnd(at);
      if (this.keyColon > 0) return true;
    }
    return keyAt(text, at, this.lineEnd(at)) !== null;
  }

  /** A scalar or flow collection on the line at hand; leaves at the next content line. */
  private inline(indent: number, depth: number): Node {
    const { text } = this;
    const code = text.charCodeAt(this.at);
    if (code === 0x7c || code === 0x3e) return this.prose(indent);
    const value = isOpening(code)
      ? this.flow(indent, depth + 1)
      : isQuote(code)
        ? this.quoted()
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

  /**
   * What stands on the lines below a key or dash in column `indent`, behind its value if it has one.
   * Where that is more than one thing, all but the first are kept aside.
   */
  private below(
    first: Node | null,
    indent: number,
    depth: number,
    takesDashes: boolean,
  ): Node | null {
    let value = first;
    for (;;) {
      const column = this.column();
      if (column < indent || this.at >= this.text.length) return value;
      const isDash = this.isDash(this.at);
      if (column === indent && !(isDash && takesDashes)) return value;
      const start = this.at;
      let node: Node;
      if (isDash) node = this.blockSeq(column, depth + 1);
      else if (this.startsKey()) node = this.blockMap(column, depth + 1);
      else if (value === null) {
        this.note('uncommon', start, start + 1);
        node = this.inline(indent, depth);
      } else {
        this.note('stray', start, this.lineEnd(start));
        this.at = this.overBreak(this.lineEnd(start));
        this.nextContent();
        continue;
      }
      if (value === null) value = node;
      else {
        this.note('second', start, start + 1);
        this.keep(value, node);
      }
    }
  }

  private keep(value: Node, node: Node): void {
    this.more ??= new Map();
    const known = this.more.get(value);
    if (known) known.push(node);
    else this.more.set(value, [node]);
  }

  private blockSeq(indent: number, depth: number): SeqNode {
    if (depth > MAX_DEPTH) throw tooDeep;
    const items: (Node | null)[] = [];
    const dashes: number[] | null = this.marks && [];
    const start = this.at;
    let dash = start;
    while (this.column() === indent && this.isDash(this.at)) {
      dash = this.at++;
      dashes?.push(dash);
      items.push(this.below(this.item(indent, depth), indent, depth, false));
    }
    const node = blockSeq(items, start, dash);
    if (dashes) this.marks?.set(node, dashes);
    return node;
  }

  /** What stands behind a dash on its line. */
  private item(indent: number, depth: number): Node | null {
    if (!this.skipToValue()) return null;
    const column = this.at - this.line;
    if (this.isDash(this.at)) {
      this.note('uncommon', this.at, this.at + 1);
      return this.blockSeq(column, depth + 1);
    }
    return this.startsKey() ? this.blockMap(column, depth + 1) : this.inline(indent, depth);
  }
}
