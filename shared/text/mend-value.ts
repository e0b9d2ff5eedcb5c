/** What is wrong with one value, and what of it can be read. */
import { closingQuote, hasKeys, keyAt } from '../syntax/keys.ts';
import { contentLines, isBlank, type Line, writtenEnd } from '../syntax/lines.ts';
import { scalar, span, styleOf } from '../syntax/nodes.ts';
import { quote, unquoteDouble, unquoteSingle } from '../syntax/quotes.ts';
import { tellLine } from './line-defects.ts';
import { mendFlow } from './mend-flow.ts';
import { tellOutOfLine } from './out-of-line.ts';
import { fix } from './problems.ts';
import type { Mended, Mending } from './recovery.ts';
import type { Node, Pair } from './tree.ts';

/** The value from `from` (behind a key's colon or a dash) to `to`; the key is in column `indent`. */
export function mendValue(mender: Mending, from: number, to: number, indent: number): Mended {
  const { text } = mender;
  const line = mender.lines.of(from);
  const at = behindProperties(mender, from, line.end);
  if (
    isBlank(text, at, line.end) &&
    (at === line.end || /[\s]/.test(text[at - 1] ?? ' ') || text[at] !== '#')
  ) {
    return only(mender.below(line.next, to, indent));
  }
  switch (text[at]) {
    case '"':
    case "'":
      return mendQuoted(mender, at, to, indent);
    case '{':
    case '[':
      return only(mendFlow(mender, at, to));
    case '|':
    case '>':
    case '*':
      return only(null);
    default:
      return mendPlain(mender, at, line, to, indent);
  }
}

const only = (value: Node | null): Mended => ({ value, beside: [] });

function behindProperties(mender: Mending, from: number, end: number): number {
  const { text, problems } = mender;
  let at = from;
  for (;;) {
    while (at < end && (text[at] === ' ' || text[at] === '\t')) at++;
    if (at >= end || (text[at] !== '&' && text[at] !== '!')) return at;
    const stop = at + text.slice(at, end).search(/[ \t]|$/);
    const isAnchor = text[at] === '&';
    problems.outside(isAnchor ? 'anchor' : 'tag', span(at, stop), { text: text.slice(at, stop) }, [
      fix(isAnchor ? 'remove-anchor' : 'remove-tag', at, text[stop] === ' ' ? stop + 1 : stop, ''),
    ]);
    at = stop;
  }
}

function mendQuoted(mender: Mending, at: number, to: number, indent: number): Mended {
  const { text, problems } = mender;
  const line = mender.lines.of(at);
  const mark = text[at] as string;
  let close = closingQuote(text, at, line.end);
  if (close < 0) {
    const later = closingQuote(text, at, to);
    // A quote that would have to close behind lines of keys is not closed.
    const isRun = later > 0 && !hasKeys(text, line.next, later);
    if (!isRun) {
      const end = writtenEnd(text, at, line.end);
      problems.syntax('unclosed-quote', span(at, at + 1), { quote: mark }, [
        fix('close-quote', end, end, mark, { quote: mark }),
      ]);
      const node = scalar(text.slice(at + 1, end), styleOf(mark), at, end);
      return { value: node, beside: beside(mender, line.next, to, indent) };
    }
    close = later;
  }
  const inner = text.slice(at + 1, close);
  const node = scalar(
    (mark === '"' ? unquoteDouble(inner) : unquoteSingle(inner)) ?? inner,
    styleOf(mark),
    at,
    close + 1,
  );
  const last = mender.lines.of(close);
  const end = writtenEnd(text, close + 1, last.end);
  if (end > close + 1) {
    const written = text.slice(at, end);
    const rest = close + 1 + text.slice(close + 1, end).search(/\S/);
    problems.syntax(
      'text-after-value',
      span(rest, end),
      { text: text.slice(rest, end) },
      last.start === line.start ? [fix('quote', at, end, quote(written), { text: written })] : [],
    );
  } else if (mark === '"') tellEscapes(mender, at, close);
  return { value: node, beside: beside(mender, last.next, to, indent) };
}

function tellEscapes(mender: Mending, open: number, close: number): void {
  const { text, problems } = mender;
  for (let at = text.indexOf('\\', open); at >= 0 && at < close; at = text.indexOf('\\', at + 2)) {
    const digits = { x: 2, u: 4, U: 8 }[text[at + 1] as 'x'] ?? 0;
    const written = text.slice(at, Math.min(at + 2 + digits, close));
    if (written[1] === '\n' || written[1] === '\r' || unquoteDouble(written) !== null) continue;
    problems.syntax('bad-escape', span(at, at + written.length), { text: written }, [
      fix('escape-backslash', at, at, '\\'),
    ]);
  }
}

function mendPlain(mender: Mending, at: number, line: Line, to: number, indent: number): Mended {
  const { text, problems } = mender;
  const end = writtenEnd(text, at, line.end);
  const written = text.slice(at, end);
  const args = { text: written };
  const asQuoted = fix('quote', at, end, quote(written), args);
  const node = scalar(written, 'plain', at, end);
  const place = span(at, end);
  if (/^-([ \t]|$)/.test(written)) {
    const item = written.slice(1).trim();
    const isOne = item !== '' && !/[{}[\],:"'#&*!|>]/.test(item) && isOnly(text, line.next, to);
    problems.syntax(
      'item-behind-key',
      place,
      args,
      isOne ? [fix('put-in-brackets', at, end, `[${item}]`)] : [],
    );
    return only(null);
  }
  if (/^[?:]([ \t]|$)/.test(written)) {
    problems.outside('complex-key', span(at, at + 1));
    return only(null);
  }
  if (/^[\]}]/.test(written)) {
    problems.syntax('stray-bracket', span(at, at + 1), { bracket: written[0] as string }, [
      asQuoted,
    ]);
  } else if (/^[@`%,#]/.test(written)) {
    problems.syntax(
      'reserved-start',
      span(at, at + 1),
      { ...args, character: written[0] as string },
      [asQuoted],
    );
  } else if (/:([ \t]|$)/.test(written)) {
    problems.misread('colon-in-value', place, args, [asQuoted]);
  }
  return { value: node, beside: beside(mender, line.next, to, indent) };
}

const isOnly = (text: string, from: number, to: number): boolean =>
  !/\S/.test(text.slice(from, to));

/** Lines below a value that is whole: fields that stand too far right, or lines that are nothing. */
function beside(mender: Mending, from: number, to: number, indent: number): readonly Pair[] {
  const { text, problems } = mender;
  for (const line of contentLines(text, from, to)) {
    const { indent: column, at } = line;
    if (keyAt(text, at, line.end) && column > indent) {
      tellOutOfLine(text, mender.lines, line.start, to, column, indent, problems);
      const map = mender.below(line.start, to, indent);
      return map?.kind === 'map' ? map.pairs : [];
    }
    if (column <= indent || text[at] === '\t') {
      tellLine(text, line.start, line.end, problems);
      return [];
    }
  }
  return [];
}
