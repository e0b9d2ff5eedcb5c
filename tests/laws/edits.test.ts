/**
 * Law A: after any edits the core says of a text what it says when it is given that text afresh.
 * Law C: a defect inside one entry leaves the figures of the others as they were.
 * (Law B, that the split tree equals a whole parse, stands in tests/fuzz.)
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import { canonical, positionAt } from './canonical.ts';
import { whole } from './day.ts';

const RUNS = manyRuns(300);

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

/** Texts to begin with, and the part of each that is edited. */
const STARTS = [
  { start: EXAMPLE_PLAN, from: 0 },
  { start: EXAMPLE_PLAN + FILM, from: EXAMPLE_PLAN.length },
  { start: EXAMPLE_PLAN + FILM, from: EXAMPLE_PLAN.indexOf('\nshots:') },
];

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
  it('the core says what it says of the text given afresh (law A)', () => {
    fc.assert(
      fc.property(fc.constantFrom(...STARTS), edits, ({ start, from: least }, made) => {
        const core = coreWith(start);
        core.editFigures(PLAN);
        let text = start;
        for (const { at, length, text: written, ask } of made) {
          const from = whole(text, Math.floor(least + at * Math.max(0, text.length - least)));
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
      { numRuns: RUNS },
    );
  }, 3_600_000);

  it('a defect in one shot leaves the figures of the other (law C)', () => {
    const start = EXAMPLE_PLAN.indexOf('  skin:');
    const end = EXAMPLE_PLAN.indexOf('\npreflight:');
    const frost = JSON.stringify(coreWith(EXAMPLE_PLAN).figures(PLAN).get('frost'));
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
          let entry = EXAMPLE_PLAN.slice(start, end);
          for (const { at, text } of edits) {
            // Behind a line's indent, so that it stays a line of the entry.
            const offset = 8 + Math.floor(at * (entry.length - 8));
            if (/^\s*$/.test(entry.slice(entry.lastIndexOf('\n', offset - 1) + 1, offset)))
              continue;
            entry = entry.slice(0, offset) + text + entry.slice(offset);
          }
          const core = coreWith(EXAMPLE_PLAN.slice(0, start) + entry + EXAMPLE_PLAN.slice(end));
          expect(JSON.stringify(core.figures(PLAN).get('frost'))).toBe(frost);
        },
      ),
      { numRuns: RUNS },
    );
  }, 3_600_000);
});
