/**
 * What is wrong with what is written, and what would mend it, as data. The text's reading, the plan's
 * and the checks of its shape all say it so; what differs is how each says where.
 */
import type { Span } from '../syntax/tree.ts';

/** Which wording applies, e.g. 'unclosed-quote', and what it needs, as text: `key`, `example`, `nearest` … */
export interface Wording {
  readonly code: string;
  readonly args: Readonly<Record<string, string>>;
}

/** The words stand in rules/text/. `At`: a span of the chunk that is read, or a place in the plan. */
export interface Problem<Rule extends string, At, F> extends Wording {
  readonly rule: Rule;
  readonly at: At;
  readonly fixes: readonly F[];
}

/** `Title`: words, said as an order ("Write 200 mm"), or what they are made of. */
export interface Fix<Edit, Title = string> {
  readonly title: Title;
  /** What applying it adds or worsens; absent: nothing, so `fix all` may take it. */
  readonly sideEffects?: string;
  readonly edits: readonly Edit[];
}

type TextRule = 'syntax' | 'outside-the-profile' | 'misread-scalar' | 'duplicate-name' | 'too-much';

/** One thing wrong with the text itself, found before anything is understood of the plan. */
export interface TextProblem extends Problem<TextRule, Span, TextFix> {
  /** A further place that the problem follows from (the first of two equal keys). */
  readonly related?: Span;
  /** What of the text it leaves in doubt, where that is more than its place. */
  readonly doubt?: Span;
}

/** Of the chunk alone. Nothing here has words: its title is made at the edge. */
export type TextFix = Fix<{ readonly span: Span; readonly text: string }, Wording>;
