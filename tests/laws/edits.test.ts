/**
 * Law A: after any edits the core says of a text what it says when it is given that text afresh.
 * Law C: a defect inside one entry leaves the figures of the others as they were.
 * (Law B, that the split tree equals a whole parse, stands in tests/fuzz.)
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { FAR_ROWS, MEASURED_PLAN } from '../support/measured-plan.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import { canonical, positionAt } from './canonical.ts';
import { whole } from './day.ts';

const RUNS = manyRuns(200);
/** A plan with measured lenses takes some times as long to work out. */
const MEASURED_RUNS = manyRuns(8);

/** What people and their keyboards put into a plan, one or many characters at a time. */
const WRITTEN = [
  '',
  ' ',
  '\n',
  '\n    ',
  '\n  ',
  '\n\n',
  '\r\n',
  '\t',
  ':',
  ': ',
  ',',
  '- ',
  '#',
  ' # note',
  '"',
  "'",
  '{',
  '}',
  '[',
  ']',
  '|',
  '&a ',
  '*a',
  '---\n',
  '0',
  '5',
  '1,5',
  'f/16',
  '40 mm',
  'deg',
  'x',
  'rig: stacked\n',
  '    iso: 800\n',
  '  other:\n    subject: frost-plate\n    rig: bench\n    field: 60 mm\n',
  'shots:\n',
  '50 %',
  ' bars',
  '    five: { shot: skin, duration: 2 s }\n',
  '        - { with: [body-a], ring: closest, field: 120 mm }\n',
  '      bench: [{ with: [body-a, tube-36], ring: 1 m, magnification: 0.4x }]\n',
  ' \u00b1 3 mm',
  'kit:\n  lenses:\n',
  'frost',
  '\ufeff',
  'é',
  '😀',
];

/** A film of the plan's shots, with clips of one of them: places and coverage follow from each other. */
const FILM = `
clips:
  skin:
    - { file: a.mov, verdict: keep }
    - { file: b.mov, verdict: reject }
edit:
  music: { tempo: 92 bpm, first-beat: 0.4 s, bar: 4 beats }
  cuts:
    one: { shot: skin, duration: 2 bars }
    two: { shot: frost, from: 2 s, duration: 3 s, speed: 50 % }
    three:
      shot: skin
      from: 0 s
      duration: 3 beats
      transition: dissolve 6 frames
    four: { shot: frost, duration: 90 frames, speed: 100 to 60 %, transition: dissolve 1 beat }
`;

interface Start {
  readonly start: string;
  readonly from: number;
  readonly to?: number;
}

/** Texts to begin with, and the part of each that is edited. */
const STARTS: readonly Start[] = [
  { start: EXAMPLE_PLAN, from: 0 },
  { start: EXAMPLE_PLAN + FILM, from: EXAMPLE_PLAN.length },
  { start: EXAMPLE_PLAN + FILM, from: EXAMPLE_PLAN.indexOf('\nshots:') },
];
const MEASURED: readonly Start[] = [{ start: MEASURED_PLAN, ...FAR_ROWS }];

const edit = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.oneof(
    { weight: 6, arbitrary: fc.constant(0) },
    { weight: 3, arbitrary: fc.integer({ min: 1, max: 12 }) },
    { weight: 1, arbitrary: fc.integer({ min: 13, max: 400 }) },
  ),
  text: fc.constantFrom(...WRITTEN),
  /** Ask between edits, so that what is kept is used. */
  ask: fc.boolean(),
});

const edits = fc.array(edit, { minLength: 1, maxLength: 12 });

describe('after any edits', () => {
  it.each([
    ['shots and films', STARTS, RUNS],
    ['benches', MEASURED, MEASURED_RUNS],
  ] as const)(
    'of %s the core says what it says of the text given afresh (law A)',
    (_, starts, numRuns) => {
      fc.assert(
        fc.property(fc.constantFrom(...starts), edits, ({ start, from: least, to: most }, made) => {
          const core = coreWith(start);
          core.editFigures(PLAN);
          let text = start;
          // What stands after the part that is edited stays.
          const rest = most === undefined ? 0 : start.length - most;
          for (const { at, length, text: written, ask } of made) {
            const room = Math.max(0, text.length - rest - least);
            const from = whole(text, Math.floor(least + at * room));
            const to = whole(text, Math.min(text.length, from + length));
            core.edit(PLAN, { start: positionAt(text, from), end: positionAt(text, to) }, written);
            text = text.slice(0, from) + written + text.slice(to);
            if (ask) {
              core.findings(PLAN);
              core.editFigures(PLAN);
            }
          }
          for (const file of core.wanted(PLAN)) core.refuse(file, 'not-found');
          expect(canonical(core, PLAN)).toBe(canonical(coreWith(text), PLAN));
        }),
        { numRuns },
      );
    },
    3_600_000,
  );

  it.each([
    [
      'shot',
      EXAMPLE_PLAN,
      EXAMPLE_PLAN.indexOf('  skin:') + 8,
      EXAMPLE_PLAN.indexOf('\npreflight:'),
      RUNS,
    ],
    ["lens's bench", MEASURED_PLAN, FAR_ROWS.from + 10, FAR_ROWS.to - 1, MEASURED_RUNS],
  ] as const)(
    'a defect in one %s leaves the figures of the other (law C)',
    (_, plan, start, end, numRuns) => {
      const frost = JSON.stringify(coreWith(plan).figures(PLAN).get('frost'));
      // Inside the entry: at its own depth or deeper, and on one line.
      const inside = WRITTEN.filter((text) => !/[\n\r]/.test(text));
      fc.assert(
        fc.property(
          fc.array(
            fc.record({
              at: fc.double({ min: 0, max: 1, noNaN: true }),
              text: fc.constantFrom(...inside),
            }),
            { minLength: 1, maxLength: 3 },
          ),
          (edits) => {
            let entry = plan.slice(start, end);
            for (const { at, text } of edits) {
              // Behind a line's indent, so that it stays a line of the entry.
              const offset = Math.floor(at * entry.length);
              if (/^\s*$/.test(entry.slice(entry.lastIndexOf('\n', offset - 1) + 1, offset)))
                continue;
              entry = entry.slice(0, offset) + text + entry.slice(offset);
            }
            const core = coreWith(plan.slice(0, start) + entry + plan.slice(end));
            expect(JSON.stringify(core.figures(PLAN).get('frost'))).toBe(frost);
          },
        ),
        { numRuns },
      );
    },
    3_600_000,
  );
});
