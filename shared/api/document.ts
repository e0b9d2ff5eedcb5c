/**
 * A report as data: which parts it has and what they say, without how a terminal, Markdown or a page
 * of HTML shows them. Texts are plain: each printer makes them inert and escapes them, once.
 */
import type { Severity } from '../rules/rule.ts';

type Tone = Severity | 'heading' | 'aside' | 'fix';

/**
 * Text of anybody's, or texts after each other. `words` are the program's own: what they have between
 * backticks is a word of the plan's language. A tone is a terminal's colour, and nothing elsewhere.
 */
export type Inline =
  | string
  | { readonly words: string }
  | { readonly strong: Inline }
  | { readonly tone: Tone; readonly text: Inline }
  | readonly Inline[];

export type Item = Inline | { readonly text: Inline; readonly more: readonly Inline[] };

export type Block =
  | { readonly kind: 'paragraph'; readonly text: Inline }
  | Section
  | List
  | Table
  | Changes
  | Pairs;

export interface Section {
  readonly kind: 'section';
  readonly level: 1 | 2 | 3;
  readonly title: Inline;
  readonly blocks: readonly Block[];
}

export interface List {
  readonly kind: 'list';
  /** The sentence that it completes. */
  readonly lead?: Inline;
  readonly items: readonly Item[];
  /** Of what is ticked off: which items are done. */
  readonly done?: readonly boolean[];
  /** How a page marks its items, where they are no usual ones. */
  readonly of?: 'findings';
}

export interface Table {
  readonly kind: 'table';
  readonly head: readonly Inline[];
  /** Cells at the end that are empty may be left out. */
  readonly rows: readonly (readonly Inline[])[];
  /** The first cell names its row. */
  readonly isNamed?: boolean;
  /** The column that holds numbers. */
  readonly numbers?: number;
}

/** "aperture" · "f/16" → "f/22" */
export interface Change {
  readonly label: string;
  readonly before: Inline;
  readonly after: Inline;
}

interface Changes {
  readonly kind: 'changes';
  /** Heads them in a table; over lines only where `isLed`. */
  readonly title: string;
  readonly isLed?: boolean;
  readonly rows: readonly Change[];
}

/** Labels with their values. */
export interface Pairs {
  readonly kind: 'pairs';
  readonly rows: readonly (readonly [label: string, value: Inline])[];
  /** Columns that labels have at least. */
  readonly least?: number;
}

export const worded = (words: string): Inline => ({ words });

export const strong = (text: Inline): Inline => ({ strong: text });

export const toned = (tone: Tone, text: Inline): Inline => ({ tone, text });

export const paragraph = (text: Inline): Block => ({ kind: 'paragraph', text });

/** Parts that have nothing to say are left out, and the whole where no part has. */
export const section = (
  level: Section['level'],
  title: Inline,
  blocks: readonly Block[],
  isKept = false,
): readonly Section[] => {
  const full = blocks.filter((block) => !isEmpty(block));
  return full.length > 0 || isKept ? [{ kind: 'section', level, title, blocks: full }] : [];
};

export const list = (items: readonly Item[], more: Omit<List, 'kind' | 'items'> = {}): List => ({
  kind: 'list',
  items,
  ...more,
});

export const table = (
  head: Table['head'],
  rows: Table['rows'],
  more: Omit<Table, 'kind' | 'head' | 'rows'> = {},
): Table => ({ kind: 'table', head, rows, ...more });

export const changes = (title: string, rows: readonly Change[], isLed = false): Changes => ({
  kind: 'changes',
  title,
  rows,
  isLed,
});

export const isEmpty = (block: Block): boolean =>
  block.kind === 'paragraph'
    ? block.text === ''
    : block.kind === 'list'
      ? block.items.length === 0
      : block.kind !== 'section' && block.rows.length === 0;

/** A text in pieces: what stands between backticks, and what stands around it. */
export const spans = (
  text: string,
): readonly { readonly text: string; readonly isCode: boolean }[] =>
  text.split(/`([^`]+)`/).flatMap((part, index) => {
    const isCode = index % 2 === 1;
    return part === '' ? [] : [{ text: part, isCode }];
  });
