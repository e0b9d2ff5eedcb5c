/**
 * One rule a file. A rule's facts (whether it fires, and with which numbers), its words (what,
 * why, what to do) and its fixes are three functions, so that no rule ever compares message texts.
 */

import type { Width } from '../figures/width.ts';
import type { Place } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import type { Bound } from '../quantity/bound.ts';
import type { Say } from '../say/say.ts';
import type { TextFix } from '../text/problem.ts';

export type Severity = 'error' | 'warning' | 'note' | 'hint';

export const SEVERITIES: readonly Severity[] = ['error', 'warning', 'note', 'hint'];

/** A place that a finding follows from, and the value there in the plan's words. */
export interface Related {
  readonly at: Place;
  readonly words: string;
}

/** The result of a rule's check: data only. */
export interface Observation<F> {
  /** The value at fault. */
  readonly at: Place;
  readonly facts: F;
  readonly severity?: Severity;
  /** Gathered when asked for, where it takes long: whoever only tries whether a rule finds something doesn't ask. */
  readonly related?: readonly Related[] | (() => readonly Related[]);
}

export const relatedIn = ({ related = [] }: Observation<unknown>): readonly Related[] =>
  typeof related === 'function' ? related() : related;

/** What a probable finding waits for. */
export interface Unsure {
  /** The input that moves it most. */
  readonly input: Width;
  /** The figure that the rule decides by, at both ends of that input; null: it is no number. */
  readonly makes: { readonly figure: string; readonly low: number; readonly high: number } | null;
  /** More than this one have to stand at their best. */
  readonly isOneOfMore: boolean;
}

/** An observation that a rule made, in a shot or in the plan. */
export interface Finding<F = unknown> {
  readonly rule: string;
  readonly severity: Severity;
  readonly at: Place;
  /** The shot's name, for findings about a shot wherever they stand. */
  readonly shot?: string;
  readonly facts: F;
  readonly related: readonly Related[];
  /** It stands by the middle of what is known, and an end passes; absent: it is sure. */
  readonly unsure?: Unsure;
  /** Found with it, where what is written is wrong; of what it means, the rule knows the ways out. */
  readonly fixes?: readonly (TextFix | PlanFix)[];
}

/** A finding's message: the first sentence at most 80 characters, then why, with the numbers. */
export interface Words {
  readonly what: string;
  readonly why?: string;
}

/** A mistake in the plan that every example starts from (rules/example-plan.ts). */
export interface Example {
  readonly says: string;
  /** Path to YAML value; null removes the pair. 'shots/drift/aperture': 'f/2.8' */
  readonly change: Readonly<Record<string, string | null>>;
}

export interface RuleDocs {
  /** Fires when …, one sentence. */
  readonly when: string;
  /** Why it matters: the physics or the practice, with its source. */
  readonly why: string;
  /** What to do about it. */
  readonly remedy: string;
  /** Each gives exactly one finding of this rule and no other. */
  readonly bad: readonly Example[];
  /** Each gives no finding of this rule. */
  readonly good: readonly Example[];
}

/** A size in the unit of its kind: mm, stops, a share of 1, rad, pixels, s, kg. */
interface Size {
  readonly kind: Bound['kind'];
  readonly value: number;
}

/** The common part of all rules. */
export interface RuleCore<F> {
  readonly name: string;
  readonly severity: Severity;
  /** Found only on request (the clips on the disk), never in the text alone. */
  readonly onRequest?: true;
  readonly docs: RuleDocs;
  words(facts: F, say: Say): Words;
  /** Size of the finding, if it has one: larger is worse. Acceptances limit it. */
  size?(facts: F): Size | undefined;
  /** Of which of two kinds it is, too much or too little: between two ends of different kinds it is right. */
  side?(facts: F): string;
  /** It says what is, and not that something fails: it is never only probable. */
  readonly isStatement?: true;
  /** Where one finding stands for several: what it says now and did not say then; null: nothing. */
  beyond?(now: F, then: F): F | null;
  /** The numbers that JSON carries, names with their units. */
  numbers?(facts: F): Readonly<Record<string, number>>;
}

/** A rule that looks at one thing of kind `S` (a shot's bench, a plan) and observes. */
export interface Rule<F, S> extends RuleCore<F> {
  check(subject: S): readonly Observation<F>[];
  fixes?(finding: Finding<F>, subject: S): readonly PlanFix[];
}
