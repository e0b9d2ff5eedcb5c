/** Lines as LSP counts them: LF, CR LF and a lone CR each end one. */

export interface Line {
  readonly start: number;
  /** Where its text ends, the break not counted. */
  readonly end: number;
  /** Where the next line starts; equal to `end` where no break follows. */
  readonly next: number;
}

/** Finds line ends; reading forward, or back by a little, costs what the lines are long. */
export class LineReader {
  readonly text: string;
  /** The first breaks at or behind `#from`. */
  #from = 0;
  #lf: number;
  #cr: number;

  constructor(text: string) {
    this.text = text;
    this.#lf = indexOrEnd(text, '\n', 0);
    this.#cr = indexOrEnd(text, '\r', 0);
  }

  /** The line that starts at `start`. */
  at(start: number): Line {
    this.#seek(start);
    const length = this.text.length;
    if (this.#lf <= this.#cr) {
      const end = this.#lf;
      return { start, end, next: Math.min(end + 1, length) };
    }
    const end = this.#cr;
    return { start, end, next: this.#lf === end + 1 && this.#lf < length ? end + 2 : end + 1 };
  }

  // Both next breaks are remembered, so that a file without CR is not searched for it per line.
  #seek(start: number): void {
    const { text } = this;
    if (start < this.#from) {
      const passed = text.slice(start, this.#from);
      const lf = passed.indexOf('\n');
      const cr = passed.indexOf('\r');
      if (lf >= 0) this.#lf = start + lf;
      if (cr >= 0) this.#cr = start + cr;
    }
    this.#from = start;
    if (this.#lf < start) this.#lf = indexOrEnd(text, '\n', start);
    if (this.#cr < start) this.#cr = indexOrEnd(text, '\r', start);
  }
}

const indexOrEnd = (text: string, what: string, from: number): number => {
  const found = text.indexOf(what, from);
  return found < 0 ? text.length : found;
};

/** Where each line of `text` starts; the first is 0. */
export function lineStarts(text: string): number[] {
  const starts = [0];
  const reader = new LineReader(text);
  for (let line = reader.at(0); line.next > line.end; line = reader.at(line.next)) {
    starts.push(line.next);
  }
  return starts;
}

/** The lines of a text, found from any offset. */
export class LineTable {
  readonly #text: string;
  readonly #starts: readonly number[];

  constructor(text: string) {
    this.#text = text;
    this.#starts = lineStarts(text);
  }

  /** The line that holds `offset`. */
  of(offset: number): Line {
    const index = lastAtMost(this.#starts, offset);
    const start = this.#starts[index] as number;
    const next = this.#starts[index + 1];
    return { start, end: contentEnd(this.#text, start, next), next: next ?? this.#text.length };
  }

  /** The lines from `from` (a line's start, or within one) to `to`. */
  *between(from: number, to: number): Generator<Line> {
    for (let start = from; start < to; ) {
      const line = this.of(start);
      yield { ...line, start };
      if (line.next === line.end) return;
      start = line.next;
    }
  }
}

/** A line with more on it than blanks and a comment. */
export interface ContentLine extends Line {
  readonly indent: number;
  /** Offset of its first character that is no space. */
  readonly at: number;
}

/** Those of the lines that start from `from` (a line's start) up to `to`. */
export function* contentLines(text: string, from: number, to: number): Generator<ContentLine> {
  for (let start = from; start < to; ) {
    // Not a reader's: it looks ahead for the next CR, to the text's end where there is none.
    let end = start;
    for (let code = 0; end < text.length; end++) {
      code = text.charCodeAt(end);
      if (code === 0x0a || code === 0x0d) break;
    }
    const next = Math.min(text.length, text.startsWith('\r\n', end) ? end + 2 : end + 1);
    const indent = indentAt(text, start, end);
    const at = start + indent;
    if (!isBlank(text, at, end)) yield { start, end, next, indent, at };
    start = next;
  }
}

/** Where a line's text ends, given where it and the next one start. */
export function contentEnd(text: string, start: number, next: number | undefined): number {
  if (next === undefined) return text.length;
  const isPair = next - 2 >= start && text[next - 1] === '\n' && text[next - 2] === '\r';
  return next - (isPair ? 2 : 1);
}

/** The last index whose value is at most `wanted`; `values` ascend, and the first is at most it. */
export function lastAtMost(values: ArrayLike<number>, wanted: number, length = values.length) {
  let low = 0;
  let high = length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((values[middle] as number) <= wanted) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Column of the first character that is no space, from `start`. */
export function indentAt(text: string, start: number, end: number): number {
  let at = start;
  while (at < end && text.charCodeAt(at) === 0x20) at++;
  return at - start;
}

/** Whether nothing but spaces, tabs and a comment stands from `from` to `end`. */
export function isBlank(text: string, from: number, end: number): boolean {
  let at = from;
  while (at < end) {
    const code = text.charCodeAt(at);
    if (code === 0x23) return true;
    if (code !== 0x20 && code !== 0x09) return false;
    at++;
  }
  return true;
}

/** Where what is written from `at` on ends: before the line's end, blanks and a comment. */
export function writtenEnd(text: string, at: number, end: number): number {
  const written = text.slice(at, end);
  const comment = written.search(/[ \t]#/);
  return at + (comment < 0 ? written : written.slice(0, comment)).trimEnd().length;
}
