import { inLanguage, message } from '../words/message.ts';
import type { PlanRule } from './plan-rule.ts';

interface Facts {
  readonly of: string;
  readonly row: number;
  readonly because: string;
}

export const benchSaysNothing: PlanRule<Facts> = {
  name: 'bench-says-nothing',
  severity: 'warning',
  docs: {
    when: "a row of a `bench`, or a value in it, can't be used.",
    why: 'A row says something of a lens if it names a setup in which something is in focus, and what was measured there. A lens alone at infinity has no field to measure; an effective f-number says something only beside the marked one. A light needs the size of its face or a second distance, a converter the field with and without it.',
    remedy: 'Add what is missing, or remove the row.',
    bad: [
      {
        says: 'a row without a measurement',
        change: { 'kit/lenses/long-200/bench': '[{ with: [body-a], ring: closest }]' },
      },
      {
        says: 'an effective f-number without the marked one',
        change: {
          'kit/lenses/long-200/bench':
            '[{ with: [body-a, tube-36], ring: infinity, effective-f-number: 9.8 }]',
        },
      },
      {
        says: 'the field with a converter alone',
        change: { 'kit/converters/twice/bench': '[{ field: 37.4 mm }]' },
      },
    ],
    good: [
      {
        says: 'with the marked one',
        change: {
          'kit/lenses/long-200/bench':
            '[{ with: [body-a, tube-36], ring: infinity, effective-f-number: 9.8, marked: f/8 }]',
        },
      },
      {
        says: 'with and without the converter',
        change: { 'kit/converters/twice/bench': '[{ field: 37.4 mm, field-without: 74.8 mm }]' },
      },
    ],
  },
  check: ({ benches }) =>
    benches.flatMap(({ of, gaps }) =>
      gaps.map(({ at, row, because }) => ({ at, facts: { of, row, because } })),
    ),
  words: ({ of, row, because }) => ({
    what: message`Row ${row} of the bench of ${of} can't be used: ${inLanguage(because)}.`,
  }),
};
