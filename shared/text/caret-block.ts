/** The place of a caret among lines, by their columns. */

import { lineHolding, nextColumn, valueExtent } from './caret-extent.ts';
import { FlowScan } from './caret-flow.ts';
import { isEmptyValue, keyAt } from './keys.ts';
import { indentAt, isBlank, type Line, LineReader } from './lines.ts';
import type { Path } from './tree.ts';

/** A mapping or list that is open at the line being read. */
export interface Level {
  readonly kind: 'map' | 'seq';
  readonly column: number;
  /** The key, or the item, that was read last. */
  key: string | undefined;
  index: number;
  /** Nothing stands behind that key or dash yet. */
  pending: boolean;
  readonly names: string[];
}

/** What is known of the caret once its line is read; offsets are those of the line. */
export interface Around {
  readonly path: Path;
  readonly slot: 'key' | 'value' | 'open' | 'item';
  readonly flow: boolean;
  readonly from: number;
  readonly to: number;
  /** Behind the colon of a key under the caret; `to` where there is none. */
  readonly colonEnd: number;
  readonly word: string;
  readonly typed: string;
  readonly before: string;
  readonly after: string;
  /** Nothing else stands on the line, and it may be indented anew. */
  readonly blank: boolean;
  column: number;
  pair: 'word' | 'colon' | 'value';
  readonly level: { readonly names: readonly string[] } | null;
}

type Mark = Pick<Around, 'path' | 'slot' | 'level'> & {
  readonly from: number;
  readonly to: number;
} & Partial<Pick<Around, 'before' | 'after' | 'column' | 'pair' | 'flow' | 'blank' | 'colonEnd'>>;

/** What the lines themselves don't say. */
export interface Surroundings {
  /** The mappings that they stand in, outermost first. */
  readonly above: readonly Level[];
  /** Column of what follows them in the file. */
  readonly columnBehind: number;
}

const newLevel = (kind: Level['kind'], column: number): Level => ({
  kind,
  column,
  key: undefined,
  index: -1,
  pending: false,
  names: [],
});

export class BlockScan {
  readonly #text: string;
  readonly #at: number;
  readonly #levels: Level[];
  readonly #columnBehind: number;
  #line: Line = { start: 0, end: 0, next: 0 };
  /** Lines are taken for prose, or for the inside of braces, up to here. */
  #skipTo = 0;
  #proseColumn: number | null = null;
  #found: Around | null = null;
  #settled = false;
  /** The level whose key stands at or before the caret: what follows may turn out to be its value. */
  #owner: Level | null = null;

  constructor(text: string, at: number, { above, columnBehind }: Surroundings) {
    this.#text = text;
    this.#at = at;
    this.#levels = above.length > 0 ? [...above] : [newLevel('map', 0)];
    this.#columnBehind = columnBehind;
  }

  run(): Around | null {
    const reader = new LineReader(this.#text);
    for (let start = 0; ; ) {
      const line = reader.at(start);
      if (line.start >= this.#skipTo) this.#read(line);
      if (line.next === line.end) break;
      start = line.next;
    }
    return this.#found;
  }

  get #top(): Level {
    return this.#levels.at(-1)!;
  }

  get #isHere(): boolean {
    return !this.#settled && this.#at >= this.#line.start && this.#at <= this.#line.end;
  }

  #pathTo(level: Level): Path {
    const upTo = this.#levels.indexOf(level);
    return this.#levels
      .slice(0, upTo)
      .map((each) => (each.kind === 'map' ? (each.key ?? '') : each.index));
  }

  #pathBelow = (level: Level): Path => [
    ...this.#pathTo(level),
    level.kind === 'map' ? (level.key ?? '') : level.index,
  ];

  #read(line: Line): void {
    this.#line = line;
    const text = this.#text;
    const bom = line.start === 0 && text.charCodeAt(0) === 0xfeff ? 1 : 0;
    const indent = indentAt(text, line.start + bom, line.end);
    const start = line.start + bom + indent;
    const isEmpty = isBlank(text, start, line.end);
    if (this.#proseColumn !== null) {
      const column = this.#isHere && isEmpty ? this.#at - line.start : indent;
      if ((isEmpty && !this.#isHere) || column > this.#proseColumn) {
        if (this.#isHere) this.#settled = true;
        return;
      }
      this.#proseColumn = null;
    }
    if (isEmpty) {
      if (this.#isHere) this.#onEmptyLine(start);
      return;
    }
    if (this.#isHere && this.#at < start) this.#settled = true;
    this.#content(start, indent);
  }

  /** `column`: of what starts at `start`, in its line. */
  #content(start: number, column: number): void {
    const { end } = this.#line;
    const text = this.#text;
    if (text[start] === '-' && (start + 1 >= end || text[start + 1] === ' ')) {
      this.#item(start, column);
      return;
    }
    const shape = keyAt(text, start, end);
    if (!shape) {
      this.#bare(start, column);
      return;
    }
    const level = this.#mapAt(column);
    const isCaret = this.#isHere && this.#at >= shape.start && this.#at <= shape.end;
    if (isCaret) {
      const isEmpty = isEmptyValue(text, shape.colon + 1, end);
      this.#owner = level;
      this.#mark({
        path: this.#pathTo(level),
        slot: 'key',
        from: shape.start,
        to: shape.end,
        colonEnd: shape.colon + 1,
        level,
        column,
        pair: isEmpty ? 'colon' : 'value',
      });
    } else {
      if (this.#owner === level) this.#owner = null;
      level.names.push(shape.key);
    }
    level.key = shape.key;
    level.pending = true;
    if (this.#isHere && this.#at <= shape.colon) this.#settled = true;
    this.#value(shape.colon + 1, level);
  }

  #mapAt(column: number): Level {
    this.#close(column);
    if (this.#top.kind === 'seq' && this.#top.column === column && this.#levels.length > 1)
      this.#levels.pop();
    const top = this.#top;
    if (top.kind === 'map' && top.column === column) return top;
    return this.#open('map', column);
  }

  #close(column: number): void {
    while (this.#levels.length > 1 && this.#top.column > column) this.#levels.pop();
  }

  #open(kind: Level['kind'], column: number): Level {
    const parent = this.#top;
    const level = newLevel(kind, column);
    if (parent === this.#owner && this.#found) this.#adopt(level);
    parent.pending = false;
    this.#levels.push(level);
    return level;
  }

  /** What follows the caret's line turns out to stand below the key there. */
  #adopt(level: Level): void {
    const found = this.#found!;
    this.#owner = null;
    if (found.slot === 'value') this.#found = null;
    else if (found.slot === 'key') found.pair = found.pair === 'colon' ? 'value' : found.pair;
    else if (found.slot === 'open') {
      const slot = level.kind === 'map' ? 'key' : 'item';
      this.#found = { ...found, slot, level, column: level.column };
    }
  }

  #item(dash: number, column: number): void {
    const { start, end } = this.#line;
    const text = this.#text;
    this.#close(column);
    const top = this.#top;
    const list = top.kind === 'seq' && top.column === column ? top : this.#open('seq', column);
    list.index++;
    list.pending = true;
    if (this.#isHere && this.#at <= dash) this.#settled = true;
    let next = dash + 1;
    while (next < end && text[next] === ' ') next++;
    if (isBlank(text, next, end)) {
      if (!this.#isHere || this.#at > next) return;
      const before = this.#at === dash + 1 ? ' ' : '';
      this.#owner = list;
      this.#mark({
        path: this.#pathBelow(list),
        slot: 'open',
        from: this.#at,
        to: this.#at,
        before,
        level: list,
        column: this.#at - start + before.length,
      });
      return;
    }
    if (this.#isHere && this.#at < next) this.#settled = true;
    list.names.push(
      text
        .slice(next, end)
        .replace(/\s+#.*$/, '')
        .trim(),
    );
    this.#content(next, next - start);
  }

  /** A word without a colon, or a value on a line of its own. */
  #bare(start: number, column: number): void {
    this.#close(column);
    const text = this.#text;
    const top = this.#top;
    const isKey = top.kind === 'map' && top.column === column;
    if (isKey) {
      const word = /^[a-z0-9-]*/i.exec(text.slice(start, this.#line.end))![0];
      if (this.#isHere && this.#at <= start + word.length) {
        const to = start + word.length;
        this.#mark({ path: this.#pathTo(top), slot: 'key', from: start, to, level: top, column });
      }
      return;
    }
    if (top.pending) this.#scalar(start, start, top, 'open');
    else if (this.#isHere) this.#settled = true;
  }

  #value(from: number, level: Level): void {
    const { end } = this.#line;
    const text = this.#text;
    let start = from;
    while (start < end && text[start] === ' ') start++;
    if (!isBlank(text, start, end)) {
      this.#scalar(from, start, level, 'value');
      return;
    }
    if (!this.#isHere) return;
    if (this.#at > start) {
      this.#settled = true;
      return;
    }
    this.#owner = level;
    this.#mark({
      path: this.#pathBelow(level),
      slot: 'value',
      from: this.#at,
      to: this.#at,
      before: this.#at === from ? ' ' : '',
      after: text[this.#at] === '#' ? ' ' : '',
      level: null,
    });
  }

  /** A value that starts at `start` on this line; `from`: behind the colon. */
  #scalar(from: number, start: number, level: Level, slot: 'value' | 'open'): void {
    const text = this.#text;
    const path = this.#pathBelow(level);
    level.pending = false;
    const first = text[start]!;
    if (first === '{' || first === '[') {
      const flow = new FlowScan(text, start, this.#at, level.column);
      this.#skipTo = flow.read(start, path);
      if (this.#settled || this.#at <= start || this.#at > this.#skipTo) return;
      if (!flow.found) {
        this.#settled = this.#at < this.#skipTo;
        return;
      }
      const { beside, ...place } = flow.found;
      this.#line = lineHolding(text, this.#at);
      this.#mark({ ...place, flow: true, level: { names: beside } });
      return;
    }
    if (first === '|' || first === '>') {
      this.#proseColumn = level.column;
      if (this.#isHere) this.#settled = true;
      return;
    }
    if (!this.#isHere) return;
    const stop = valueExtent(text, start, this.#line.end);
    const before = this.#at === from && from < start ? ' ' : '';
    if (this.#at > stop.until) this.#settled = true;
    else
      this.#mark({
        path,
        slot,
        from: Math.min(this.#at, start),
        to: Math.max(this.#at, stop.to),
        before,
        after: this.#at === stop.until && text[this.#at] === '#' ? ' ' : '',
        level: null,
        column: start - this.#line.start,
      });
  }

  #onEmptyLine(content: number): void {
    const at = this.#at;
    if (at > content && this.#text[content] === '#') {
      this.#settled = true;
      return;
    }
    const written = Math.max(
      at - this.#line.start,
      nextColumn(this.#text, this.#line.start, this.#columnBehind),
    );
    const outer = this.#levels.findIndex(({ column }) => column >= written);
    const common = { from: at, to: at, blank: true };
    const after = this.#text[at] === '#' ? ' ' : '';
    if (outer < 0 && this.#top.pending) {
      const top = this.#top;
      this.#owner = top;
      const path = this.#pathBelow(top);
      this.#mark({ ...common, after, path, slot: 'open', level: null, column: written });
      return;
    }
    if (outer >= 0) this.#levels.length = outer + 1;
    const level = this.#top;
    const slot = level.kind === 'map' ? 'key' : 'item';
    this.#mark({ ...common, after, path: this.#pathTo(level), slot, level, column: level.column });
  }

  #mark(mark: Mark): void {
    const { start } = this.#line;
    const text = this.#text;
    this.#settled = true;
    this.#found = {
      before: '',
      after: '',
      flow: false,
      blank: false,
      pair: 'word',
      column: mark.from - start,
      ...mark,
      from: mark.from - start,
      to: mark.to - start,
      colonEnd: (mark.colonEnd ?? mark.to) - start,
      word: text.slice(mark.from, mark.to).trimStart(),
      typed: text.slice(mark.from, this.#at),
    };
  }
}
