/**
 * Reads an entry that YAML can't, field by field. Valid fields are read, and faults are reported
 * where a person would point. Lines are told apart by their columns alone, so an unclosed quote or
 * bracket ends with its own field.
 */
import { countMarks, MAX_MARKS, MAX_REREAD_MARKS } from '../syntax/budgets.ts';
import { keyAt } from '../syntax/keys.ts';
import { type ContentLine, contentLines, LineTable } from '../syntax/lines.ts';
import { blockMap, blockSeq, keyOf, pair, scalar, shiftNode, span } from '../syntax/nodes.ts';
import { readCommon } from '../syntax/parser.ts';
import { tellForeign } from './foreign.ts';
import { readYaml } from './from-yaml.ts';
import { tellLine } from './line-defects.ts';
import { continues } from './line-shapes.ts';
import { mendValue } from './mend-value.ts';
import { tellOutOfLine } from './out-of-line.ts';
import type { Problems } from './problems.ts';
import type { Mending } from './recovery.ts';
import type { MapNode, Node, Pair } from './tree.ts';

export class Mender implements Mending {
  readonly text: string;
  readonly lines: LineTable;
  readonly problems: Problems;
  #reread = 0;
  #toldBudget = false;

  constructor(text: string, problems: Problems) {
    this.text = text;
    this.lines = new LineTable(text);
    this.problems = problems;
  }

  /** The whole text as one entry in column `indent`; `errorAt`: where YAML stumbled; null: unknown. */
  entry(indent: number, errorAt: number | null): MapNode | null {
    const before = this.problems.count;
    const map = this.#map([...contentLines(this.text, 0, this.text.length)], indent);
    if (this.problems.count === before && errorAt !== null) this.tellUnreadable(errorAt);
    const first = map?.pairs[0];
    return first ? blockMap([first]) : null;
  }

  below(from: number, to: number, indent: number): Node | null {
    const lines = [...contentLines(this.text, from, to)];
    const first = lines[0];
    if (!first) return null;
    if (continues(this.text, first.at, first.end) && this.text[first.at] === '-') {
      return this.#seq(lines, first.indent);
    }
    if (first.indent <= indent) {
      tellLine(this.text, first.start, first.end, this.problems);
      return null;
    }
    if (
      /["'{[|>&*!]/.test(this.text[first.at] as string) &&
      !keyAt(this.text, first.at, first.end)
    ) {
      return mendValue(this, first.at, to, indent).value;
    }
    return this.#map(lines, first.indent);
  }

  tellUnreadable(at: number): void {
    // On a line without text YAML stumbled over what stands behind it, or before.
    const { start: from, end: to } = this.lines.of(at);
    const ahead = this.text.slice(at).search(/\S/);
    const isBlank = !/\S/.test(this.text.slice(from, to));
    const behind = ahead >= 0 ? at + ahead : this.text.slice(0, at).trimEnd().length - 1;
    const { start, end: stop } = this.lines.of(isBlank ? Math.max(0, behind) : at);
    const written = this.text.slice(start, stop);
    const first = start + Math.max(0, written.search(/\S/));
    const end = start + written.trimEnd().length;
    this.problems.syntax('unreadable', span(first, end), { text: written.trim().slice(0, 60) });
  }

  read(
    made: string,
    before: number,
    from: number,
  ): { map: MapNode | null; errorAt: number | null } {
    const by = from - before;
    const common = readCommon(made);
    if (common) return { map: shiftNode(common, by), errorAt: null };
    const marks = countMarks(made);
    if (marks <= MAX_MARKS) this.#reread += marks;
    if (marks > MAX_MARKS || this.#reread > MAX_REREAD_MARKS || this.problems.isFull) {
      return { map: null, errorAt: null };
    }
    const { root, foreign, error } = readYaml(made);
    if (error || root?.kind !== 'map' || root.flow || root.pairs.length !== 1) {
      return { map: null, errorAt: (error?.at ?? 0) + by };
    }
    tellForeign(foreign, made, by, this.problems);
    return { map: shiftNode(root, by), errorAt: null };
  }

  /** Names a field that could not be read and for which nothing was named so far. */
  #tellFailure(errorAt: number | null, value: Node | null, at: number): void {
    if (errorAt !== null) {
      this.tellUnreadable(errorAt);
      return;
    }
    // What stands below in lines of its own was read line by line.
    const isInLines = value !== null && value.kind !== 'scalar' && !value.flow;
    if (isInLines || this.#toldBudget) return;
    this.#toldBudget = true;
    this.problems.syntax('too-broken', span(at, at + 1));
  }

  /** Pairs of the mapping whose keys stand in column `indent`; null where none is readable. */
  #map(lines: readonly ContentLine[], indent: number): MapNode | null {
    const pairs: Pair[] = [];
    for (let index = 0; index < lines.length; ) {
      const line = lines[index] as ContentLine;
      const next = this.#pieceEnd(lines, index, indent);
      const to = lines[next]?.start ?? (lines.at(-1) as ContentLine).next;
      pairs.push(...this.#pairs(line, to, indent));
      index = next;
    }
    return pairs.length > 0 ? blockMap(pairs) : null;
  }

  #pieceEnd(lines: readonly ContentLine[], index: number, indent: number): number {
    const { indent: own } = lines[index] as ContentLine;
    const column = Math.max(own, indent);
    let next = index + 1;
    for (; next < lines.length; next++) {
      const line = lines[next] as ContentLine;
      if (line.indent > column) continue;
      if (line.indent === own && continues(this.text, line.at, line.end)) continue;
      break;
    }
    return next;
  }

  /** The field on `line` and what belongs to it, up to `to`. */
  #pairs(line: ContentLine, to: number, indent: number): readonly Pair[] {
    const { text, problems } = this;
    const shape = keyAt(text, line.at, line.end);
    if (!shape) return this.#withoutKey(line, to);
    if (line.indent !== indent && !problems.isFull) {
      tellOutOfLine(text, this.lines, line.start, to, line.indent, indent, problems);
    }
    const { map, errorAt } = this.read(
      ' '.repeat(line.at - line.start) + text.slice(line.at, to),
      0,
      line.start,
    );
    if (map) return map.pairs;
    const key = keyOf(text, shape);
    if (problems.isFull) return [pair(key, null, shape.colon + 1)];
    const before = problems.count;
    const mended = mendValue(this, shape.colon + 1, to, line.indent);
    if (problems.count === before) this.#tellFailure(errorAt, mended.value, line.at);
    return [pair(key, mended.value, shape.colon + 1), ...mended.beside];
  }

  #withoutKey(line: ContentLine, to: number): readonly Pair[] {
    const { text } = this;
    const told = tellLine(text, line.start, line.end, this.problems);
    if (told) return [told];
    const word = /^([a-z][a-z0-9-]*)[ \t]*$/.exec(text.slice(line.at, line.end))?.[1];
    if (!word || line.next >= to) return [];
    const value = this.below(line.next, to, line.indent);
    const end = line.at + word.length;
    return value ? [pair(scalar(word, 'plain', line.at, end), value, end)] : [];
  }

  #seq(lines: readonly ContentLine[], indent: number): Node {
    const items: (Node | null)[] = [];
    const first = lines[0] as ContentLine;
    let dash = first.at;
    for (let index = 0; index < lines.length; ) {
      const line = lines[index] as ContentLine;
      let next = index + 1;
      while (next < lines.length && (lines[next] as ContentLine).indent > indent) next++;
      const to = lines[next]?.start ?? (lines.at(-1) as ContentLine).next;
      if (this.text[line.at] === '-' && line.indent === indent) {
        dash = line.at;
        items.push(this.#item(line, to));
      } else tellLine(this.text, line.start, line.end, this.problems);
      index = next;
    }
    return blockSeq(items, first.at, dash);
  }

  /** The item behind the dash on `line`, read as the value of a key that is not there. */
  #item(line: ContentLine, to: number): Node | null {
    const { text, problems } = this;
    const stand = `${' '.repeat(line.indent)}k:\n`;
    const { map, errorAt } = this.read(
      stand + text.slice(line.start, to),
      stand.length,
      line.start,
    );
    const list = map?.pairs[0]?.value;
    if (list?.kind === 'seq') return list.items[0] ?? null;
    const before = problems.count;
    const value = this.#brokenItem(line, to);
    if (problems.count === before) {
      this.#tellFailure(errorAt && Math.max(errorAt, line.start), value, line.at);
    }
    return value;
  }

  #brokenItem(line: ContentLine, to: number): Node | null {
    const { text } = this;
    let at = line.at + 1;
    while (at < line.end && text[at] === ' ') at++;
    if (at >= line.end || text[at] === '#') return this.below(line.next, to, line.indent);
    if (!keyAt(text, at, line.end)) return mendValue(this, at, to, line.indent).value;
    const indent = at - line.start;
    const rest = contentLines(text, line.next, to);
    return this.#map([{ ...line, indent, at }, ...rest], indent);
  }
}
