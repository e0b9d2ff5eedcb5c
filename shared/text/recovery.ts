/** The functions that readers of broken values need from the reader of a broken entry. */
import type { LineTable } from '../syntax/lines.ts';
import type { Problems } from './problems.ts';
import type { MapNode, Node, Pair } from './tree.ts';

export interface Mended {
  readonly value: Node | null;
  /** Pairs found below the value that belong beside it. */
  readonly beside: readonly Pair[];
}

export interface Mending {
  readonly text: string;
  readonly lines: LineTable;
  readonly problems: Problems;
  /** What stands on the lines from `from` (a line's start) below a key in column `indent`. */
  below(from: number, to: number, indent: number): Node | null;
  /** Names a line that no better name was found for. */
  tellUnreadable(at: number): void;
  /**
   * A text of its own, made of `text` from `from` on, as a mapping; `before` is what was put ahead
   * of it. Without a map, `errorAt` is where YAML stumbled; null: a budget kept it from being read.
   */
  read(made: string, before: number, from: number): { map: MapNode | null; errorAt: number | null };
}
