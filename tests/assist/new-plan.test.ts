/** A new plan of every combination that can be chosen has nothing to find, and lacks nothing. */
import { expect, it } from 'vitest';
import { BODIES, LENSES, SUBJECT_KINDS } from '../../shared/assist/new-plan/kit.ts';
import { newPlan, pieceOf } from '../../shared/assist/new-plan/new-plan.ts';
import { createCore } from '../../shared/core/core.ts';
import { isMissed } from '../../shared/figures/reasons.ts';
import { laws } from '../support/each.ts';
import { coreWith, PLAN } from '../support/plans.ts';

const every = BODIES.flatMap((body) =>
  LENSES.flatMap((lens) => SUBJECT_KINDS.map((subject) => ({ body, lens, subject }))),
);

laws(
  every,
  ({ body, lens, subject }) => `${body.name}, ${lens.name}, ${subject.name}`,
  (choice, law) => {
    const text = newPlan(createCore, choice);
    const core = coreWith(text);

    law('checks without anything above a hint', () => {
      expect(core.findings(PLAN).filter(({ severity }) => severity !== 'hint')).toEqual([]);
      expect(core.state(PLAN)).toEqual({ ready: 1, shots: 1 });
    });

    law('is known to the last figure', () => {
      for (const { notKnown } of core.figures(PLAN).values())
        expect(Object.keys(notKnown).filter((figure) => isMissed(notKnown, figure))).toEqual([]);
    });

    law('films what was chosen with what was chosen', () => {
      const parts = [choice.body.name, ...choice.lens.parts, choice.lens.name];
      expect(text).toContain(`parts: [${parts.join(', ')}]`);
      expect(text).toMatch(`kind: ${choice.subject.name}\n`);
    });

    // Common practice: only what is like a mirror is tilted, and is asked whether it shows the lens.
    law('is tilted and checked as a mirror exactly where it is one', () => {
      const isMirror = ['film', 'surface'].includes(choice.subject.name);
      expect(/^ {4}tilt: [\d.]+ deg$/m.test(text)).toBe(isMirror);
      expect(text.includes('lens-not-in-mirror: open')).toBe(isMirror);
    });
  },
);

it('finds pieces by their name alone', () => {
  expect(pieceOf(LENSES, LENSES[1]!.name)).toBe(LENSES[1]);
  for (const name of [undefined, null, '', 7, 'constructor'])
    expect(pieceOf(LENSES, name)).toBeUndefined();
});
