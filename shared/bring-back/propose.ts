/**
 * What a day shows of body and subjects: rows and ranges for who asks for them. Nothing is proposed
 * that the day leaves open; what is missing is told.
 */
import { message } from '../words/message.ts';
import type { Day } from './day.ts';
import { PlanText } from './plan-text.ts';
import { proposeExposures } from './propose-exposures.ts';
import { proposeLifetimes } from './propose-lifetimes.ts';
import { Told } from './told.ts';

interface Proposed {
  /** The plan with the proposals in it. */
  readonly text: string;
  /** What is proposed, a line each. */
  readonly done: readonly string[];
  /** Why nothing is proposed of what was found or counted, a line each. */
  readonly kept: readonly string[];
  /** What the plan has otherwise, a line each. */
  readonly left: readonly string[];
}

/**
 * Proposing of the same day again changes nothing.
 *
 * @param text of the plan, with the day brought back
 * @returns null where the plan's text has errors that leave open where something belongs
 */
export function propose({ exposures, lifetimes }: Day, text: string): Proposed | null {
  const plan = new PlanText(text);
  if (!plan.isWhole) return null;
  const told = new Told();
  proposeExposures(exposures, plan, told);
  proposeLifetimes(lifetimes, plan, told);
  const { done, kept, left } = told;
  return { text: plan.text(), done, kept, left };
}

/** A line of what is proposed, told apart from what was brought. */
export const proposedWords = (line: string): string => message`Proposed: ${line}`;
