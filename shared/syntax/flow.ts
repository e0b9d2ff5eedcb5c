/** Parses what lines are made of: gaps, scalars, and braces and brackets, closed or not. */
import { MAX_DEPTH } from './budgets.ts';
import { closingQuote, hasKeys, skipProperties } from './keys.ts';
import { indentAt, isBlank } from './lines.ts';
import { pair, scalar } from './nodes.ts';
import { unquoteDouble, unquoteSingle } from './quotes.ts';
import type { Defect, DefectKind } from './syntax.ts';
import type { MapNode, Node, Pair, ScalarNode, SeqNode } from './tree.ts';

const TAB = 0x09;
const LF = 0x0a;
const CR = 0x0d;
export const SPACE = 0x20;
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

/** Letters beyond ASCII may start a scalar too, but not a byte order mark or a blank. */
export const isPlainStart = (code: number): boolean =>
  code < 128 ? plainStart[code] === 1 : code >= 0xc0 && code < 0xfeff;

/** ASCII characters that may end a plain scalar, or be out of the common in it. */
const special = new Uint8Array(128);
for (const one of '\t\n\r:#,[]{}') special[one.charCodeAt(0)] = 1;
const isSpecial = (code: number): boolean => code < 128 && special[code] === 1;

export const isOpening = (code: number): boolean => code === OPEN_MAP || code === OPEN_LIST;
const isClosing = (code: number): boolean => code === CLOSE_MAP || code === CLOSE_LIST;
export const isQuote = (code: number): boolean => code === DOUBLE || code === SINGLE;
const isBreak = (code: number): boolean => code === LF || code === CR;

/** Implicit keys are limited to 1,024 characters (YAML 1.2.2, 7.4.2). */
export const MAX_KEY_LENGTH = 1000;

/** Whether the collection that opens at `start` is still open at `end`, in whatever columns. */
export function isFlowOpen(text: string, start: number, end: number): boolean {
  const parser = new FlowParser(text);
  return unlessTooDeep(() => parser.isOpen(start, end)) ?? true;
}

/** Thrown where a text nests deeper than anything that is read. */
export const tooDeep = Symbol('too deep');

/** null: it does. */
export function unlessTooDeep<T>(read: () => T): T | null {
  try {
    return read();
  } catch (thrown) {
    if (thrown === tooDeep) return null;
    throw thrown;
  }
}

const nothing: (Node | null)[] = [];

const none: Defect[] = [];

export class FlowParser {
  protected readonly text: string;
  protected at = 0;
  /** Start of the line that `at` is on. */
  protected line = 0;
  /** Where brackets that are not closed end: before the next key of the mapping that they stand in. */
  protected end: number;
  defects: Defect[] = none;
  readonly marks = new Map<Node, readonly number[]>();

  constructor(text: string) {
    this.text = text;
    this.end = text.length;
  }

  protected note(kind: DefectKind, start: number, end: number): void {
    if (this.defects === none) this.defects = [];
    this.defects.push({ kind, span: { start, end } });
  }

  /** Column of the content that `at` is on; -1 at the end. */
  protected column(): number {
    return this.at >= this.text.length ? -1 : this.at - this.line;
  }

  /** Goes to the next line's content, over blanks and comments. */
  protected nextContent(): void {
    const { text } = this;
    let at = this.at;
    for (;;) {
      this.line = at;
      while (text.charCodeAt(at) === SPACE) at++;
      const code = text.charCodeAt(at);
      if (code === HASH) at = this.lineEnd(at);
      else if (code === TAB) {
        const end = this.lineEnd(at);
        this.note('blank', at, at + 1);
        if (!isBlank(text, at, end)) break;
        at = end;
      } else if (!isBreak(code)) break;
      at = this.overBreak(at);
      if (at >= text.length) break;
    }
    this.at = at;
  }

  protected lineEnd(from: number): number {
    const { text } = this;
    let at = from;
    for (let code = text.charCodeAt(at); !isBreak(code) && at < text.length; ) {
      code = text.charCodeAt(++at);
    }
    return at;
  }

  protected overBreak(at: number): number {
    const { text } = this;
    if (at >= text.length) return at;
    if (text.charCodeAt(at) === LF) return at + 1;
    if (text.charCodeAt(at + 1) === LF) return at + 2;
    // A lone CR is a break to the editor and to YAML, and none to `yaml`.
    this.note('blank', at, at + 1);
    return at + 1;
  }

  /** From behind a value: over blanks and a comment to the next content line. */
  protected finishLine(): void {
    const { text } = this;
    const from = this.at;
    let at = from;
    while (text.charCodeAt(at) === SPACE) at++;
    const code = text.charCodeAt(at);
    if (code === HASH && at > from) at = this.lineEnd(at);
    else if (!isBreak(code) && at < text.length) {
      const end = this.lineEnd(at);
      this.note('behind', at, end);
      at = end;
    }
    this.at = this.overBreak(at);
    this.nextContent();
  }

  protected isDash(at: number): boolean {
    return this.text.charCodeAt(at) === DASH && this.isGap(at + 1);
  }

  /** What may stand as far left as the key that it belongs to: an item, or a bracket that closes. */
  protected goesOn(): boolean {
    return this.isDash(this.at) || isClosing(this.text.charCodeAt(this.at));
  }

  /** A space or the line's end. */
  protected isGap(at: number): boolean {
    const code = this.text.charCodeAt(at);
    return code === SPACE || code === LF || code === CR || at >= this.text.length;
  }

  protected isFlowGap(at: number): boolean {
    const code = this.text.charCodeAt(at);
    return this.isGap(at) || code === COMMA || isClosing(code);
  }

  /** Over spaces and properties; false where no value is on the line: then on to the next content. */
  protected skipToValue(): boolean {
    const { text } = this;
    let at = this.at;
    while (text.charCodeAt(at) === SPACE) at++;
    let code = text.charCodeAt(at);
    if (code === 0x26 || code === 0x21) {
      const start = at;
      at = skipProperties(text, at, this.lineEnd(at));
      this.note('uncommon', start, at);
      code = text.charCodeAt(at);
    }
    if (at < text.length && !isBreak(code) && code !== HASH) {
      const end = code === TAB ? this.lineEnd(at) : at;
      if (code !== TAB || !isBlank(text, at, end)) {
        this.at = at;
        return true;
      }
      this.note('blank', at, end);
    }
    this.at = this.overBreak(this.lineEnd(at));
    this.nextContent();
    return false;
  }

  /** A plain scalar up to the line's end or a comment. */
  protected plain(): ScalarNode {
    const { text } = this;
    const start = this.at;
    if (!this.startsPlain(start)) this.note('start', start, start + 1);
    let at = start;
    for (; at < text.length; at++) {
      const code = text.charCodeAt(at);
      if (!isSpecial(code)) continue;
      if (isBreak(code)) break;
      if (code === COLON && this.isGap(at + 1)) this.note('colon', at, at + 1);
      else if (code === HASH && at > start) {
        const before = text.charCodeAt(at - 1);
        if (before === SPACE || before === TAB) break;
      } else if (code === TAB) this.note('blank', at, at + 1);
    }
    return this.plainTo(start, at);
  }

  protected plainTo(start: number, end: number): ScalarNode {
    const { text } = this;
    let at = end;
    for (let code = text.charCodeAt(at - 1); code === SPACE || code === TAB; ) {
      code = text.charCodeAt(--at - 1);
    }
    this.at = Math.max(at, start);
    return scalar(text.slice(start, this.at), 'plain', start, this.at);
  }

  protected startsPlain(at: number): boolean {
    const code = this.text.charCodeAt(at);
    if (isPlainStart(code)) return true;
    const next = this.text.charCodeAt(at + 1);
    return code === DASH && next > SPACE && isPlainStart(next);
  }

  /** A quoted scalar on one line, up to its end where it doesn't close there. */
  protected quoted(close = closingQuote(this.text, this.at, this.end, true)): ScalarNode {
    const { text } = this;
    const start = this.at;
    const isDouble = text.charCodeAt(start) === DOUBLE;
    const style = isDouble ? 'double' : 'single';
    if (close < 0) {
      this.note('open-quote', start, start + 1);
      this.at = Math.min(this.lineEnd(start), this.end);
      return scalar(text.slice(start + 1, this.at), style, start, this.at);
    }
    const inner = text.slice(start + 1, close);
    const value = isDouble ? unquoteDouble(inner) : unquoteSingle(inner);
    if (value === null) this.note('bad-escape', start, close + 1);
    this.at = close + 1;
    return scalar(value ?? inner, style, start, close + 1);
  }

  isOpen(start: number, end: number): boolean {
    this.at = start;
    this.end = end;
    this.flow(-1, 0);
    return this.defects.some(({ kind }) => kind === 'open-bracket');
  }

  /** A quoted scalar, which may close on a later line if no key stands before. */
  protected linesQuoted(): ScalarNode {
    const { text, end } = this;
    const start = this.at;
    const here = closingQuote(text, start, end, true);
    const close = here < 0 ? closingQuote(text, start, end) : here;
    if (here >= 0 || close < 0 || hasKeys(text, this.lineEnd(start), close)) {
      return this.quoted(here);
    }
    this.note('uncommon', start, close + 1);
    this.line = text.lastIndexOf('\n', close) + 1;
    return this.quoted(close);
  }

  /** The collection that opens at `at`, below a key or a dash in column `indent`. */
  protected flow(indent: number, depth: number): MapNode | SeqNode {
    if (depth > MAX_DEPTH) throw tooDeep;
    const { text } = this;
    const start = this.at++;
    const isMap = text.charCodeAt(start) === OPEN_MAP;
    const pairs: Pair[] | null = isMap ? [] : null;
    const items: (Node | null)[] = isMap ? nothing : [];
    const marks = [start];
    for (;;) {
      this.flowGap(indent);
      if (this.at >= this.end) {
        this.note('open-bracket', start, start + 1);
        break;
      }
      const code = text.charCodeAt(this.at);
      if (isClosing(code)) break;
      if (code === COMMA) {
        this.note('hole', this.at, this.at + 1);
        if (!pairs) items.push(null);
      } else {
        if (pairs) pairs.push(this.flowPair(indent, depth));
        else items.push(this.flowNode(indent, depth));
        this.flowGap(indent);
        const next = text.charCodeAt(this.at);
        if (next !== COMMA && !isClosing(next)) this.toDelimiter(indent, depth);
      }
      if (text.charCodeAt(this.at) === COMMA && this.at < this.end) {
        marks.push(this.at);
        this.at++;
      }
    }
    marks.push(this.at);
    if (this.at < this.end) {
      const isOwn = text.charCodeAt(this.at) === (isMap ? CLOSE_MAP : CLOSE_LIST);
      if (!isOwn) this.note('wrong-bracket', this.at, this.at + 1);
      this.at++;
    }
    const span = { start, end: this.at };
    const node: MapNode | SeqNode = pairs
      ? { kind: 'map', span, flow: true, pairs }
      : { kind: 'seq', span, flow: true, items };
    this.marks.set(node, marks);
    return node;
  }

  /** Over blanks, breaks and comments inside brackets; lines must stand right of `indent`. */
  private flowGap(indent: number): void {
    const { text } = this;
    for (let at = this.at; at < this.end; ) {
      const from = at;
      while (text.charCodeAt(at) === SPACE) at++;
      const code = text.charCodeAt(at);
      if (code === HASH && (at > from || text.charCodeAt(at - 1) === LF)) at = this.lineEnd(at);
      else if (code === TAB) {
        this.note('blank', at, at + 1);
        at++;
        // A comment may stand behind a tab too.
        if (text.charCodeAt(at) === HASH) at = this.lineEnd(at);
        continue;
      } else if (code !== LF && code !== CR) {
        this.at = at;
        return;
      }
      at = this.flowLine(at, indent);
    }
    this.at = this.end;
  }

  /** Over a break at `at` to the next line's text, if the collection can go on there. */
  private flowLine(at: number, indent: number): number {
    const { text } = this;
    const start = this.overBreak(at);
    this.line = start;
    const end = this.lineEnd(start);
    const column = indentAt(text, start, end);
    const content = start + column;
    if (column > indent || content >= end || text.charCodeAt(content) === HASH) return start;
    if (column < indent || !isClosing(text.charCodeAt(content))) this.end = start;
    this.note('column', content, content + 1);
    return start;
  }

  /** From behind an item over what doesn't belong there to the next comma or closing bracket. */
  private toDelimiter(indent: number, depth: number): void {
    const { text } = this;
    const from = this.at;
    while (this.at < this.end) {
      const code = text.charCodeAt(this.at);
      if (code === COMMA || isClosing(code)) break;
      if (code === LF || code === CR) this.at = this.flowLine(this.at, indent);
      else if (isOpening(code)) this.flow(indent, depth + 1);
      else this.at++;
    }
    if (this.at > from) this.note('behind', from, this.at);
  }

  private flowPair(indent: number, depth: number): Pair {
    const { text } = this;
    const start = this.at;
    if (isOpening(text.charCodeAt(start))) {
      this.note('hole', start, start + 1);
      return pair(scalar('', 'plain', start, start), this.flow(indent, depth + 1), start);
    }
    const key = this.flowScalar();
    const { line } = this;
    const keyEnd = this.at;
    if (keyEnd === start) this.note('hole', start, start + 1);
    this.flowGap(indent);
    if (this.at >= this.end || text.charCodeAt(this.at) !== COLON) return pair(key, null, keyEnd);
    const colonEnd = ++this.at;
    // `"a":b` and a key with its colon on the next line are legal, and rare.
    if (line !== this.line || keyEnd - start > MAX_KEY_LENGTH || !this.isFlowGap(colonEnd)) {
      this.note('uncommon', colonEnd - 1, colonEnd);
    }
    this.flowGap(indent);
    const code = text.charCodeAt(this.at);
    if (this.at >= this.end || code === COMMA || isClosing(code)) return pair(key, null, colonEnd);
    return pair(key, this.flowNode(indent, depth), colonEnd);
  }

  /** null where nothing can be made of what stands there. */
  private flowNode(indent: number, depth: number): Node | null {
    if (isOpening(this.text.charCodeAt(this.at))) return this.flow(indent, depth + 1);
    const found = this.flowScalar();
    return found.span.end > found.span.start ? found : null;
  }

  /** A plain scalar between brackets is on one line. */
  private flowScalar(): ScalarNode {
    const { text, end } = this;
    const start = this.at;
    if (isQuote(text.charCodeAt(start))) return this.linesQuoted();
    if (!this.startsPlain(start)) this.note('start', start, start + 1);
    let at = start;
    for (; at < end; at++) {
      const code = text.charCodeAt(at);
      if (!isSpecial(code)) continue;
      if (code === COMMA || isOpening(code) || isClosing(code)) break;
      if (code === LF || code === CR) break;
      if (code === COLON && (this.isFlowGap(at + 1) || isOpening(text.charCodeAt(at + 1)))) break;
      if (code === HASH && text.charCodeAt(at - 1) === SPACE) break;
      if (code === TAB) this.note('blank', at, at + 1);
    }
    return this.plainTo(start, at);
  }
}
