/** Lays a day into the text of its plan. What was changed there meanwhile is told and left. */
import { message } from '../words/message.ts';
import { bringChecks } from './bring-checks.ts';
import { bringMeasurements } from './bring-measurements.ts';
import { bringTakes } from './bring-takes.ts';
import type { Day } from './day.ts';
import { PlanText } from './plan-text.ts';
import { Told } from './told.ts';

export interface Brought {
  /** The plan with the day in it. */
  readonly text: string;
  /** What was brought, a line each. */
  readonly done: readonly string[];
  /** What only the plan changed meanwhile, a line each. */
  readonly kept: readonly string[];
  /** What was left, and why, a line each. */
  readonly left: readonly string[];
}

/**
 * Bringing the same day again changes nothing.
 *
 * @param name of the plan's file, without its folders
 * @returns null where the plan's text has errors that leave open where something belongs
 */
export function bringBack(day: Day, text: string, name: string): Brought | null {
  const plan = new PlanText(text);
  if (!plan.isWhole) return null;
  const told = new Told();
  for (const where of day.unknown) told.leave(message`${where} is not known here; it is left out.`);
  if (day.plan !== name)
    told.leave(
      message`The day is of ${day.plan}; the plan is ${name}. Check that they belong together.`,
    );
  bringChecks(day.checks, plan, told);
  bringTakes(day, plan, told);
  bringMeasurements(day.measurements, plan, told);
  const { done, kept, left } = told;
  return { text: plan.text(), done, kept, left };
}
