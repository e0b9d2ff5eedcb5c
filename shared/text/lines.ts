/** Lines as LSP counts them: LF, CR LF and a lone CR each end one. */

export interface Line {
  readonly start: number;
  /** Where its text ends, the break not counted. */
  readonly end: number;
  /** Where the next line starts; equal to `end` where no break follows. */
  readonly next: number;
}

/** Finds line ends from left to right, in time linear in the text as long as it is read forward. */
export class LineReader {
  readonly text: string;
  #lf = -2;
  #cr = -2;

  constructor(text: string) {
    this.text = text;
  }

  /** The line that starts at `start`. */
  at(start: number): Line {
    const { text } = this;
    // Remembering both next breaks keeps a file without CR from being searched for it per line.
    if (this.#lf < start) this.#lf = indexOrEnd(text, '\n', start);
    if (this.#cr < start) this.#cr = indexOrEnd(text, '\r', start);
    if (this.#lf <= this.#cr) {
      const end = this.#lf;
      return { start, end, next: Math.min(end + 1, text.length) };
    }
    const end = this.#cr;
    return { start, end, next: this.#lf === end + 1 && this.#lf < text.length ? end + 2 : end + 1 };
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
