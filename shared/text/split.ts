/**
 * Splits a plan's text into chunks, line by line. A chunk depends on the state at its first line
 * and on the lines up to the second line with content of the chunk after it, and on nothing more.
 * So after an edit the text is split again from two chunks before it, until state and boundary
 * agree again.
 *
 * A line gets a chunk of its own only if YAML could not read it as a continuation of the line
 * before: at or left of an entry's column, or between an entry's column and its fields'.
 */

import { isEmptyValue, type KeyShape, keyAt } from '../syntax/keys.ts';
import {
  type ContentLine,
  contentLines,
  indentAt,
  isBlank,
  type Line,
  LineReader,
} from '../syntax/lines.ts';
import type { ChunkKind } from './chunk.ts';
import { isGroup, type Layout, planLayout, type Section } from './layout.ts';
import { continues, isComplexKey, markerAt, wordAt } from './line-shapes.ts';
import { closesMerge, opensMerge } from './merge-marks.ts';
import { withSpaces } from './odd-blanks.ts';
import {
  cutAsWritten,
  type Oddity,
  type SplitChunk,
  type SplitRun,
  type SplitState,
  startState,
} from './split-state.ts';

/** Cuts a whole text. There is always at least one chunk; joined they are `text`. */
export const split = (text: string, layout: Layout = planLayout): SplitChunk[] =>
  new Splitter(text, layout, true).run(startState).chunks;

/** Thrown where a decision needs lines behind a text that is not the file's end. */
const needsMore = Symbol('needs more text');

export class Splitter {
  readonly #text: string;
  readonly #layout: Layout;
  readonly #atEnd: boolean;
  readonly #lines: LineReader;

  /** `atEnd`: the text runs to the end of the file. */
  constructor(text: string, layout: Layout, atEnd: boolean) {
    this.#text = text;
    this.#layout = layout;
    this.#atEnd = atEnd;
    this.#lines = new LineReader(text);
  }

  run(from: SplitState): SplitRun {
    const plain = withSpaces(this.#text, from.top);
    if (plain === null) return this.#run(from);
    const run = new Splitter(plain.text, this.#layout, this.#atEnd).#run(from);
    return cutAsWritten(run, this.#text, plain.text, plain.back);
  }

  #run(from: SplitState): SplitRun {
    const chunks: SplitChunk[] = [];
    const states = [from];
    let state = from;
    let at = 0;
    try {
      do {
        const made = this.#chunk(at, state);
        chunks.push(made.chunk);
        at += made.chunk.text.length;
        state = made.state;
        states.push(state);
      } while (at < this.#text.length);
    } catch (thrown) {
      if (thrown !== needsMore) throw thrown;
    }
    return { chunks, states, end: at };
  }

  #chunk(at: number, state: SplitState): { chunk: SplitChunk; state: SplitState } {
    const bom = state.top && this.#text.charCodeAt(at) === 0xfeff;
    const line = this.#lines.at(at);
    const start = bom ? at + 1 : at;
    const indent = indentAt(this.#text, start, line.end);
    const opened = this.#open(start, indent, line, state);
    const { end, breaks } = this.#extent(opened, line);
    const { kind, path, meant, oddity } = opened;
    // A tab stands for the column that its entry was taken to stand in.
    const isTabbed = this.#text[start + indent] === '\t' && kind !== 'loose';
    const text = this.#text.slice(at, end);
    return {
      chunk: {
        kind,
        path,
        indent: kind === 'loose' ? 0 : isTabbed ? opened.column : indent,
        text,
        breaks,
        meant,
        oddity,
        bom,
      },
      state: opened.state,
    };
  }

  /** What the line that starts a chunk makes of it. */
  #open(start: number, indent: number, line: Line, before: SplitState): Opened {
    const text = this.#text;
    const from = start + indent;
    const state = before.top ? { ...before, top: false } : before;
    if (isBlank(text, from, line.end)) return loose(state, null, 'content');
    if (indent === 0) {
      const marker = markerAt(text, from, line.end);
      if (marker === 'document-marker' && !state.started && text[from] === '-') {
        const alone = isBlank(text, from + 3, line.end);
        const begun = { ...state, started: true };
        return alone ? loose(begun, null, 'content') : loose(begun, marker, 'shallow');
      }
      if (marker) return loose(state, marker, 'shallow');
    }
    const tabbed = this.#tabbedName({ start, end: line.end, next: line.next });
    if (tabbed && state.section !== null) {
      const column = tabbedColumn(tabbed.fields, state);
      return this.#openEntry(tabbed.key, true, column, line, state, null);
    }
    const shape = keyAt(text, from, line.end);
    if (shape && this.#isAtMargin(shape.key, indent, state)) {
      return this.#openSection(shape, indent, line, state);
    }
    if (shape)
      return this.#openEntry(shape.key, this.#isBare(shape, line), indent, line, state, null);
    const word = wordAt(text, from, line.end);
    if (word && indent === 0 && this.#layout.has(word)) {
      const opened: SplitState = {
        ...state,
        started: true,
        section: word,
        indent: -1,
        group: null,
      };
      return { ...header([word], opened), meant: 0, oddity: 'missing-colon' };
    }
    if (word && indent > 0 && state.section !== null) {
      return this.#openEntry(word, false, indent, line, state, 'missing-colon');
    }
    return loose(
      { ...state, started: true },
      isComplexKey(text, from, line.end) ? 'complex-key' : 'no-key',
      'text',
    );
  }

  /** A key at the margin, or one that slipped: a section's own name left of its neighbour's entries. */
  #isAtMargin(key: string, indent: number, state: SplitState): boolean {
    return (
      indent === 0 || state.section === null || (indent < state.indent && this.#layout.has(key))
    );
  }

  #openSection(shape: KeyShape, indent: number, line: Line, before: SplitState): Opened {
    const layout = this.#layout.get(shape.key);
    const state: SplitState = {
      ...before,
      started: true,
      section: null,
      indent: -1,
      group: null,
      groupIndent: -1,
    };
    if (layout && this.#isBare(shape, line) && this.#holdsEntries(line, indent)) {
      return { ...header([shape.key], { ...state, section: shape.key }), meant: 0 };
    }
    return entry([shape.key], 0, state, indent, false, null);
  }

  #openEntry(
    key: string,
    bare: boolean,
    indent: number,
    line: Line,
    before: SplitState,
    oddity: Oddity | null,
  ): Opened {
    const section = before.section as string;
    const layout = this.#layout.get(section) as Section;
    const column = before.indent < 0 ? indent : before.indent;
    if (before.group !== null && indent > column) {
      const meant = before.groupIndent < 0 ? indent : before.groupIndent;
      const state = before.groupIndent < 0 ? { ...before, groupIndent: meant } : before;
      return entry([section, before.group, key], meant, state, indent, bare, oddity);
    }
    const state: SplitState =
      before.group === null && before.indent === column
        ? before
        : { ...before, indent: column, group: null, groupIndent: -1 };
    if (bare && isGroup(layout, key) && this.#holdsEntries(line, indent)) {
      return {
        ...header([section, key], { ...state, group: key, groupIndent: -1 }),
        meant: column,
      };
    }
    return entry([section, key], column, state, indent, bare, oddity);
  }

  #isBare(shape: KeyShape, line: Line): boolean {
    return isEmptyValue(this.#text, shape.colon + 1, line.end);
  }

  /**
   * Whether what follows the bare key on `line`, at `column`, can be cut into entries: nothing,
   * keys, or one line that YAML could not read together with the keys behind it.
   */
  #holdsEntries(line: Line, column: number): boolean {
    const text = this.#text;
    const first = this.#nextContent(line.next);
    if (!first) return true;
    const at = first.start + first.indent;
    if (text[at] === '\t') return (this.#tabbedName(first)?.fields ?? 0) > column + 1;
    if (first.indent <= column) return !(first.indent === column && continues(text, at, first.end));
    if (keyAt(text, at, first.end)) return true;
    // Only a quote, a bracket or a block scalar could take in the keys behind it.
    if (/[[{"'|>&*!]/.test(text[at] as string)) return false;
    const second = this.#nextContent(first.next);
    if (!second || second.indent <= column) return false;
    const isList = text[at] === '-' || text[at] === '?';
    if (isList && second.indent > first.indent) return false;
    return keyAt(text, second.start + second.indent, second.end) !== null;
  }

  /** The next line from `at` with more than blanks and comments; null at the end of the file. */
  #nextContent(at: number): ContentLine | null {
    const text = this.#text;
    const line = contentLines(text, at, text.length).next().value;
    // A line without a break may go on behind the text at hand.
    if (!this.#atEnd && (!line || line.next === line.end)) throw needsMore;
    return line ?? null;
  }

  /** How far the chunk opened on `first` goes. */
  #extent(opened: Opened, first: Line): { end: number; breaks: number } {
    const text = this.#text;
    let line = first;
    let breaks = 0;
    let fields = -1;
    let inMerge = false;
    while (line.next > line.end) {
      breaks++;
      if (line.next >= text.length) break;
      line = this.#lines.at(line.next);
      const indent = indentAt(text, line.start, line.end);
      const at = line.start + indent;
      // Most lines of a plan: inside an entry, at its fields' column or deeper.
      if (opened.until === 'entry' && fields >= 0 && indent >= fields) continue;
      if (isBlank(text, at, line.end)) continue;
      // The marks of a merge stand at the margin; what is between them is the entry's still.
      if (indent === 0 && opened.until === 'entry' && this.#isMerging(opened, line, inMerge)) {
        inMerge = !closesMerge(text, line);
        continue;
      }
      if (this.#ends(opened, first, line, indent, fields)) return { end: line.start, breaks };
      if (opened.bare && fields < 0 && indent > opened.column) {
        fields = keyAt(text, at, line.end) ? indent : Number.MAX_SAFE_INTEGER;
        if (fields === Number.MAX_SAFE_INTEGER) fields = opened.column + 1;
      }
    }
    if (!this.#atEnd) throw needsMore;
    return { end: text.length, breaks };
  }

  /** A mark of a merge within the entry: where fields go on below, and within a merge up to its end. */
  #isMerging(opened: Opened, line: Line, inMerge: boolean): boolean {
    const text = this.#text;
    if (markerAt(text, line.start, line.end) !== 'conflict-marker') return false;
    const opens = opensMerge(text, line);
    if (inMerge && !opens) return true;
    const isMark = (each: Line & { indent: number }) =>
      each.indent === 0 && markerAt(text, each.start, each.end) === 'conflict-marker';
    let under = this.#nextContent(line.next);
    // Of a merge that isn't whole any more what stands behind its marks decides.
    while (under && !opens && isMark(under)) under = this.#nextContent(under.next);
    return under !== null && (under.indent > opened.column || isMark(under));
  }

  #ends(opened: Opened, first: Line, line: Line, indent: number, fields: number): boolean {
    const text = this.#text;
    const at = line.start + indent;
    switch (opened.until) {
      case 'content':
        return true;
      case 'shallow':
      case 'text':
        return this.#endsLoose(opened, line, indent);
      case 'entry':
        if (text[at] === '\t') return this.#isTabbedEntry(opened, first, line, fields);
        if (indent <= opened.column) return !continues(text, at, line.end);
        return fields >= 0 && indent < fields && this.#isStrayEntry(opened, line, indent, fields);
    }
  }

  /** A tabbed name behind `first`'s entry, not a field of it: what is below it was there already. */
  #isTabbedEntry(opened: Opened, first: Line, line: Line, fields: number): boolean {
    if (opened.meant <= 0) return false;
    const name = this.#tabbedName(line);
    if (!name) return false;
    if (fields < 0) return name.fields > opened.column;
    const before = this.#text.slice(first.end, line.start);
    return name.fields === fields && before.includes(`\n${' '.repeat(fields)}${name.firstField}:`);
  }

  /**
   * A bare name that tabs indent, with fields below it that spaces do: an entry, whose neighbours stand
   * a level further left.
   */
  #tabbedName({ start, end, next }: Line): TabbedName | null {
    const text = this.#text;
    let at = start + indentAt(text, start, end);
    if (text[at] !== '\t') return null;
    while (text[at] === ' ' || text[at] === '\t') at++;
    const shape = keyAt(text, at, end);
    if (!shape || !isEmptyValue(text, shape.colon + 1, end)) return null;
    const under = this.#nextContent(next);
    const field = under && keyAt(text, under.start + under.indent, under.end);
    return field ? { key: shape.key, fields: under.indent, firstField: field.key } : null;
  }

  /** Loose lines end where an entry or a section may start, and at the next marker. */
  #endsLoose(opened: Opened, line: Line, indent: number): boolean {
    const text = this.#text;
    const at = line.start + indent;
    const { section, indent: column, group, groupIndent } = opened.state;
    if (indent === 0 && markerAt(text, at, line.end)) return true;
    const deepest = section === null ? 0 : group !== null ? groupIndent : column;
    if (deepest >= 0 && indent > deepest) return false;
    if (keyAt(text, at, line.end)) return true;
    const word = wordAt(text, at, line.end);
    if (word && indent === 0) return this.#layout.has(word);
    return word !== null && section !== null;
  }

  /**
   * A line between an entry's column and its fields' is an error in YAML whatever it means. It is
   * taken for an entry that slipped, not a field, by where the lines under it stand.
   */
  #isStrayEntry(opened: Opened, line: Line, indent: number, fields: number): boolean {
    const text = this.#text;
    if (opened.meant <= 0) return false;
    const shape = keyAt(text, line.start + indent, line.end);
    if (!shape || !this.#isBare(shape, line)) return false;
    const under = this.#nextContent(line.next);
    if (!under || under.indent <= indent) return false;
    if (!keyAt(text, under.start + under.indent, under.end)) return false;
    return under.indent <= fields || under.indent - indent === fields - opened.column;
  }
}

interface TabbedName {
  readonly key: string;
  /** The column of its fields. */
  readonly fields: number;
  readonly firstField: string;
}

interface Opened {
  readonly kind: ChunkKind;
  readonly path: readonly string[];
  /** Column of its siblings; 0 for a field at the margin. */
  readonly meant: number;
  readonly oddity: Oddity | null;
  readonly state: SplitState;
  /** Which lines end it: any content, one at or left of a key's column, one that opens anew. */
  readonly until: 'content' | 'entry' | 'shallow' | 'text';
  readonly column: number;
  /** Nothing stands behind the key on its line. */
  readonly bare: boolean;
}

/** The column of the entries, where it is known; else half-way to their fields. */
function tabbedColumn(fields: number, { indent, group, groupIndent }: SplitState): number {
  const halfWay = (from: number): number => from + Math.max(1, (fields - from) >> 1);
  if (group !== null) {
    const column = groupIndent < 0 ? halfWay(indent) : groupIndent;
    if (column < fields) return column;
  }
  return indent >= 0 && indent < fields ? indent : halfWay(0);
}

const entry = (
  path: readonly string[],
  meant: number,
  state: SplitState,
  column: number,
  bare: boolean,
  oddity: Oddity | null,
): Opened => ({ kind: 'entry', path, meant, oddity, state, until: 'entry', column, bare });

const header = (path: readonly string[], state: SplitState): Opened =>
  opened('header', path, state, 'content', null);

const loose = (state: SplitState, oddity: Oddity | null, until: Opened['until']): Opened =>
  opened('loose', [], state, until, oddity);

const opened = (
  kind: ChunkKind,
  path: readonly string[],
  state: SplitState,
  until: Opened['until'],
  oddity: Oddity | null,
): Opened => ({ kind, path, meant: 0, oddity, state, until, column: 0, bare: false });
