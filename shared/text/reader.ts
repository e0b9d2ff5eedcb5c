/**
 * Reads a chunk in one pass where it is written in the profile's common shapes: block and flow
 * mappings and lists, plain and quoted scalars on one line, comments. Anything else makes it give
 * up, and `yaml` reads the chunk. What it does read it reads as YAML 1.2.2 says; that is tested
 * against `yaml` on mutated plans. It exists because `yaml` needs about a second for 2 MB.
 */
import { MAX_DEPTH } from './budgets.ts';
import { closingQuote } from './keys.ts';
import { blockMap, blockSeq, pair, scalar } from './nodes.ts';
import { unquoteDouble, unquoteSingle } from './quotes.ts';
import type { MapNode, Node, Pair, ScalarNode, SeqNode } from './tree.ts';

/** Implicit keys are limited to 1,024 characters (YAML 1.2.2, 7.4.2). */
const MAX_KEY_LENGTH = 1000;

const SPACE = 0x20;
const LF = 0x0a;
const CR = 0x0d;
const HASH = 0x23;
const COLON = 0x3a;
const COMMA = 0x2c;
const DASH = 0x2d;
const DOUBLE = 0x22;
const SINGLE = 0x27;
const OPEN_LIST = 0x5b;
const CLOSE_LIST = 0x5d;
const OPEN_MAP = 0x7b;
const CLOSE_MAP = 0x7d;

/** ASCII characters that may start a plain scalar whatever follows them; `<` may start a merge key. */
const plainStart = new Uint8Array(128);
for (let code = 0x21; code < 0x7f; code++) {
  if (!',[]{}#&*!|<>\'"%@`-?:'.includes(String.fromCharCode(code))) plainStart[code] = 1;
}

class GiveUp extends Error {}
/** One for all: making it costs more than reading a short entry. */
const giveUp = new GiveUp('not in the common shapes');

/**
 * The tree of `text`, whose first key stands on its first line, or null where it holds anything
 * out of the common.
 */
export function readCommon(text: string): MapNode | null {
  try {
    return new Reader(text).root();
  } catch (thrown) {
    if (thrown === giveUp) return null;
    throw thrown;
  }
}

class Reader {
  readonly #text: string;
  #at = 0;
  /** Start of the line that `#at` is on. */
  #line = 0;

  constructor(text: string) {
    this.#text = text;
  }

  root(): MapNode {
    const indent = this.#nextContent();
    const root = this.#blockMap(indent, 0);
    if (this.#at < this.#text.length) throw giveUp;
    return root;
  }

  /** Goes to the next line's content, over blanks and comments; its column, -1 at the end. */
  #nextContent(): number {
    const text = this.#text;
    let at = this.#at;
    for (;;) {
      this.#line = at;
      while (text.charCodeAt(at) === SPACE) at++;
      const code = text.charCodeAt(at);
      if (code === HASH) at = this.#lineEnd(at);
      else if (code !== LF && code !== CR) break;
      at = this.#overBreak(at);
      if (at >= text.length) break;
    }
    this.#at = at;
    if (at >= text.length) return -1;
    if (text.charCodeAt(at) === 0x09) throw giveUp;
    return at - this.#line;
  }

  #lineEnd(from: number): number {
    const text = this.#text;
    let at = from;
    for (let code = text.charCodeAt(at); code !== LF && code !== CR && at < text.length; ) {
      code = text.charCodeAt(++at);
    }
    return at;
  }

  #overBreak(at: number): number {
    const text = this.#text;
    if (at >= text.length) return at;
    if (text.charCodeAt(at) === LF) return at + 1;
    // A lone CR is a break to the editor and to YAML, and none to `yaml`.
    if (text.charCodeAt(at) !== CR || text.charCodeAt(at + 1) !== LF) throw giveUp;
    return at + 2;
  }

  /** From behind a value: over blanks and a comment to the next content line; its column. */
  #finishLine(): number {
    const text = this.#text;
    const from = this.#at;
    let at = from;
    while (text.charCodeAt(at) === SPACE) at++;
    if (at < text.length) {
      const code = text.charCodeAt(at);
      if (code === HASH && at > from) at = this.#lineEnd(at);
      else if (code !== LF && code !== CR) throw giveUp;
    }
    this.#at = this.#overBreak(at);
    return this.#nextContent();
  }

  #isDash(at: number): boolean {
    if (this.#text.charCodeAt(at) !== DASH) return false;
    const next = this.#text.charCodeAt(at + 1);
    return next === SPACE || next === LF || next === CR || at + 1 >= this.#text.length;
  }

  /** At a key in column `indent`; leaves at the first content line that is no key of it. */
  #blockMap(indent: number, depth: number): MapNode {
    if (depth > MAX_DEPTH) throw giveUp;
    const pairs: Pair[] = [];
    for (;;) {
      const key = this.#blockKey();
      const colonEnd = this.#at;
      const value = this.#blockValue(indent, depth);
      pairs.push(pair(key, value, colonEnd));
      const column = this.#column();
      if (column < indent) return blockMap(pairs);
      if (column > indent || this.#isDash(this.#at)) throw giveUp;
    }
  }

  #column(): number {
    return this.#at >= this.#text.length ? -1 : this.#at - this.#line;
  }

  /** Reads a key and its colon; leaves just behind the colon. */
  #blockKey(): ScalarNode {
    const text = this.#text;
    const start = this.#at;
    const code = text.charCodeAt(start);
    if (code === DOUBLE || code === SINGLE) {
      const key = this.#quoted();
      if (text.charCodeAt(this.#at) !== COLON || !this.#isGap(this.#at + 1)) throw giveUp;
      this.#at++;
      return key;
    }
    if (!isPlainStart(code)) throw giveUp;
    let at = start;
    for (; ; at++) {
      const each = text.charCodeAt(at);
      if (each === COLON && this.#isGap(at + 1)) break;
      if (each === HASH && text.charCodeAt(at - 1) === SPACE) throw giveUp;
      if (each === LF || each === CR || each === 0x09 || at >= text.length) throw giveUp;
    }
    if (at - start > MAX_KEY_LENGTH || text.charCodeAt(at - 1) === SPACE) throw giveUp;
    this.#at = at + 1;
    return scalar(text.slice(start, at), 'plain', start, at);
  }

  /** A space or the line's end. */
  #isGap(at: number): boolean {
    const code = this.#text.charCodeAt(at);
    return code === SPACE || code === LF || code === CR || at >= this.#text.length;
  }

  /** Behind the colon of a key in column `indent`; leaves at the next content line. */
  #blockValue(indent: number, depth: number): Node | null {
    if (!this.#skipToValue()) {
      const column = this.#nextContent();
      if (column > indent) return this.#block(column, depth + 1);
      if (column === indent && this.#isDash(this.#at)) return this.#blockSeq(indent, depth + 1);
      return null;
    }
    const value = this.#inline(indent, depth);
    if (this.#column() > indent) throw giveUp;
    return value;
  }

  /** Over spaces; false where the line holds no value (it is then left behind). */
  #skipToValue(): boolean {
    const text = this.#text;
    let at = this.#at;
    while (text.charCodeAt(at) === SPACE) at++;
    const code = text.charCodeAt(at);
    if (at < text.length && code !== LF && code !== CR && code !== HASH) {
      this.#at = at;
      return true;
    }
    if (code === HASH) at = this.#lineEnd(at);
    this.#at = this.#overBreak(at);
    return false;
  }

  /** A scalar or flow collection on the line at hand; leaves at the next content line. */
  #inline(indent: number, depth: number): Node {
    const code = this.#text.charCodeAt(this.#at);
    let value: Node;
    if (code === OPEN_MAP) value = this.#flowMap(indent, depth + 1);
    else if (code === OPEN_LIST) value = this.#flowSeq(indent, depth + 1);
    else if (code === DOUBLE || code === SINGLE) value = this.#quoted();
    else value = this.#plain();
    this.#finishLine();
    return value;
  }

  #block(column: number, depth: number): Node {
    if (depth > MAX_DEPTH) throw giveUp;
    return this.#isDash(this.#at) ? this.#blockSeq(column, depth) : this.#blockMap(column, depth);
  }

  #blockSeq(indent: number, depth: number): SeqNode {
    if (depth > MAX_DEPTH) throw giveUp;
    const start = this.#at;
    const items: (Node | null)[] = [];
    let dash = start;
    for (;;) {
      dash = this.#at;
      this.#at++;
      items.push(this.#item(indent, depth));
      if (this.#column() !== indent || !this.#isDash(this.#at)) break;
    }
    // The keys of the mapping that holds a list may stand in its column.
    if (this.#column() > indent) throw giveUp;
    return blockSeq(items, start, dash);
  }

  #item(indent: number, depth: number): Node | null {
    if (!this.#skipToValue()) {
      const column = this.#nextContent();
      return column > indent ? this.#block(column, depth + 1) : null;
    }
    if (this.#isDash(this.#at)) throw giveUp;
    if (this.#startsKey()) return this.#blockMap(this.#at - this.#line, depth + 1);
    const value = this.#inline(indent, depth);
    if (this.#column() > indent) throw giveUp;
    return value;
  }

  /** Whether `key:` stands here, as in `- file: x`. */
  #startsKey(): boolean {
    const text = this.#text;
    const code = text.charCodeAt(this.#at);
    let at = this.#at;
    if (code === DOUBLE || code === SINGLE) {
      const close = closingQuote(text, at, text.length, true);
      return close > 0 && text.charCodeAt(close + 1) === COLON;
    }
    if (!isPlainStart(code)) return false;
    for (; at < text.length; at++) {
      const each = text.charCodeAt(at);
      if (each === COLON && this.#isGap(at + 1)) return true;
      if (each === LF || each === CR) return false;
      if (each === HASH && text.charCodeAt(at - 1) === SPACE) return false;
    }
    return false;
  }

  /** A plain scalar up to the line's end or a comment. */
  #plain(): ScalarNode {
    const text = this.#text;
    const start = this.#at;
    if (!this.#startsPlain(start)) throw giveUp;
    let at = start;
    for (; at < text.length; at++) {
      const code = text.charCodeAt(at);
      if (code === LF || code === CR) break;
      if (code === COLON && this.#isGap(at + 1)) throw giveUp;
      if (code === HASH && text.charCodeAt(at - 1) === SPACE) break;
      if (code === 0x09) throw giveUp;
    }
    while (text.charCodeAt(at - 1) === SPACE) at--;
    this.#at = at;
    return scalar(text.slice(start, at), 'plain', start, at);
  }

  #startsPlain(at: number): boolean {
    const code = this.#text.charCodeAt(at);
    if (isPlainStart(code)) return true;
    const next = this.#text.charCodeAt(at + 1);
    return code === DASH && next > SPACE && isPlainStart(next);
  }

  /** A quoted scalar that closes on its line. */
  #quoted(): ScalarNode {
    const text = this.#text;
    const start = this.#at;
    const close = closingQuote(text, start, text.length, true);
    if (close < 0) throw giveUp;
    const inner = text.slice(start + 1, close);
    const isDouble = text.charCodeAt(start) === DOUBLE;
    const value = isDouble ? unquoteDouble(inner) : unquoteSingle(inner);
    if (value === null) throw giveUp;
    this.#at = close + 1;
    return scalar(value, isDouble ? 'double' : 'single', start, close + 1);
  }

  /** Over blanks, breaks and comments inside brackets; lines must stand right of `indent`. */
  #flowGap(indent: number): void {
    const text = this.#text;
    for (;;) {
      const from = this.#at;
      let at = from;
      while (text.charCodeAt(at) === SPACE) at++;
      const code = text.charCodeAt(at);
      if (code === HASH && (at > from || text.charCodeAt(at - 1) === LF)) at = this.#lineEnd(at);
      else if (code !== LF && code !== CR) {
        if (at >= text.length || code === 0x09 || code === HASH) throw giveUp;
        this.#at = at;
        if (this.#line > 0 && from === this.#line && at - this.#line <= indent) throw giveUp;
        return;
      }
      this.#at = this.#overBreak(at);
      this.#line = this.#at;
      if (this.#at >= text.length) throw giveUp;
    }
  }

  #flowMap(indent: number, depth: number): MapNode {
    if (depth > MAX_DEPTH) throw giveUp;
    const text = this.#text;
    const start = this.#at++;
    const pairs: Pair[] = [];
    for (;;) {
      this.#flowGap(indent);
      if (text.charCodeAt(this.#at) === CLOSE_MAP) break;
      pairs.push(this.#flowPair(indent, depth));
      this.#flowGap(indent);
      if (text.charCodeAt(this.#at) === COMMA) this.#at++;
      else if (text.charCodeAt(this.#at) !== CLOSE_MAP) throw giveUp;
    }
    this.#at++;
    return { kind: 'map', span: { start, end: this.#at }, flow: true, pairs };
  }

  #flowPair(indent: number, depth: number): Pair {
    const text = this.#text;
    const key = this.#flowScalar();
    const line = this.#line;
    const keyEnd = this.#at;
    this.#flowGap(indent);
    if (text.charCodeAt(this.#at) !== COLON) return pair(key, null, keyEnd);
    // `"a":b` and a key with its colon on the next line are legal, and rare.
    if (line !== this.#line || key.span.end - key.span.start > MAX_KEY_LENGTH) throw giveUp;
    const colonEnd = ++this.#at;
    if (!this.#isFlowGap(colonEnd)) throw giveUp;
    this.#flowGap(indent);
    const code = text.charCodeAt(this.#at);
    if (code === COMMA || code === CLOSE_MAP) return pair(key, null, colonEnd);
    return pair(key, this.#flowNode(indent, depth), colonEnd);
  }

  #isFlowGap(at: number): boolean {
    const code = this.#text.charCodeAt(at);
    return this.#isGap(at) || code === COMMA || code === CLOSE_MAP || code === CLOSE_LIST;
  }

  #flowSeq(indent: number, depth: number): SeqNode {
    if (depth > MAX_DEPTH) throw giveUp;
    const text = this.#text;
    const start = this.#at++;
    const items: Node[] = [];
    for (;;) {
      this.#flowGap(indent);
      if (text.charCodeAt(this.#at) === CLOSE_LIST) break;
      items.push(this.#flowNode(indent, depth));
      this.#flowGap(indent);
      if (text.charCodeAt(this.#at) === COMMA) this.#at++;
      else if (text.charCodeAt(this.#at) !== CLOSE_LIST) throw giveUp;
    }
    this.#at++;
    return { kind: 'seq', span: { start, end: this.#at }, flow: true, items };
  }

  #flowNode(indent: number, depth: number): Node {
    const code = this.#text.charCodeAt(this.#at);
    if (code === OPEN_MAP) return this.#flowMap(indent, depth + 1);
    if (code === OPEN_LIST) return this.#flowSeq(indent, depth + 1);
    return this.#flowScalar();
  }

  /** A scalar between brackets, on one line. */
  #flowScalar(): ScalarNode {
    const text = this.#text;
    const start = this.#at;
    const first = text.charCodeAt(start);
    if (first === DOUBLE || first === SINGLE) return this.#quoted();
    if (!this.#startsPlain(start)) throw giveUp;
    let at = start;
    for (; at < text.length; at++) {
      const code = text.charCodeAt(at);
      if (code === COMMA || code === OPEN_MAP || code === CLOSE_MAP) break;
      if (code === OPEN_LIST || code === CLOSE_LIST || code === LF || code === CR) break;
      if (code === COLON && (this.#isFlowGap(at + 1) || isOpening(text.charCodeAt(at + 1)))) break;
      if (code === HASH && text.charCodeAt(at - 1) === SPACE) break;
      if (code === 0x09) throw giveUp;
    }
    while (text.charCodeAt(at - 1) === SPACE) at--;
    this.#at = at;
    return scalar(text.slice(start, at), 'plain', start, at);
  }
}

const isOpening = (code: number): boolean => code === OPEN_MAP || code === OPEN_LIST;

/** Letters beyond ASCII may start a scalar too, but not a byte order mark or a blank. */
const isPlainStart = (code: number): boolean =>
  code < 128 ? plainStart[code] === 1 : code >= 0xc0 && code < 0xfeff;
