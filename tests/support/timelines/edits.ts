/** Random edits with clips of known rate, length and timecode, and which frame each is to show. */
import fc from 'fast-check';
import type { ClipFacts, ClipReading, ClipTimecode } from '../../../shared/clips/facts.ts';
import type { EditJson } from '../../../shared/figures/edit-json.ts';
import { rational } from '../../../shared/quantity/rational.ts';
import { withEdit } from '../edits.ts';
import { Ratio } from './shown.ts';

/** Rates by how plans write them. */
export const RATES: Readonly<Record<string, readonly [n: number, d: number]>> = {
  '23.976 fps': [24000, 1001],
  '24 fps': [24, 1],
  '25 fps': [25, 1],
  '29.97 fps': [30000, 1001],
  '50 fps': [50, 1],
  '59.94 fps': [60000, 1001],
  '119.88 fps': [120000, 1001],
};

const rateName = fc.constantFrom(...Object.keys(RATES));

const clip = fc.record({
  rate: rateName,
  durationS: fc.integer({ min: 8, max: 40 }),
  hasTimecode: fc.boolean(),
});

const cut = fc.record({
  shot: fc.constantFrom('frost', 'skin'),
  from: fc.option(fc.integer({ min: 0, max: 1500 })),
  duration: fc.oneof(
    fc.integer({ min: 1, max: 160 }).map((frames) => `${frames} frames`),
    fc.constantFrom('1 s', '0.5 s', '3 beats', '1 bar', '0.3 s'),
  ),
  speed: fc.oneof(
    fc.constantFrom('100 %', '50 %', '25 %', '200 %', '33.3 %', '80 %', '40 %'),
    fc.constantFrom('100 to 25 %', '20 to 400 %', '33.3 to 100 %', '400 to 50 %', '50 to 51 %'),
  ),
  transition: fc.oneof(
    fc.constant('cut'),
    fc.integer({ min: 1, max: 60 }).map((frames) => `dissolve ${frames} frames`),
  ),
});

export interface RandomEdit {
  readonly rate: string;
  readonly isDrop: boolean;
  readonly clips: readonly { rate: string; durationS: number; hasTimecode: boolean }[];
  readonly cuts: readonly {
    shot: string;
    from: number | null;
    duration: string;
    speed: string;
    transition: string;
  }[];
}

export const randomEdit: fc.Arbitrary<RandomEdit> = fc.record({
  rate: rateName,
  isDrop: fc.boolean(),
  clips: fc.array(clip, { minLength: 3, maxLength: 3 }),
  cuts: fc.array(cut, { minLength: 1, maxLength: 7 }),
});

/** Drop frame where it is drawn and the rate knows it. */
export const startOf = ({ rate, isDrop }: RandomEdit): string =>
  isDrop && ['29.97 fps', '59.94 fps'].includes(rate) ? '01:00:00;00' : '01:00:00:00';

export const FILES = ['frost a.mov', 'skin & b.mov', 'skin c.mov'];

export const textOf = ({ rate, cuts }: RandomEdit): string =>
  `${withEdit(
    cuts.map(({ shot, from, duration, speed, transition }, index) => {
      const start = from === null ? '' : `from: ${(from / 100).toFixed(2)} s, `;
      return `c${index}: { shot: ${shot}, ${start}duration: ${duration}, speed: ${speed}, transition: ${transition} }`;
    }),
    ['music: { tempo: 117.55 bpm, bar: 3 beats }'],
    { 'deliver/rate': rate },
  )}
clips:
  frost: [{ file: "${FILES[0]}", verdict: keep }]
  skin: [{ file: "${FILES[1]}", verdict: keep }, { file: "${FILES[2]}", verdict: keep }]
`;

/** The rate that a clip's timecode is counted at: none of more than 60 frames a second is. */
const clockOf = (rate: string): readonly [number, number] =>
  rate === '119.88 fps' ? RATES['29.97 fps']! : RATES[rate]!;

/** An hour on the clock. */
const hourOf = (rate: string): ClipTimecode => {
  const [n, d] = clockOf(rate);
  return { frame: Math.ceil(n / d) * 3600, rate: rational(n, d), dropFrame: false };
};

export function readingsOf({ clips }: RandomEdit): ReadonlyMap<string, ClipReading> {
  return new Map(
    clips.map(({ rate, durationS, hasTimecode }, index): [string, ClipReading] => {
      const [n, d] = RATES[rate]!;
      const facts: ClipFacts = {
        ...{ bytes: 1, size: { width: 1920, height: 1080 }, rotation: 0, codec: 'h264' },
        ...{ rate: { kind: 'constant', rate: rational(n, d) }, durationS, bitsPerS: 1 },
        ...{ shutterS: null, iso: null, whiteBalance: null, created: null },
        ...(hasTimecode && { startTimecode: hourOf(rate) }),
      };
      return [FILES[index]!, { state: 'read', facts }];
    }),
  );
}

/** What each clip's first frame is called. */
export const timecodeOf =
  ({ clips }: RandomEdit) =>
  (file: string): string =>
    clips[FILES.indexOf(file)]!.hasTimecode ? '01:00:00:00' : '00:00:00:00';

export interface PlannedFrame {
  readonly clip: string;
  readonly frame: number;
  readonly isRamp: boolean;
  /** The clip has it. */
  readonly isThere: boolean;
}

/**
 * By the definition of the plan: a cut begins on the frame nearest to its in point, and after k of
 * its n frames at speeds from a to b has used a·k + (b − a)·k²/2n frames' worth of real time.
 * @param at frame of the cut; negative before it
 */
export function plannedFrame(
  edit: RandomEdit,
  { cuts }: EditJson,
  index: number,
  at: number,
): PlannedFrame {
  const { clipFile, sourceStartS, durationFrames, speed } = cuts[index]!;
  const source = edit.clips[FILES.indexOf(clipFile!)]!;
  const [rate, fps] = [Ratio.of(...RATES[source.rate]!), Ratio.of(...RATES[edit.rate]!)];
  const share = (value: number): Ratio => Ratio.of(Math.round(value * 1e6), 1e6);
  const [a, b] = [share(speed![0]), share(speed![1])];
  const n = Ratio.of(durationFrames!);
  const start = Math.floor(sourceStartS! * (Number(rate.n) / Number(rate.d)) + 0.5 + 1e-9);
  const k = Ratio.of(at);
  const inside = at <= 0 ? Ratio.of(0) : at > durationFrames! ? n : k;
  const whole = a.times(inside).plus(
    b
      .minus(a)
      .times(inside)
      .times(inside)
      .over(n.times(Ratio.of(2))),
  );
  const used = whole.plus(k.minus(inside).times(at <= 0 ? a : b));
  const frame = Ratio.of(start).plus(used.times(rate).over(fps)).floor();
  const frames = Math.round((source.durationS * Number(rate.n)) / Number(rate.d));
  return {
    clip: clipFile!,
    frame,
    isRamp: speed![0] !== speed![1],
    isThere: frame >= 0 && frame < frames,
  };
}
