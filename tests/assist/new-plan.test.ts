/** A new plan of every combination that can be chosen has nothing to find, and lacks nothing. */
import { describe, expect, it } from 'vitest';
import {
  bodyFromSheet,
  lensFromSheet,
  lightFromSheet,
  readAnswer,
} from '../../shared/assist/new-plan/from-sheet.ts';
import { BODIES, LENSES, SUBJECT_KINDS } from '../../shared/assist/new-plan/kit.ts';
import { newPlan, pieceOf } from '../../shared/assist/new-plan/new-plan.ts';
import { type Answers, QUESTIONS, type Sheet } from '../../shared/assist/new-plan/questions.ts';
import { createCore } from '../../shared/core/core.ts';
import { isMissed } from '../../shared/figures/reasons.ts';
import { each, laws } from '../support/each.ts';
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

const [SUBJECT] = SUBJECT_KINDS;

/** All that the sheets of three makers may say, in their own spelling. */
const SHEETS = {
  body: {
    sensor: 'full-frame',
    pixels: '6000x4000',
    modes: '1920 x 1080 50p, 3840x2160 @ 25 fps',
    'body-mass': '660g',
  },
  lens: {
    'focal-length': '90mm',
    'f-range': '1:2.8-22',
    closest: '0.28m',
    magnification: '1:1',
    'filter-thread': 'M62',
    'lens-length': '120mm',
    'lens-mass': '600g',
  },
  light: { lux: '2200 lux @ 1 m', face: '300x200 mm' },
} as const satisfies Readonly<Record<Sheet, Answers>>;

const bySheets = (
  { body, lens, light }: Readonly<Record<Sheet, Answers>>,
  subject = SUBJECT!,
): string =>
  newPlan(createCore, {
    body: bodyFromSheet(body)!,
    lens: lensFromSheet(lens)!,
    light: lightFromSheet(light)!,
    subject,
  });

const errorsIn = (text: string): readonly string[] =>
  coreWith(text)
    .findings(PLAN)
    .filter(({ severity }) => severity === 'error')
    .map(({ what }) => what);

describe('a new plan from data sheets', () => {
  it('has every value as a plan writes it, and nothing that no sheet said', () => {
    const text = bySheets(SHEETS);
    for (const line of [
      'sensor: 36 x 24 mm',
      'pixels: 6000 x 4000',
      'hd-50: { resolution: 1920 x 1080, rate: 50 fps }',
      'uhd-25: { resolution: 3840 x 2160, rate: 25 fps }',
      'mass: 660 g',
      'focal-length: 90 mm',
      'aperture: f/2.8 to 22',
      'closest: { from-sensor: 0.28 m, magnification: 1x }',
      'filter-thread: 62 mm',
      'length: 120 mm',
      'mass: 600 g',
      'emitting-size: 300 x 200 mm',
      'illuminance: 2200 lx',
      'illuminance-distance: 1 m',
    ])
      expect(text).toMatch(new RegExp(`^ +${line}$`, 'm'));
    for (const key of ['loss', 'pupil-ratio', 'front-diameter', 'flange-distance', 'supply'])
      expect(text).not.toContain(`${key}:`);
    expect(coreWith(text).figures(PLAN).get('first')!.exposureErrorStops).toBeCloseTo(0, 0);
  });

  it('checks without errors whatever its sheets leave out', () => {
    const left: Readonly<Record<Sheet, Answers>>[] = [
      SHEETS,
      { body: {}, lens: {}, light: {} },
      ...(['body', 'lens', 'light'] as const).flatMap((sheet) =>
        Object.keys(SHEETS[sheet]).flatMap((key) => {
          const without = { ...SHEETS, [sheet]: { ...SHEETS[sheet], [key]: ' ' } };
          const alone = { body: {}, lens: {}, light: {}, [sheet]: { [key]: answerOf(sheet, key) } };
          return [without, alone];
        }),
      ),
    ];
    each(
      left,
      (sheets) => expect(errorsIn(bySheets(sheets))).toEqual([]),
      (sheets) => JSON.stringify(sheets),
    );
    each(
      SUBJECT_KINDS,
      (subject) => expect(errorsIn(bySheets(SHEETS, subject))).toEqual([]),
      ({ name }) => name,
    );
  });

  it('is not made of an answer that can not be read, or that may mean several things', () => {
    each(
      [
        ['body', 'sensor', 'large'],
        ['body', 'sensor', 'APS-C'],
        ['body', 'modes', 'all of them'],
        ['lens', 'focal-length', 'long'],
        ['lens', 'filter-thread', 'yes'],
        ['light', 'lux', '60 W'],
      ] as const,
      ([sheet, key, text]) => {
        const question = QUESTIONS[sheet].find((one) => one.key === key)!;
        expect(readAnswer(question, text)).toBeNull();
        const made = { body: bodyFromSheet, lens: lensFromSheet, light: lightFromSheet }[sheet];
        expect(made({ [key]: text })).toBeNull();
      },
      ([, key, text]) => `${key}: ${text}`,
    );
  });

  it('reads the example of every question', () => {
    each(
      Object.values(QUESTIONS).flat(),
      (question) => expect(readAnswer(question, question.example)).not.toBeNull(),
      ({ key }) => key,
    );
  });
});

function answerOf(sheet: Sheet, key: string): string {
  const answers: Answers = SHEETS[sheet];
  return answers[key]!;
}
