/**
 * Plans aimed at one rule each: what the rule's own examples plant, and slips of the text that it
 * has to see, in plans that differ otherwise.
 */
import fc from 'fast-check';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import type { RuleCore } from '../../shared/rules/rule.ts';
import { defectsIn } from '../planted/support/defects.ts';
import { changed } from './plans.ts';
import { randomPlan } from './random-plans.ts';

/** Plans made at a time: seldom are all of them asked for. */
const BATCH = 10;

const SLIPS = defectsIn(EXAMPLE_PLAN);

/**
 * The examples as they stand, then slips, then up to `most` times an example among other changes.
 * The same in every run: how often a rule is tried must not hang on chance.
 */
export function* plansAimedAt(rule: RuleCore<unknown>, most: number): Generator<string> {
  const examples = rule.docs.bad;
  for (const { change } of examples) yield changed(EXAMPLE_PLAN, change);
  // Slips of one kind stand side by side: taken from all over the plan instead.
  const planted = SLIPS.filter(({ rules }) => rules.length === 1 && rules[0] === rule.name);
  const step = Math.ceil(planted.length / 20);
  for (const [index, { text }] of planted.entries()) if (index % step === 0) yield text;
  for (let seed = 0; seed * BATCH < most; seed++)
    for (const [index, other] of fc.sample(randomPlan(2), { seed, numRuns: BATCH }).entries()) {
      const text = amid(other, examples[index % examples.length]?.change ?? {});
      if (text !== undefined) yield text;
    }
}

/** The example's change in another plan; undefined where that lacks what is to be changed. */
function amid(
  { text, change: others }: { text: string; change: Readonly<Record<string, string | null>> },
  change: Readonly<Record<string, string | null>>,
): string | undefined {
  if (Object.keys(others).some((place) => place in change)) return undefined;
  try {
    return changed(text, change);
  } catch (error) {
    if (error instanceof Error && error.message.startsWith('Nothing to change')) return undefined;
    throw error;
  }
}
