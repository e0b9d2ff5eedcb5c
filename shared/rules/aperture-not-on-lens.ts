import { MARKED_APERTURES } from '../optics/apertures.ts';
import { message } from '../words/message.ts';
import { type ShotRule, setTo } from './shot-rule.ts';

/** Marks are rounded: f/22 is 22.63. Within this of an end, a number is that end. */
const DEAD_BAND = 0.03;

interface Facts {
  readonly fNumber: number;
  readonly widest: number;
  readonly narrowest: number;
  readonly lens: string;
}

export const apertureNotOnLens: ShotRule<Facts> = {
  name: 'aperture-not-on-lens',
  severity: 'error',
  docs: {
    when: 'the marked aperture lies outside the lens’s range.',
    why: 'The plan holds the number on the aperture ring, whatever a converter or the body makes of it; a number that is not on the ring can’t be set.',
    remedy: 'Write the marked number. What works at the sensor stands beside it.',
    bad: [
      {
        says: 'the effective number written for the marked one',
        change: { 'shots/frost/aperture': 'f/64' },
      },
    ],
    good: [{ says: 'the narrowest mark', change: { 'shots/frost/aperture': 'f/32' } }],
  },
  check({ bench }) {
    const { lens, marked } = bench;
    const range = bench.apertureRange;
    if (!lens || !marked.known || !range.known) return [];
    const { from: widest, to: narrowest } = range.value;
    const fNumber = marked.value;
    if (fNumber >= widest * (1 - DEAD_BAND) && fNumber <= narrowest * (1 + DEAD_BAND)) return [];
    const at = bench.fields.aperture.at;
    return [
      {
        at,
        facts: { fNumber, widest, narrowest, lens: lens.name },
        related: range.from.map((place) => ({
          at: place,
          words: message`\`aperture\` of ${lens.name}`,
        })),
      },
    ];
  },
  words: ({ fNumber, widest, narrowest, lens }, say) => ({
    what: message`${say.fNumber(fNumber)} is not on ${lens}: its ring goes from ${say.fNumber(widest)} to ${say.fNumber(narrowest)}.`,
  }),
  numbers: ({ fNumber, widest, narrowest }) => ({ fNumber, widest, narrowest }),
  fixes({ at, facts: { fNumber, widest, narrowest } }) {
    const end = fNumber < widest ? widest : narrowest;
    const marks = MARKED_APERTURES.filter((mark) => mark >= widest && mark <= narrowest);
    const nearest = marks.length > 0 && !marks.includes(end) ? nearestTo(marks, end) : end;
    return [setTo(message`Set f/${nearest}, the nearest on the ring`, at, `f/${nearest}`)];
  },
};

const nearestTo = (marks: readonly number[], wanted: number): number =>
  marks.reduce((best, mark) => (Math.abs(mark - wanted) < Math.abs(best - wanted) ? mark : best));
