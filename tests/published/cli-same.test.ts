/**
 * What is checked here against others is what is shipped: the command line, in a process of its own, says
 * of a plan what the core says of it in this process. Brute force: every figure and finding of the rigs of
 * support/rig-on-bench.ts, and of a plan with a light that flickers.
 */
import { expect, it } from 'vitest';
import {
  checkedByCommand,
  figuresByCommand,
  figuresOfPlan,
  findingsOfPlan,
} from './support/command-line.ts';
import { KINDS_OF_RIG, randomRigs } from './support/rig-on-bench.ts';
import { plain, writtenPlan } from './support/written-plan.ts';

const rigs = KINDS_OF_RIG.flatMap(([converters, closeUp]) =>
  randomRigs(901, 8, converters, closeUp),
);
const plan = writtenPlan(
  Object.fromEntries(
    rigs.map((bench, index) => [
      `rig-${index}`,
      {
        parts: bench.parts,
        light: { kind: 'fluorescent', supply: 'mains', illuminance: '5000 lx' },
        fields: {
          ring: 'infinity',
          aperture: `f/${plain(bench.fNumber)}`,
          iso: 'auto',
          shutter: `${10 + 7 * index} deg`,
        },
      },
    ]),
  ),
  { mains: '60 Hz' },
);

// Brute force: every figure of every rig.
it('figures: the process says what the core says', () => {
  const byCommand = figuresByCommand(plan);
  expect(Object.keys(byCommand)).toHaveLength(rigs.length);
  expect(byCommand).toEqual(figuresOfPlan(plan));
});

// Brute force: every finding of every rig.
it('findings: the process says what the core says', () => {
  const { status, findings } = checkedByCommand(plan);
  const withoutFixes = findings.map((finding) => {
    const { fixes: _, ...rest } = finding as typeof finding & { fixes?: unknown };
    return rest;
  });
  expect(withoutFixes.length).toBeGreaterThan(20);
  expect(withoutFixes).toEqual(findingsOfPlan(plan));
  expect(status).toBe(findings.some(({ severity }) => severity === 'error') ? 1 : 0);
});
