/**
 * One defect of a focus stack or focus pull at a time, planted into a plan that has nothing wrong. The rule
 * that is meant for it speaks, on the line of the defect, with numbers that are worked out here by hand from
 * Ray's close-up depth of field (see tests/published/focus-stack.test.ts).
 */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { laws } from '../support/each.ts';
import { changed, findingsOf } from '../support/plans.ts';

/** m = 0.6, f/8, c = 0.03 mm: 2·c·N·(1 + m)/m². */
const DEPTH_MM = (2 * 0.03 * 8 * 1.6) / 0.36;
const STEP_MM = 0.7 * DEPTH_MM;

const stacked = (stack: string): Readonly<Record<string, string | null>> => ({
  'circle-of-confusion': '0.03 mm',
  'subjects/frost-plate/depth': '12 mm',
  'shots/frost/iso': 'auto',
  'shots/frost/stack': stack,
  'preflight/once/stack-ends-checked': 'open',
});

const SOUND = changed(EXAMPLE_PLAN, stacked('{ with: rail, settle: 2 s }'));

interface Defect {
  readonly rule: string;
  readonly says: string;
  readonly change: Readonly<Record<string, string | null>>;
  /** What stands on the line that the finding is on. */
  readonly line: string;
  readonly severity: string;
  readonly numbers?: Readonly<Record<string, number>>;
}

const STACK = 'stack: { with: rail, settle: 2 s }';

const DEFECTS: readonly Defect[] = [
  {
    rule: 'stack-short',
    says: 'four frames where ten are needed',
    change: { 'shots/frost/stack': '{ with: rail, frames: 4, settle: 2 s }' },
    line: 'stack: { with: rail, frames: 4, settle: 2 s }',
    severity: 'warning',
    // Three steps, and half of the last frame's depth behind it.
    numbers: { depthMm: 3 * STEP_MM + DEPTH_MM / 2, neededMm: 12 },
  },
  {
    rule: 'stack-short',
    says: 'a rail of 6 mm',
    change: {
      'kit/rails': '{ stub: { travel: 6 mm } }',
      'rigs/bench/support': '{ rail: stub }',
    },
    line: STACK,
    severity: 'warning',
    numbers: { depthMm: 6 + DEPTH_MM / 2, neededMm: 12 },
  },
  {
    rule: 'stack-steps-too-coarse',
    says: 'a rail that moves 3 mm at least: soft bands',
    change: {
      'kit/rails': '{ coarse: { travel: 80 mm, smallest-step: 3 mm } }',
      'rigs/bench/support': '{ rail: coarse }',
    },
    line: STACK,
    severity: 'warning',
    numbers: { smallestMm: 3, stepMm: STEP_MM, depthMm: DEPTH_MM },
  },
  {
    rule: 'stack-steps-too-coarse',
    says: 'a rail that moves 1.8 mm at least: less overlap',
    change: {
      'kit/rails': '{ coarse: { travel: 80 mm, smallest-step: 1.8 mm } }',
      'rigs/bench/support': '{ rail: coarse }',
    },
    line: STACK,
    severity: 'note',
    numbers: { smallestMm: 1.8, stepMm: STEP_MM },
  },
  {
    rule: 'stack-outlasts-subject',
    says: 'frost that melts within 15 s',
    change: { 'subjects/frost-plate/lifetime': '15 s' },
    line: STACK,
    severity: 'warning',
    numbers: { stackTimeS: 10 * 2.02, lifeS: 15 },
  },
  {
    rule: 'moves-in-stack',
    says: 'frost that creeps',
    change: { 'shots/frost/subject-speed': '0.05 mm/s' },
    line: 'subject-speed: 0.05 mm/s',
    severity: 'warning',
    // 0.05 mm/s · 20.2 s · 0.6 over pixels of 36 mm / 1920.
    numbers: { driftPx: (0.05 * 20.2 * 0.6 * 1920) / 36 },
  },
  {
    rule: 'moves-in-stack',
    says: 'a liquid surface',
    change: { 'subjects/frost-plate/kind': 'surface' },
    line: STACK,
    severity: 'warning',
  },
  {
    rule: 'moves-in-stack',
    says: 'a slide',
    change: {
      'shots/frost/move': '{ kind: slide, speed: 0.1 mm/s }',
      'preflight/once/move-rehearsed': 'open',
    },
    line: 'move: { kind: slide, speed: 0.1 mm/s }',
    severity: 'warning',
  },
  {
    rule: 'wrong-value',
    says: 'frames that overlap wholly',
    change: { 'shots/frost/stack': '{ with: rail, overlap: 100 %, settle: 2 s }' },
    line: 'stack: { with: rail, overlap: 100 %, settle: 2 s }',
    severity: 'error',
  },
  {
    rule: 'wrong-value',
    says: 'takes beside the stack',
    change: { 'shots/frost/take': '{ duration: 20 s }' },
    line: 'take: { duration: 20 s }',
    severity: 'error',
  },
  {
    rule: 'check-missing',
    says: 'no check of its ends',
    change: { 'preflight/once/stack-ends-checked': null },
    line: 'preflight:',
    severity: 'warning',
  },
  {
    rule: 'not-known',
    says: 'no settling time',
    change: { 'shots/frost/stack': '{ with: rail }' },
    line: 'frost:',
    severity: 'note',
  },
];

laws(
  DEFECTS,
  ({ rule, says }) => `${rule}: ${says}`,
  ({ rule, change, line, severity, numbers }, law) => {
    const text = changed(SOUND, change);
    const found = findingsOf(text).filter((finding) => finding.rule === rule);

    law('is found once, on its line', () => {
      expect(found.map(({ range }) => text.split('\n')[range.start.line]?.trim())).toEqual([line]);
      expect(found[0]?.severity).toBe(severity);
    });

    law('is not there without it', () => {
      expect(findingsOf(SOUND).filter((finding) => finding.rule === rule)).toEqual([]);
    });

    // The close-up form is right to a thousandth here.
    for (const [name, value] of Object.entries(numbers ?? {}))
      law(
        'has its numbers',
        () => expect(Math.abs(found[0]!.numbers![name]! / value - 1)).toBeLessThan(2e-3),
        name,
      );
  },
);

describe('a sound stack', () => {
  it('has only the hint that every close shot has, and no shortage of depth', () => {
    const loud = findingsOf(SOUND).filter(({ severity }) => severity !== 'hint');
    expect(loud.filter(({ shot }) => shot === 'frost')).toEqual([]);
    const without = changed(SOUND, { 'shots/frost/stack': null });
    expect(findingsOf(without).map(({ rule }) => rule)).toContain('depth-short');
  });

  it('of stills may be exposed for longer than a frame of video', () => {
    const long = { 'shots/frost/shutter': '1/4 s' };
    const rules = (text: string) => findingsOf(text).map(({ rule }) => rule);
    expect(rules(changed(SOUND, long))).not.toContain('shutter-too-slow');
    const video = { ...long, 'shots/frost/stack': '{ with: rail, settle: 2 s, mode: video }' };
    expect(rules(changed(SOUND, video))).toContain('shutter-too-slow');
  });
});
