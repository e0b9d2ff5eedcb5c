/** Rows of a text as they are and as they should be: where lines start, and the gaps in them. */
import type { Token } from './tokens.ts';

/** Blanks by which each level stands right of the one above. */
export const STEP = 2;

export interface FormatOptions {
  /** 'keep': gaps of several blanks, and where lines of a bracket start, stay as they were lined up. */
  readonly align?: 'tidy' | 'keep';
}

/** A line of the text. Neither side has its break. */
export interface Row {
  readonly before: string;
  after: string;
  readonly kind: 'content' | 'comment' | 'blank';
  /** Of its first character: the column as it was, and as it should be. */
  readonly was: number;
  column: number;
}

interface Level {
  readonly was: number;
  readonly column: number;
  readonly isDash: boolean;
}

/**
 * The lines of a chunk that reads soundly, made anew.
 * @param lines the chunk's lines without their breaks
 * @param starts where each of them starts
 * @param base the column for the chunk's own key
 * @returns null: it is laid out in a way that is left as it is
 */
export function rowsOf(
  lines: readonly string[],
  starts: readonly number[],
  tokens: readonly Token[],
  base: number,
  options: FormatOptions,
): Row[] | null {
  return new Rows(lines, starts, tokens, base, options.align === 'keep').make();
}

class Rows {
  private readonly lines: readonly string[];
  private readonly starts: readonly number[];
  private readonly tokens: readonly Token[];
  private readonly isKept: boolean;
  private readonly base: number;
  private readonly rows: Row[] = [];
  private levels: Level[] = [];
  /** The next token, and how many brackets are open before it. */
  private next = 0;
  private depth = 0;
  /** By which the line that opened the present value was moved. */
  private shift = 0;

  constructor(
    lines: readonly string[],
    starts: readonly number[],
    tokens: readonly Token[],
    base: number,
    isKept: boolean,
  ) {
    this.lines = lines;
    this.starts = starts;
    this.tokens = tokens;
    this.base = base;
    this.isKept = isKept;
  }

  make(): Row[] | null {
    for (let line = 0; line < this.lines.length; ) {
      const before = this.lines[line] as string;
      const start = this.starts[line] as number;
      const end = start + before.length;
      const first = this.tokens[this.next];
      if (!first || first.start > end) {
        this.rows.push({ before, after: '', kind: 'blank', was: 0, column: 0 });
        line++;
      } else if (first.kind === 'comment' && this.depth === 0) {
        this.next++;
        const was = first.start - start;
        const after = first.text;
        this.rows.push({ before, after, kind: 'comment', was, column: was });
        line++;
      } else {
        const made = this.contentRow(line, first.start - start);
        if (made === null) return null;
        line += made;
      }
    }
    return this.rows;
  }

  /** @returns how many lines it took: values may run over several */
  private contentRow(line: number, was: number): number | null {
    const start = this.starts[line] as number;
    const column = this.depth > 0 ? this.inBrackets(was) : this.inBlock(was);
    if (column === null) return null;
    if (this.depth === 0) this.shift = column - was;
    let text = ' '.repeat(column);
    let count = 1;
    /** Where the line that is being made starts in `text`, and in the chunk. */
    let from = 0;
    let lineStart = start;
    let end = start + (this.lines[line] as string).length;
    let last: Token | null = null;
    for (let token = this.tokens[this.next]; token && token.start <= end; ) {
      if (last) {
        const gap = this.gap(
          last,
          token,
          token.start - last.end,
          token.start - lineStart - (text.length - from),
        );
        text += ' '.repeat(gap);
      }
      if (!this.enter(token, last, lineStart, text.length - from)) return null;
      const inner = token.text.split(/\r\n|\n|\r/);
      text += inner[0];
      for (const more of inner.slice(1)) {
        from = text.length + 1;
        text += `\n${this.moved(more, token.isProse)}`;
        lineStart = this.starts[line + count] as number;
        end = lineStart + (this.lines[line + count] as string).length;
        count++;
      }
      last = token;
      token = this.tokens[++this.next];
    }
    const made = text.split('\n');
    for (let index = 0; index < count; index++)
      this.rows.push({
        before: this.lines[line + index] as string,
        after: made[index] as string,
        kind: 'content',
        was,
        column,
      });
    return count;
  }

  /** The column of a line within brackets. */
  private inBrackets(was: number): number {
    const top = this.levels.at(-1)?.column ?? this.base;
    if (this.isKept) return Math.max(top + 1, was + this.shift);
    let closing = 0;
    for (let at = this.next; '}]'.includes(this.tokens[at]?.text ?? '-'); at++) closing++;
    return top + STEP * Math.max(1, this.depth - closing);
  }

  /** The column of a line that starts a key, an item or a value. */
  private inBlock(was: number): number | null {
    const { levels } = this;
    const token = this.tokens[this.next] as Token;
    if (levels.length === 0) {
      levels.push({ was, column: this.base, isDash: false });
      return this.base;
    }
    const isDash = markOf(token) === '-';
    if (token.kind === 'mark' && !'-{['.includes(token.text)) return null;
    while (levels.length > 1 && (levels.at(-1) as Level).was > was) levels.pop();
    let top = levels.at(-1) as Level;
    if (top.was === was && top.isDash && !isDash) {
      levels.pop();
      top = levels.at(-1) ?? top;
    }
    if (top.was === was && top.isDash === isDash) return top.column;
    if (top.was > was || (top.was === was && !isDash)) return null;
    const column = top.column + STEP;
    levels.push({ was, column, isDash });
    return column;
  }

  /** Takes note of a token that is written at `column`. */
  private enter(token: Token, last: Token | null, lineStart: number, column: number): boolean {
    const mark = markOf(token);
    if (mark === '{' || mark === '[') this.depth++;
    if (mark === '}' || mark === ']') this.depth--;
    if (mark === ':' && last === null) return false;
    if (last && markOf(last) === '-' && token.kind !== 'comment')
      this.levels.push({ was: token.start - lineStart, column, isDash: mark === '-' });
    return this.depth >= 0;
  }

  /** A further line of a value. */
  private moved(line: string, isProse: boolean): string {
    const blanks = /^ */.exec(line)?.[0].length ?? 0;
    if (blanks === line.length)
      return isProse ? ' '.repeat(Math.max(0, shiftOf(line, this.shift))) : line;
    if (line[blanks] === '\t') return line;
    const least = isProse ? 0 : (this.levels.at(-1)?.column ?? this.base) + 1;
    return ' '.repeat(Math.max(least, blanks + this.shift)) + line.slice(blanks);
  }

  /** Blanks between two tokens on a line; `room`: how many keep a comment in its column. */
  private gap(last: Token, token: Token, was: number, room: number): number {
    if (token.kind === 'comment') return Math.max(1, room);
    const mark = markOf(token);
    if (mark === ',' || mark === ':') return 0;
    if (this.isKept && was > 1 && markOf(last) !== '-') return was;
    if (mark === ']' || markOf(last) === '[') return 0;
    return mark === '}' && markOf(last) === '{' ? 0 : 1;
  }
}

const markOf = ({ kind, text }: Token): string => (kind === 'mark' ? text : '');

/** An empty line of prose stays empty; one of blanks moves with the others. */
const shiftOf = (line: string, by: number): number => (line === '' ? 0 : line.length + by);
