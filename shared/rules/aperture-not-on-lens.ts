import { MARKED_APERTURES } from '../optics/apertures.ts';
import { setTo } from '../plan/fixes.ts';
import { message } from '../words/message.ts';
import type { ShotRule } from './shot-rule.ts';

/** Marks are rounded: f/22 is f/22.63. A number within this of an end of the range is that end. */
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
    when: 'the marked aperture is outside the range of the lens.',
    why: "A plan states the f-number marked on the lens, before any converter. An f-number outside the range of the lens can't be set.",
    remedy: 'Write the marked f-number. Lamella shows the effective one beside it.',
    bad: [
      {
        says: 'the effective f-number in place of the marked one',
        change: { 'shots/frost/aperture': 'f/64' },
      },
    ],
    good: [
      { says: 'the narrowest aperture of the lens', change: { 'shots/frost/aperture': 'f/32' } },
    ],
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
    what: message`${lens} has no ${say.fNumber(fNumber)}; its range is ${say.fNumber(widest)} to ${say.fNumber(narrowest)}.`,
  }),
  numbers: ({ fNumber, widest, narrowest }) => ({ fNumber, widest, narrowest }),
  fixes({ at, facts: { fNumber, widest, narrowest } }) {
    const end = fNumber < widest ? widest : narrowest;
    const marks = MARKED_APERTURES.filter((mark) => mark >= widest && mark <= narrowest);
    const nearest = marks.length > 0 && !marks.includes(end) ? nearestTo(marks, end) : end;
    return [setTo(message`Set f/${nearest} (the nearest on the lens)`, at, `f/${nearest}`)];
  },
};

const nearestTo = (marks: readonly number[], wanted: number): number =>
  marks.reduce((best, mark) => (Math.abs(mark - wanted) < Math.abs(best - wanted) ? mark : best));
