/** A finished stack in the edit: one picture, held for as long as its cut is; and what speed is real. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const stacked = (cuts: string, more: Readonly<Record<string, string | null>> = {}): string =>
  changed(EXAMPLE_PLAN, {
    'shots/frost/iso': 'auto',
    'shots/frost/record': null,
    'shots/frost/stack': '{ with: rail, settle: 2 s }',
    'preflight/once/stack-ends-checked': 'open',
    edit: `{ cuts: { ${cuts} } }`,
    ...more,
  });

const HELD = 'one: { shot: frost, duration: 75 frames }';
const TWO = `${HELD}, two: { shot: skin, duration: 4 s, transition: dissolve 12 frames }`;

const cutsOf = (text: string) => coreWith(text).editFigures(PLAN)!.cuts;
const timeline = (text: string) => {
  const made = coreWith(text).timeline(PLAN, 'otio');
  return JSON.parse(made.ok ? made.text : made.why).tracks.children[0].children;
};
const rulesOf = (text: string) =>
  findingsOf(text)
    .filter(({ severity }) => severity !== 'hint')
    .map(({ rule }) => rule);

describe('a finished stack in the edit', () => {
  it('is held for the length of its cut, with every handle that a dissolve needs', () => {
    const [one, two] = cutsOf(stacked(TWO));
    expect(one).toMatchObject({
      holdsPicture: true,
      durationFrames: 75,
      uncoveredFrames: 0,
      sourceS: null,
      sourceStartS: null,
      repeatsFrames: false,
      handleAfterNeededFrames: 6,
      handleAfterThereFrames: 6,
    });
    expect(one?.notKnown.sourceS).toBe('the cut holds a picture');
    expect(two).toMatchObject({ holdsPicture: false, realSpeed: [1, 1] });
  });

  it('asks for no take, no rate and no length', () => {
    const rules = rulesOf(stacked(TWO));
    for (const rule of ['cut-outruns-clips', 'slower-than-recorded', 'join-without-handles'])
      expect(rules).not.toContain(rule);
  });

  it('is missing where every picture is rejected', () => {
    const none = stacked(HELD, { clips: '{ frost: [ { file: a.tif, verdict: reject } ] }' });
    expect(cutsOf(none)[0]).toMatchObject({ uncoveredFrames: 75 });
    const [found] = findingsOf(none).filter(({ rule }) => rule === 'cut-outruns-clips');
    expect(found?.what).toBe('one has no clip: every clip of frost is rejected.');
  });

  it('is a frozen frame of one in the timeline', () => {
    const kept = stacked(HELD, { clips: '{ frost: [ { file: a.tif, verdict: keep } ] }' });
    const [clip] = timeline(kept);
    expect(clip.source_range.duration).toMatchObject({ rate: 25, value: 75 });
    expect(clip.effects).toMatchObject([{ OTIO_SCHEMA: 'FreezeFrame.1', time_scalar: 0 }]);
    const { target_url: url, available_range: range } = clip.media_references.DEFAULT_MEDIA;
    expect(url).toBe('a.tif');
    expect(range.duration.value).toBe(1);
  });

  it('says so in the list of cuts and beside the cut', () => {
    const text = stacked(HELD, { clips: '{ frost: [ { file: a.tif, verdict: keep } ] }' });
    const list = coreWith(text).timeline(PLAN, 'csv');
    expect(list.ok && list.text).toContain(',held,a.tif,,,0,');
    const line = text.split('\n').findIndex((one) => one.includes('one: {'));
    const character = text.split('\n')[line]!.indexOf('one:');
    expect(coreWith(text).hover(PLAN, { line, character })?.markdown).toContain('a.tif, held');
  });
});

describe('the real speed of a cut', () => {
  const cut = (more: Readonly<Record<string, string | null>>, speed = '') =>
    cutsOf(
      changed(EXAMPLE_PLAN, {
        ...('shots/frost/time-lapse' in more ? {} : { 'shots/frost/take': '{ duration: 8 s }' }),
        edit: `{ cuts: { one: { shot: frost, duration: 2 s${speed} } } }`,
        ...more,
      }),
    )[0]!;
  const MODE =
    '{ resolution: 1920 x 1080, rate: 119.88 fps, plays: 25 fps, bitrate: 120 Mb/s, area: 36 x 20.25 mm }';
  const CONFORMED = {
    'kit/bodies/body-a/recording-modes/slow-25': MODE,
    'shots/frost/record': 'slow-25',
  };

  it('has what the body has slowed', () => {
    // By hand: 25 / (120000/1001) is 0.20854, so it is slowed 4.795 times.
    const conformed = cut(CONFORMED);
    expect(conformed.speed).toEqual([1, 1]);
    expect(conformed.realSpeed?.[0]).toBeCloseTo(0.208542, 6);
    expect(1 / conformed.realSpeed![1]).toBeCloseTo(4.795, 3);
    const half = cut(CONFORMED, ', speed: 100 to 50 %');
    expect(half.realSpeed?.[1]).toBeCloseTo(0.104271, 6);
  });

  it('has what a time-lapse has sped up', () => {
    // A frame every 20 s, 25 of them a second: 500 times.
    const lapse = cut({
      'shots/frost/record': null,
      'shots/frost/time-lapse': '{ interval: 20 s, duration: 1 h }',
    });
    expect(lapse.realSpeed).toEqual([500, 500]);
  });

  it('is in the table beside the speed of the clip, where it is another', () => {
    const rows = (text: string) =>
      coreWith(text).sheet(PLAN, { isWrittenOn: true }).edit!.table.rows;
    const plan = (more: Readonly<Record<string, string>>) =>
      changed(EXAMPLE_PLAN, {
        'shots/frost/take': '{ duration: 8 s }',
        edit: '{ cuts: { one: { shot: frost, duration: 2 s } } }',
        ...more,
      });
    expect(JSON.stringify(rows(plan(CONFORMED)))).toContain('100%, 20.9% of real time');
    expect(JSON.stringify(rows(plan({})))).toContain('"100%"');
  });
});
