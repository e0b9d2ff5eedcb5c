/**
 * One finding, one file: a rule's facts (is it so, with which numbers), its words (what, why,
 * what to do) and its fixes are three functions, so that no rule ever compares message texts.
 */

import type { Place } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import type { Bound } from '../quantity/bound.ts';
import type { Say } from '../say/say.ts';

export type Severity = 'error' | 'warning' | 'note' | 'hint';

export const SEVERITIES: readonly Severity[] = ['error', 'warning', 'note', 'hint'];

/** A place that a finding follows from, with what stands there in the plan's words. */
export interface Related {
  readonly at: Place;
  readonly words: string;
}

/** What a rule's check answers with: data only. */
export interface Observation<F> {
  /** The value at fault. */
  readonly at: Place;
  readonly facts: F;
  readonly severity?: Severity;
  readonly related?: readonly Related[];
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
}

/** A finding's message: the first sentence at most 80 characters, then why, with the numbers. */
export interface Words {
  readonly what: string;
  readonly why?: string;
}

/** A defect planted in the bench that every example starts from (rules/example-plan.ts). */
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

/** What every rule has, whatever it reads. */
export interface RuleCore<F> {
  readonly name: string;
  readonly severity: Severity;
  /** Found only where somebody asks for it (the clips on the disk), never in the text alone. */
  readonly onRequest?: true;
  readonly docs: RuleDocs;
  words(facts: F, say: Say): Words;
  /** How much of it there is, where that is a size: greater is worse. Acceptances bound it. */
  size?(facts: F): Size | undefined;
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
