/** What the recovery of a broken entry works with: its text, the tree, and `yaml` for parts of it. */
import { countMarks, MAX_MARKS, MAX_REREAD_MARKS } from '../syntax/budgets.ts';
import { LineTable, lastAtMost } from '../syntax/lines.ts';
import { shiftNode, span } from '../syntax/nodes.ts';
import type { Defect, Syntax } from '../syntax/syntax.ts';
import type { MapNode } from '../syntax/tree.ts';
import { tellForeign } from './foreign.ts';
import { readYaml } from './from-yaml.ts';
import type { Problems } from './problems.ts';

export class Reading {
  readonly text: string;
  readonly syntax: Syntax;
  readonly lines: LineTable;
  readonly problems: Problems;
  /** In the order of the text, and where each starts, with -1 ahead. */
  readonly #defects: readonly Defect[];
  readonly #starts: readonly number[];
  #reread = 0;

  constructor(text: string, syntax: Syntax, problems: Problems) {
    this.text = text;
    this.syntax = syntax;
    this.lines = new LineTable(text);
    this.problems = problems;
    this.#defects = [...syntax.defects].sort((a, b) => a.span.start - b.span.start);
    this.#starts = [-1, ...this.#defects.map((each) => each.span.start)];
  }

  /** Those that start from `from` up to `to`. */
  defects(from: number, to: number): readonly Defect[] {
    const first = lastAtMost(this.#starts, from - 1);
    return this.#defects.slice(first, lastAtMost(this.#starts, to - 1));
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

  /**
   * What `yaml` makes of a text of its own, as a mapping: `made` of the text from `from` on, behind
   * `before` characters. Without a map, `errorAt` is where YAML stumbled; null: a budget kept it from
   * being read.
   */
  read(
    made: string,
    before: number,
    from: number,
  ): { map: MapNode | null; errorAt: number | null } {
    const by = from - before;
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
}
