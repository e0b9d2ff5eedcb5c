/** A time-lapse's figures, worked out here by hand, and what each needs. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const STILLS = '{ size: 28 MB, write: 1 s, battery: 4 h }';

const plan = (change: Readonly<Record<string, string | null>> = {}): string =>
  changed(EXAMPLE_PLAN, {
    'kit/bodies/body-a/stills': STILLS,
    'shots/frost/record': null,
    'shots/frost/subject-speed': '6 mm/h',
    'shots/frost/time-lapse': '{ interval: 20 s, duration: 3 h }',
    ...change,
  });

const frost = (text: string) => coreWith(text).figures(PLAN).get('frost')!;

const VIDEO = {
  'shots/frost/record': 'full-25',
  'shots/frost/time-lapse': '{ interval: 20 s, duration: 3 h, mode: video }',
};

describe('stills', () => {
  const figures = frost(plan());

  it('count, play and weigh as their interval says', () => {
    expect(figures).toMatchObject({
      timeLapseFrames: 540,
      timeLapseS: 10_800,
      playingS: 21.6,
      recordedS: 10_800,
      recordedBytes: 540 * 28e6,
      batteryShare: 0.75,
    });
    // A still of 1/50 s, and a second to write it.
    expect(figures.intervalLeftS).toBeCloseTo(20 - 0.02 - 1, 12);
  });

  it('grow by nobody knows how much until the plan says how fast', () => {
    const { growthPx, growthCrossingS, notKnown } = frost(
      changed(plan(), { 'shots/frost/subject-speed': null }),
    );
    expect([growthPx, growthCrossingS]).toEqual([null, null]);
    expect(notKnown).toHaveProperty('growthPx');
    expect(frost(plan()).growthPx).toBeGreaterThan(0);
  });

  it('cover the whole sensor, with the pixels of a still', () => {
    // 6048 × 4024 in the width of 36 mm; frame 60 mm wide.
    const [width, height] = figures.fieldMm as readonly [number, number];
    expect(width).toBeCloseTo(60, 9);
    expect(height).toBeCloseTo((60 * 4024) / 6048, 9);
  });

  it('blur within a frame, grow between two', () => {
    // 6 mm/h is 1/600 mm/s; 60 mm are 1920 delivered pixels of 1/32 mm.
    expect(figures.smearPx).toBeCloseTo((1 / 600) * 0.02 * 32, 9);
    expect(figures.growthPx).toBeCloseTo((1 / 600) * 20 * 32, 9);
    // 60 mm at 1/30 mm a frame are 1800 frames.
    expect(figures.growthCrossingS).toBeCloseTo(1800 / 25, 9);
  });

  it('may be given by their number', () => {
    const counted = frost(
      plan({ 'shots/frost/time-lapse': '{ interval: 20 s, frames: 540, supply: mains }' }),
    );
    expect(counted).toMatchObject({ timeLapseS: 10_800, playingS: 21.6, batteryShare: 0 });
  });

  it('say how long before the end of their time the last one is', () => {
    // Common practice: as many frames as intervals, one at the start of each.
    const core = coreWith(plan());
    const tile = core.sheet(PLAN, { isWrittenOn: true }).shots[0]!.settings;
    const note = tile.find(({ label }) => label === 'Time-lapse')?.note;
    expect(note).toContain('runs 3 h, the last frame 20 s before the end');
    const lines = plan().split('\n');
    const line = lines.findIndex((each) => each.includes('time-lapse:'));
    const character = lines[line]!.indexOf('interval') + 11;
    const { markdown } = core.hover(PLAN, { line, character })!;
    expect(markdown).toContain('last frame 20 s before its end');
  });

  it('may be longer exposed than a frame of video', () => {
    const rules = findingsOf(plan({ 'shots/frost/shutter': '2 s' })).map(({ rule }) => rule);
    expect(rules).not.toContain('shutter-too-slow');
    expect(rules).not.toContain('interval-does-not-fit');
  });
});

describe('video', () => {
  it('weighs what the clip weighs, at the bit rate of its mode', () => {
    // 540 frames at 25 fps and 30 Mb/s.
    expect(frost(plan(VIDEO))).toMatchObject({
      playingS: 21.6,
      recordedBytes: (21.6 * 30e6) / 8,
    });
  });
});

describe('what is not known', () => {
  it.each([
    [
      'recordedBytes',
      { 'kit/bodies/body-a/stills': '{ write: 1 s }', 'kit/bodies/body-a/pixels': null },
      'needs `size` of the stills of body-a',
    ],
    [
      'batteryShare',
      { 'kit/bodies/body-a/stills': '{ size: 28 MB }' },
      'needs `battery` of the stills of body-a',
    ],
    [
      'timeLapseFrames',
      { 'shots/frost/time-lapse': '{ interval: 20 s }' },
      "needs `duration` of frost's time-lapse",
    ],
    ['playingS', { 'deliver/rate': null }, 'needs `rate` of deliver'],
    ['growthPx', { 'kit/bodies/body-a/pixels': null }, 'needs `pixels` of body-a'],
  ])('%s says what it needs', (figure, change, why) => {
    const figures = frost(plan(change));
    expect(figures[figure]).toBeNull();
    expect(figures.notKnown[figure]).toContain(why);
  });

  it('does not apply to a shot without a time-lapse', () => {
    expect(frost(EXAMPLE_PLAN).notKnown.growthPx).toBe('the shot has no time-lapse');
  });
});

describe('what is said twice', () => {
  it.each([
    [
      '`duration` and `frames`',
      { 'shots/frost/time-lapse': '{ interval: 20 s, duration: 3 h, frames: 9 }' },
    ],
    ['`record` and a `time-lapse` of stills', { 'shots/frost/record': 'full-25' }],
    ['`duration` of the `take` and a `time-lapse`', { 'shots/frost/take': '{ duration: 60 s }' }],
  ])('%s', (keys, change) => {
    const found = findingsOf(plan(change)).filter(({ rule }) => rule === 'wrong-value');
    expect(found.map(({ what }) => what)).toEqual([expect.stringContaining(keys)]);
  });
});

describe('cards and batteries', () => {
  const sums = (change: Readonly<Record<string, string | null>>) =>
    coreWith(
      plan({
        'kit/bodies/body-a/card': '20 GB',
        'kit/bodies/body-a/battery': '90 min',
        'shots/skin/take': '{ duration: 20 s, count: 60, settle: 5 s }',
        ...change,
      }),
    ).recording(PLAN)[0]!;

  it('a time-lapse uses its share of a battery', () => {
    // 3 of 4 h are 67.5 of 90 min; 60 takes of 20 s are 20 min: they fit on one.
    expect(sums({})).toMatchObject({ batteries: 1, cards: 1 });
    expect(sums({ 'shots/skin/take': '{ duration: 20 s, count: 72, settle: 5 s }' })).toMatchObject(
      {
        batteries: 2,
      },
    );
  });

  it('and nothing of one on mains power', () => {
    const mains = '{ interval: 20 s, duration: 3 h, supply: mains }';
    const take = '{ duration: 20 s, count: 240, settle: 5 s }';
    expect(sums({ 'shots/frost/time-lapse': mains, 'shots/skin/take': take })).toMatchObject({
      batteries: 1,
    });
  });

  it('is not known without the battery life at intervals', () => {
    const { batteries, notKnown } = sums({ 'kit/bodies/body-a/stills': '{ size: 28 MB }' });
    expect(batteries).toBeNull();
    expect(notKnown.batteries).toBe('battery use of frost is unknown');
  });
});
