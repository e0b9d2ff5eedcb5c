/** Parses braces and brackets, closed or not. */
import { MAX_DEPTH } from './budgets.ts';
import {
  CLOSE_LIST,
  CLOSE_MAP,
  COLON,
  COMMA,
  CR,
  Cursor,
  DOUBLE,
  HASH,
  isClosing,
  isOpening,
  isQuote,
  isSpecial,
  LF,
  OPEN_MAP,
  SPACE,
  TAB,
} from './cursor.ts';
import { closingQuote, hasKeys, keyAt } from './keys.ts';
import { indentAt } from './lines.ts';
import { pair, scalar } from './nodes.ts';
import type { Syntax } from './syntax.ts';
import type { MapNode, Node, Pair, ScalarNode, SeqNode } from './tree.ts';

/** Implicit keys are limited to 1,024 characters (YAML 1.2.2, 7.4.2). */
export const MAX_KEY_LENGTH = 1000;

/** Braces or brackets as they were parsed, by themselves. */
export interface FlowSyntax extends Pick<Syntax, 'defects' | 'marks'> {
  readonly node: MapNode | SeqNode;
}

/** The collection that opens at `start` and ends before `end`, in whatever columns; null: too deep. */
export function parseFlow(text: string, start: number, end: number): FlowSyntax | null {
  const marks = new Map<Node, readonly number[]>();
  const parser = new FlowParser(text, marks);
  const node = parser.only(start, end);
  return node && { node, defects: parser.defects, marks };
}

/** Thrown where a text nests deeper than anything that is read. */
export const tooDeep = Symbol('too deep');

const nothing: (Node | null)[] = [];

export class FlowParser extends Cursor {
  only(start: number, end: number): MapNode | SeqNode | null {
    this.at = start;
    this.end = end;
    try {
      return this.flow(-1, 0);
    } catch (thrown) {
      if (thrown === tooDeep) return null;
      throw thrown;
    }
  }

  /** The collection that opens at `at`, below a key or a dash in column `indent`. */
  protected flow(indent: number, depth: number): MapNode | SeqNode {
    if (depth > MAX_DEPTH) throw tooDeep;
    const { text } = this;
    const start = this.at++;
    const isMap = text.charCodeAt(start) === OPEN_MAP;
    const pairs: Pair[] | null = isMap ? [] : null;
    const items: (Node | null)[] = isMap ? nothing : [];
    const marks = this.marks && [start];
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
        this.toDelimiter(indent, depth);
      }
      if (text.charCodeAt(this.at) === COMMA && this.at < this.end) {
        marks?.push(this.at);
        this.at++;
      }
    }
    marks?.push(this.at);
    if (this.at < this.end) {
      const isOwn = text.charCodeAt(this.at) === (isMap ? CLOSE_MAP : CLOSE_LIST);
      if (!isOwn) this.note('wrong-bracket', this.at, this.at + 1);
      this.at++;
    }
    const span = { start, end: this.at };
    const node: MapNode | SeqNode = pairs
      ? { kind: 'map', span, flow: true, pairs }
      : { kind: 'seq', span, flow: true, items };
    if (marks) this.marks?.set(node, marks);
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
    if (keyAt(text, content, end)) this.end = start;
    this.note('column', content, content + 1);
    return start;
  }

  /** From behind an item over what doesn't belong there to the next comma or closing bracket. */
  private toDelimiter(indent: number, depth: number): void {
    const { text } = this;
    const from = this.at;
    for (;;) {
      if (this.at >= this.end) break;
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

  /** A quoted scalar, which may close on a later line if no key stands before. */
  private flowQuoted(): ScalarNode {
    const { text, end } = this;
    const start = this.at;
    const here = closingQuote(text, start, end, true);
    const close = here < 0 ? closingQuote(text, start, end) : here;
    if (here >= 0 || close < 0 || hasKeys(text, this.lineEnd(start), close)) {
      return this.quoted(here);
    }
    this.note('uncommon', start, close + 1);
    this.at = close + 1;
    this.line = text.lastIndexOf('\n', close) + 1;
    const style = text.charCodeAt(start) === DOUBLE ? 'double' : 'single';
    return scalar(text.slice(start + 1, close), style, start, close + 1);
  }

  /** A plain scalar between brackets is on one line. */
  private flowScalar(): ScalarNode {
    const { text, end } = this;
    const start = this.at;
    if (isQuote(text.charCodeAt(start))) return this.flowQuoted();
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
