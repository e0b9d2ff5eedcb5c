/**
 * One defect of the edit at a time, planted into an edit that has nothing wrong: its rule speaks, on
 * the line of the defect, with numbers worked out here by hand; its fixes take it away.
 */
import { describe, expect, it } from 'vitest';
import { laws } from '../support/each.ts';
import { FAST_SETTING, MUSIC, withEdit } from '../support/edits.ts';
import { applied, coreWith, findingsOf, PLAN } from '../support/plans.ts';

interface Defect {
  readonly rule: string;
  readonly says: string;
  /** Lines of cuts to exchange, by their name. */
  readonly cuts?: Readonly<Record<string, string>>;
  readonly more?: readonly string[];
  readonly change?: Readonly<Record<string, string>>;
  /** What the line that the finding stands on holds. */
  readonly line: string;
  readonly what: string;
  readonly numbers?: Readonly<Record<string, number>>;
  readonly fix?: string;
  /** What else there is to say of it, for reasons of its own. */
  readonly beside?: readonly string[];
}

/** 12 s: 18 beats at 90 bpm. */
const CUTS: Readonly<Record<string, string>> = {
  one: '{ shot: skin, from: 2 s, duration: 1 bar }',
  two: '{ shot: frost, duration: 2 bars, speed: 100 % }',
  three: '{ shot: skin, duration: 6 beats, transition: dissolve 10 frames }',
};

const RIGHT = { 'deliver/duration': '12 s' };

const plan = ({ cuts, more, change }: Partial<Defect> = {}): string =>
  withEdit(
    Object.entries({ ...CUTS, ...cuts }).map(([name, cut]) => `${name}: ${cut}`),
    more ?? [MUSIC],
    { ...RIGHT, ...change },
  );

const DEFECTS: readonly Defect[] = [
  {
    rule: 'slower-than-recorded',
    says: 'a ramp to a quarter of what was recorded at the delivered rate',
    cuts: { two: '{ shot: frost, duration: 2 bars, speed: 100 to 25 % }' },
    line: '100 to 25 %',
    what: 'two runs at 25%; frost has enough frames for 100% or faster.',
    numbers: { slowestSpeed: 0.25, slowestSpeedWithoutRepeats: 1 },
    fix: 'Set the speed to 100%',
  },
  {
    rule: 'slower-than-recorded',
    says: 'and where the body could do it, a faster setting',
    cuts: { two: '{ shot: frost, duration: 2 bars, speed: 50 % }' },
    change: {
      'kit/bodies/body-a/recording-modes/full-50': FAST_SETTING,
      'shots/skin/record': 'full-50',
    },
    line: 'speed: 50 %',
    what: 'two runs at 50%; frost has enough frames for 100% or faster.',
    fix: 'Record frost with full-50 (50 fps)',
    beside: ['better-recording-mode'],
  },
  {
    rule: 'cut-outruns-clips',
    says: 'a cut that begins too late in the take',
    cuts: { one: '{ shot: skin, from: 19 s, duration: 1 bar }' },
    line: 'from: 19 s',
    // 4 beats of 2/3 s from 19 s on: 21.667 s; 1.667 s are 41.67 frames.
    what: 'one uses skin up to 21.7 s, but each take is 20 s.',
    numbers: { sourceStartS: 19, sourceEndS: 19 + 8 / 3, clipS: 20, uncoveredFrames: 42 },
    fix: 'Move the in point to 17.33 s',
  },
  {
    rule: 'cut-outruns-clips',
    says: 'a speed that uses up the take',
    cuts: { two: '{ shot: frost, duration: 2 bars, speed: 400 % }' },
    line: 'speed: 400 %',
    // 16/3 s at four times the speed: 21.33 s of 20 s; 1.333/4 s are 8.3 frames.
    what: 'two uses frost up to 21.3 s, but each take is 20 s.',
    numbers: { uncoveredFrames: 8 },
    // The dissolve behind it needs 5 frames at that speed: 0.8 s more.
    fix: 'Lengthen each take of frost to 23 s',
  },
  {
    rule: 'cut-without-frames',
    says: 'a cut shorter than half a frame',
    // Beat 4 is frame 66.67, shown from 67 on; 0.008 s are 0.2 frames, to 66.87, which is 67 too.
    cuts: {
      one: '{ shot: skin, from: 2 s, duration: 1 bar }\n    none: { shot: skin, duration: 0.008 s }',
    },
    line: 'duration: 0.008 s',
    what: 'none is 0.008 s long and shows no frame at 25 fps.',
    numbers: { lengthS: 0.008, rateFps: 25 },
    fix: 'Set none to 1 frame',
  },
  {
    rule: 'join-without-handles',
    says: 'a clip taken from its first frame',
    cuts: { three: '{ shot: skin, from: 0 s, duration: 6 beats, transition: dissolve 10 frames }' },
    line: 'transition: dissolve 10 frames',
    what: 'The dissolve into three needs a handle of 5 frames before its in point; the clip has 0.',
    numbers: { neededFrames: 5, thereFrames: 0 },
    fix: 'Replace the dissolve with a cut',
  },
  {
    rule: 'join-without-handles',
    says: 'a clip that ends with the cut',
    cuts: { two: '{ shot: frost, from: 14.6 s, duration: 2 bars, speed: 100 % }' },
    line: 'transition: dissolve 10 frames',
    // 20 s − 14.6 s − 5.333 s are 1.67 frames.
    what: 'The dissolve into three needs a handle of 5 frames after two; the clip has 1.',
    numbers: { neededFrames: 5, thereFrames: 1 },
    fix: 'Shorten the dissolve to 2 frames',
  },
  {
    rule: 'join-without-handles',
    says: 'a dissolve from nothing',
    cuts: { one: '{ shot: skin, from: 2 s, duration: 1 bar, transition: dissolve 10 frames }' },
    line: 'one: {',
    what: 'one is the first cut: there is nothing to dissolve from.',
    fix: 'Replace the dissolve with a cut',
  },
  {
    rule: 'off-the-beat',
    says: 'a length in seconds',
    cuts: {
      one: '{ shot: skin, from: 2 s, duration: 3 s }',
      three: '{ shot: skin, duration: 5.5 beats, transition: dissolve 10 frames }',
    },
    line: 'duration: 3 s',
    // 3 s is 4.5 beats of 16.67 frames; frame 75 is 8.33 before the fifth (or behind the fourth).
    what: 'two is 8.3 frames before the beat.',
    numbers: { fromBeatFrames: -25 / 3, framesPerBeat: 50 / 3 },
    fix: 'Set one to 5 beats',
  },
  {
    rule: 'duration-differs',
    says: 'a film that is delivered longer than it is cut',
    change: { 'deliver/duration': '15 s' },
    line: 'duration: 15 s',
    what: 'The edit is 75 frames shorter than the delivery length.',
    numbers: { totalS: 12, wantedS: 15, offFrames: -75 },
    fix: 'Set the delivery length to 12 s',
  },
  {
    rule: 'grade-splits',
    says: 'one shot under another light',
    change: {
      'shots/frost/light': '[bulb]',
      'shots/frost/iso': 'auto',
      'shots/frost/white-balance': '3200 K',
    },
    line: 'two: {',
    what: 'two is lit at 3200 K but shares a grade with skin, lit at 5600 K.',
    fix: 'Give frost its own grade',
  },
  {
    rule: 'white-balance-adrift',
    says: 'another white balance within one grade',
    change: { 'shots/frost/white-balance': '4300 K' },
    line: 'white-balance: 4300 K',
    what: 'White balance is 4300 K; other shots in its grade have 5600 K.',
    numbers: { kelvin: 4300, othersKelvin: 5600 },
    fix: 'Set white balance to 5600 K',
  },
  {
    rule: 'reframed-too-far',
    says: 'enlarged by half without pixels for it',
    cuts: { two: '{ shot: frost, duration: 2 bars, reframe: 1.5x }' },
    line: 'reframe: 1.5x',
    what: 'two is scaled to 1.5x; frost has enough resolution for 1x.',
    numbers: { reframe: 1.5, headroom: 1 },
    fix: 'Scale to 1x',
  },
  {
    rule: 'shot-unused',
    says: 'a shot that no cut shows',
    cuts: { two: '{ shot: skin, duration: 2 bars }' },
    line: 'frost:',
    what: 'No cut of the edit uses frost.',
  },
  {
    rule: 'proxy-advised',
    says: '50 fps on a machine with 12 GB, which did not play them (common practice)',
    more: ['memory: 12 GB', MUSIC],
    change: {
      'kit/bodies/body-a/recording-modes/full-50': FAST_SETTING,
      'shots/frost/record': 'full-50',
      'shots/skin/record': 'full-50',
    },
    line: 'memory: 12 GB',
    what: '12 GB of memory may not be enough to edit 1920 × 1080 at 50 fps (skin).',
    numbers: { memoryBytes: 12e9, pixelsPerS: 1920 * 1080 * 50 },
  },
  {
    rule: 'not-known',
    says: 'a cut without a length',
    cuts: { two: '{ shot: frost }' },
    line: 'two: { shot: frost }',
    what: "Give `duration` of `two` next: 2 cuts can't be placed without it.",
    numbers: { cutsWaiting: 2, settles: 0, others: 0 },
  },
];

const loud = (text: string) => findingsOf(text).filter(({ severity }) => severity !== 'hint');

describe('the edit that they are planted in', () => {
  it('has nothing wrong', () => {
    expect(loud(plan())).toEqual([]);
    expect(findingsOf(plan()).filter(({ rule }) => rule === 'shot-unused')).toEqual([]);
  });
});

laws(
  DEFECTS,
  ({ rule, says }) => `${rule}: ${says}`,
  (defect, law) => {
    const { rule, line, what, numbers, fix, beside = [] } = defect;
    const text = plan(defect);
    const core = coreWith(text);
    const all = core.findings(PLAN);
    const found = all.filter((finding) => finding.rule === rule);

    law('is found once, on its line, and nothing beside it', () => {
      expect(found.map((finding) => finding.what)).toEqual([what]);
      expect(text.split('\n')[found[0]!.range.start.line]).toContain(line);
      const others = all.filter((one) => one.severity !== 'hint' && one.rule !== rule);
      expect(others.map((one) => one.rule)).toEqual(beside);
    });

    for (const [name, value] of Object.entries(numbers ?? {}))
      law('has its numbers', () => expect(found[0]?.numbers?.[name]).toBeCloseTo(value, 9), name);

    law('goes by its fix', () => {
      const fixes = core.fixesOf(found[0]!);
      const titles = fixes.map(({ title }) => title);
      if (fix === undefined) expect(titles).toEqual([]);
      else expect(titles).toContain(fix);
      for (const each of fixes) {
        const mended = applied(text, each.edits);
        expect(findingsOf(mended).filter((one) => one.rule === rule)).toEqual([]);
      }
    });
  },
);

describe('one cause, one finding', () => {
  it('an edit that leaves the beat is told where it leaves it, and no more', () => {
    const text = plan({
      cuts: {
        one: '{ shot: skin, from: 2 s, duration: 3 s }',
        two: '{ shot: frost, duration: 1 bar }',
        three: '{ shot: skin, duration: 1 bar }',
        four: '{ shot: frost, duration: 25 frames }',
      },
      change: { 'deliver/duration': '8 s' },
    });
    const found = loud(text).filter(({ rule }) => rule === 'off-the-beat');
    expect(found.map(({ what }) => what)).toEqual(['two is 8.3 frames before the beat.']);
  });

  it('a clip that is outrun is not said to lack handles too', () => {
    const text = plan({ cuts: { two: '{ shot: frost, from: 19 s, duration: 2 bars }' } });
    expect(loud(text).map(({ rule }) => rule)).toEqual(['cut-outruns-clips']);
  });

  it('a shot that can’t be read is said to be wrong once, and the edit is silent about it', () => {
    const text = plan({ change: { 'shots/frost/aperture': 'f/eight' } });
    expect(loud(text).map(({ rule }) => rule)).toEqual(['wrong-value']);
  });

  it('a cut of a shot that is not there is a name that is unknown', () => {
    const text = plan({ cuts: { two: '{ shot: frosst, duration: 2 bars }' } });
    expect(loud(text).map(({ rule }) => rule)).toEqual(['unknown-name']);
  });
});
