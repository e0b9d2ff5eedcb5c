/** Recognises `key:` at the start of a line, plain or quoted, without reading further. */
import { contentLines } from './lines.ts';
import { unquoteDouble, unquoteSingle } from './quotes.ts';

export interface KeyShape {
  readonly key: string;
  /** Where the key itself starts: behind any `&name` or `!tag`. */
  readonly start: number;
  readonly end: number;
  /** Offset of the colon. */
  readonly colon: number;
}

const SPACE = 0x20;
const TAB = 0x09;

const isGap = (text: string, at: number, end: number): boolean => {
  if (at >= end) return true;
  const code = text.charCodeAt(at);
  return code === SPACE || code === TAB || code === 0x0a || code === 0x0d;
};

/** Characters that no plain scalar starts with (YAML 1.2.2, c-indicator); - ? : with a gap only. */
const INDICATORS = new Set([...',[]{}#&*!|>\'"%@`']);

/** The key that stands at `from`, or null where the text up to `end` (one line) is none. */
export function keyAt(text: string, from: number, end: number): KeyShape | null {
  const start = skipProperties(text, from, end);
  const first = text[start];
  if (start >= end || first === undefined || first === '\t') return null;
  if (first === '"' || first === "'") return quotedKey(text, start, end);
  if (INDICATORS.has(first)) return null;
  if ((first === '-' || first === '?' || first === ':') && isGap(text, start + 1, end)) return null;
  for (let at = start; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code > 0x3a) continue;
    if (code === 0x3a && isGap(text, at + 1, end)) {
      let last = at;
      while (last > start && isGap(text, last - 1, end)) last--;
      return { key: text.slice(start, last), start, end: last, colon: at };
    }
    if (code === 0x23 && isGap(text, at - 1, end)) return null;
    if (code === 0x0a || code === 0x0d) return null;
  }
  return null;
}

function quotedKey(text: string, start: number, end: number): KeyShape | null {
  const close = closingQuote(text, start, end);
  if (close < 0) return null;
  let colon = close + 1;
  while (colon < end && isGap(text, colon, end)) colon++;
  if (text[colon] !== ':' || colon >= end || !isGap(text, colon + 1, end)) return null;
  const inner = text.slice(start + 1, close);
  const key = text[start] === '"' ? unquoteDouble(inner) : unquoteSingle(inner);
  return { key: key ?? inner, start, end: close + 1, colon };
}

/**
 * Offset of the quote that closes the one at `open`, before `end`; -1 where there is none, or none
 * on the line, if it must be there.
 */
export function closingQuote(text: string, open: number, end: number, onLine = false): number {
  const quote = text.charCodeAt(open);
  for (let at = open + 1; at < end; at++) {
    const code = text.charCodeAt(at);
    if (quote === 0x22 && code === 0x5c) at++;
    else if (code === quote) {
      if (quote === 0x27 && at + 1 < end && text.charCodeAt(at + 1) === quote) at++;
      else return at;
    } else if (onLine && (code === 0x0a || code === 0x0d)) return -1;
  }
  return -1;
}

/** Whether a line from `from` to `to` begins with a key. */
export function hasKeys(text: string, from: number, to: number): boolean {
  for (const { at, end } of contentLines(text, from, to)) if (keyAt(text, at, end)) return true;
  return false;
}

/** Steps over anchors and tags: a key behind one is still the entry's name. */
export function skipProperties(text: string, from: number, end: number): number {
  let at = from;
  while (at < end && (text[at] === '&' || text[at] === '!')) {
    while (at < end && !isGap(text, at, end)) at++;
    while (at < end && isGap(text, at, end)) at++;
  }
  return at;
}

/** Whether nothing stands from `from` to `end` but blanks, anchors, tags and a comment. */
export function isEmptyValue(text: string, from: number, end: number): boolean {
  let at = from;
  while (at < end && isGap(text, at, end)) at++;
  at = skipProperties(text, at, end);
  return at >= end || (text[at] === '#' && isGap(text, at - 1, end));
}
