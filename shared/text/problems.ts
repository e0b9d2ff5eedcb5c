/** Makes and collects the problems of one chunk, within the budget. */
import { MAX_PROBLEMS } from '../syntax/budgets.ts';
import { type Move, moveSpan } from '../syntax/nodes.ts';
import type { Span } from '../syntax/tree.ts';
import type { TextFix, TextProblem, Wording } from './problem.ts';

type Args = Wording['args'];

export class Problems {
  readonly #found: TextProblem[] = [];
  #more = 0;

  get count(): number {
    return this.#found.length + this.#more;
  }

  /** No further problem will be told. */
  get isFull(): boolean {
    return this.#found.length >= MAX_PROBLEMS;
  }

  add(problem: TextProblem): void {
    if (this.isFull) this.#more++;
    else this.#found.push(problem);
  }

  syntax(code: string, at: Span, args: Args = {}, fixes: readonly TextFix[] = []): void {
    this.add({ rule: 'syntax', code, at, args, fixes });
  }

  /** What passed a budget, and was not read or told. */
  tooMuch(code: string, at: Span, args: Args): void {
    this.add({ rule: 'too-much', code, at, args, fixes: [] });
  }

  misread(code: string, at: Span, args: Args, fixes: readonly TextFix[]): void {
    this.add({ rule: 'misread-scalar', code, at, args, fixes });
  }

  outside(code: string, at: Span, args: Args = {}, fixes: readonly TextFix[] = []): void {
    this.add({ rule: 'outside-the-profile', code, at, args, fixes });
  }

  /** In the order of the text, with one that says how many more there are. */
  all(): readonly TextProblem[] {
    const inOrder = [...this.#found].sort((a, b) => a.at.start - b.at.start);
    if (this.#more === 0) return inOrder;
    const last = inOrder.at(-1) as TextProblem;
    const args = { more: String(this.#more) };
    return [...inOrder, { rule: 'too-much', code: 'too-many', at: last.at, args, fixes: [] }];
  }
}

/** What it marks could not be read. */
export const isUnread = ({ rule }: TextProblem): boolean =>
  rule === 'syntax' || rule === 'too-much';

export const fixOf = (code: string, args: Args, edits: TextFix['edits']): TextFix => ({
  title: { code, args },
  edits,
});

/** A fix of one edit. */
export const fix = (
  code: string,
  start: number,
  end: number,
  text: string,
  args: Args = {},
): TextFix => fixOf(code, args, [{ span: { start, end }, text }]);

/** The same problem with each offset moved. */
export function moveProblem(problem: TextProblem, move: Move): TextProblem {
  const fixes = problem.fixes.map((each) => ({
    ...each,
    edits: each.edits.map((edit) => ({ ...edit, span: moveSpan(edit.span, move) })),
  }));
  const { related, doubt } = problem;
  return {
    ...problem,
    at: moveSpan(problem.at, move),
    fixes,
    ...(related && { related: moveSpan(related, move) }),
    ...(doubt && { doubt: moveSpan(doubt, move) }),
  };
}
