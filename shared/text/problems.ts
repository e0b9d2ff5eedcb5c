/** Makes and collects the problems of one chunk, within the budget. */
import { MAX_PROBLEMS } from '../syntax/budgets.ts';
import { type Move, moveSpan } from '../syntax/nodes.ts';
import type { TextFix, TextProblem } from './chunk.ts';
import type { Span } from './tree.ts';

type Args = Readonly<Record<string, string>>;

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

  syntax(code: string, span: Span, args: Args = {}, fixes: readonly TextFix[] = []): void {
    this.add({ rule: 'syntax', code, span, args, fixes });
  }

  /** What exceeded a limit, and was not read or reported. */
  tooMuch(code: string, span: Span, args: Args): void {
    this.add({ rule: 'too-much', code, span, args, fixes: [] });
  }

  misread(code: string, span: Span, args: Args, fixes: readonly TextFix[]): void {
    this.add({ rule: 'misread-scalar', code, span, args, fixes });
  }

  outside(code: string, span: Span, args: Args = {}, fixes: readonly TextFix[] = []): void {
    this.add({ rule: 'outside-the-profile', code, span, args, fixes });
  }

  /** In the order of the text, with one that says how many more there are. */
  all(): readonly TextProblem[] {
    const inOrder = [...this.#found].sort((a, b) => a.span.start - b.span.start);
    if (this.#more === 0) return inOrder;
    const last = inOrder.at(-1) as TextProblem;
    const args = { more: String(this.#more) };
    return [...inOrder, { rule: 'too-much', code: 'too-many', span: last.span, args, fixes: [] }];
  }
}

/** What it marks could not be read. */
export const isUnread = ({ rule }: TextProblem): boolean =>
  rule === 'syntax' || rule === 'too-much';

/** A fix of one edit. */
export const fix = (
  code: string,
  start: number,
  end: number,
  text: string,
  args: Args = {},
): TextFix => ({
  code,
  args,
  edits: [{ span: { start, end }, text }],
});

/** The same problem with each offset moved. */
export function moveProblem(problem: TextProblem, move: Move): TextProblem {
  const fixes = problem.fixes.map((each) => ({
    ...each,
    edits: each.edits.map((edit) => ({ ...edit, span: moveSpan(edit.span, move) })),
  }));
  const { related, doubt } = problem;
  return {
    ...problem,
    span: moveSpan(problem.span, move),
    fixes,
    ...(related && { related: moveSpan(related, move) }),
    ...(doubt && { doubt: moveSpan(doubt, move) }),
  };
}
