/** Reads a text's lines, gaps and scalars, and notes what of them is out of the common. */
import { closingQuote } from './keys.ts';
import { isBlank } from './lines.ts';
import { scalar } from './nodes.ts';
import { unquoteDouble, unquoteSingle } from './quotes.ts';
import type { Defect, DefectKind } from './syntax.ts';
import type { Node, ScalarNode } from './tree.ts';

export const TAB = 0x09;
export const LF = 0x0a;
export const CR = 0x0d;
export const SPACE = 0x20;
export const HASH = 0x23;
export const COLON = 0x3a;
export const COMMA = 0x2c;
export const DASH = 0x2d;
export const DOUBLE = 0x22;
export const SINGLE = 0x27;
export const OPEN_LIST = 0x5b;
export const CLOSE_LIST = 0x5d;
export const OPEN_MAP = 0x7b;
export const CLOSE_MAP = 0x7d;

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
export const isSpecial = (code: number): boolean => code < 128 && special[code] === 1;

export const isOpening = (code: number): boolean => code === OPEN_MAP || code === OPEN_LIST;
export const isClosing = (code: number): boolean => code === CLOSE_MAP || code === CLOSE_LIST;
export const isQuote = (code: number): boolean => code === DOUBLE || code === SINGLE;
const isBreak = (code: number): boolean => code === LF || code === CR;

export class Cursor {
  protected readonly text: string;
  protected at = 0;
  /** Start of the line that `at` is on. */
  protected line = 0;
  /** Where brackets that are not closed end: before the next key of the mapping that they stand in. */
  protected end: number;
  readonly defects: Defect[] = [];
  /** null: nobody asks for them. */
  protected readonly marks: Map<Node, readonly number[]> | null;

  constructor(text: string, marks: Map<Node, readonly number[]> | null) {
    this.text = text;
    this.end = text.length;
    this.marks = marks;
  }

  protected note(kind: DefectKind, start: number, end: number): void {
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

  /** A space or the line's end. */
  protected isGap(at: number): boolean {
    const code = this.text.charCodeAt(at);
    return code === SPACE || code === LF || code === CR || at >= this.text.length;
  }

  protected isFlowGap(at: number): boolean {
    const code = this.text.charCodeAt(at);
    return this.isGap(at) || code === COMMA || isClosing(code);
  }

  /** Over spaces; false where the line holds no value (it is then left behind). */
  protected skipToValue(): boolean {
    const { text } = this;
    let at = this.at;
    while (text.charCodeAt(at) === SPACE) at++;
    const code = text.charCodeAt(at);
    if (at < text.length && !isBreak(code) && code !== HASH) {
      const end = code === TAB ? this.lineEnd(at) : at;
      if (code !== TAB || !isBlank(text, at, end)) {
        this.at = at;
        return true;
      }
      this.note('blank', at, end);
    }
    this.at = this.overBreak(this.lineEnd(at));
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
}
