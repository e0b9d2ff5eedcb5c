/** What a rule finds is the same in every language: facts hold no texts for people. */
import { expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { ALL_RULES, TEXT_RULES } from '../../shared/rules/registry.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { inPseudo } from '../support/pseudo.ts';

/** What a rule found in a plan. */
function factsOf(text: string, name: string): readonly unknown[] {
  const { shots, findings } = coreWith(text).compared(PLAN);
  return [...findings, ...[...shots.values()].flatMap((shot) => shot.findings)].flatMap(
    ({ rule, facts }) => (rule === name ? [facts] : []),
  );
}

/** Without a name that a sentence would have: it says "the subject" then. */
const NAMELESS = EXAMPLE_PLAN.replace(/^ {4}subject: .*\n/gm, '');

const codeOf = (facts: unknown): unknown => (facts as { code?: string } | undefined)?.code;

it.each(ALL_RULES.map((rule) => [rule.name, rule] as const))('%s', (name, { docs }) => {
  const isText = TEXT_RULES.some((rule) => rule.name === name);
  for (const { change } of docs.bad)
    for (const plan of isText ? [EXAMPLE_PLAN] : [EXAMPLE_PLAN, NAMELESS]) {
      const text = changed(plan, change);
      const [pseudo, english] = [inPseudo(() => factsOf(text, name)), factsOf(text, name)];
      // What a text should have been is said by the reader of texts, in words.
      if (isText) expect(pseudo.map(codeOf)).toEqual(english.map(codeOf));
      else expect(pseudo).toEqual(english);
    }
});
