/** A mode that keeps its high rate and one that the body conforms, worked out here by hand. */
import { describe, expect, it } from 'vitest';
import { differences } from '../../shared/clips/compare.ts';
import type { ClipAsk, ClipFacts } from '../../shared/clips/facts.ts';
import { rational } from '../../shared/quantity/rational.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { judgeFix } from '../support/judged-fix.ts';
import { applied, changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const MODES = 'kit/bodies/body-a/recording-modes';
const FAST = 'resolution: 1920 x 1080, rate: 119.88 fps, bitrate: 120 Mb/s, crop: 1.5x';

/** Two cuts of frost, as many seconds of it as are said. */
const cuts = (frost: string): string =>
  `{ cuts: { one: { shot: frost, ${frost} }, two: { shot: skin, duration: 4 s } } }`;

const plan = (change: Readonly<Record<string, string | null>> = {}): string =>
  changed(EXAMPLE_PLAN, {
    [`${MODES}/fast-120`]: `{ ${FAST} }`,
    [`${MODES}/slow-25`]: `{ ${FAST}, plays: 25 fps }`,
    'shots/frost/record': 'slow-25',
    'shots/frost/shutter': '1/240 s',
    'shots/frost/iso': 'auto',
    'shots/frost/take': '{ duration: 8 s }',
    ...change,
  });

const KEPT = { 'shots/frost/record': 'fast-120' };
const RATE = 120_000 / 1001;

const frost = (text: string) => coreWith(text).figures(PLAN).get('frost')!;

describe('figures', () => {
  it('shutter and length are of the recorded rate, playing time and data of the clip', () => {
    const figures = frost(plan());
    expect(figures.shutterAngleDeg).toBeCloseTo((360 * RATE) / 240, 9);
    expect(figures.recordedS).toBe(8);
    expect(figures.playingS).toBeCloseTo((8 * RATE) / 25, 9);
    // 120 Mb/s of a clip that plays 4.8 times as long.
    expect(figures.recordedBytes).toBeCloseTo((((8 * RATE) / 25) * 120e6) / 8, 3);
    expect(figures.frameBytes).toBeCloseTo(120e6 / 25 / 8, 9);
  });

  it('a mode that keeps its rate plays in real time', () => {
    const figures = frost(plan(KEPT));
    expect(figures.notKnown.playingS).toBe('the clip plays in real time');
    expect(figures.recordedBytes).toBe(120e6);
    expect(figures.frameBytes).toBeCloseTo(120e6 / RATE / 8, 6);
  });

  it('both record a crop of the sensor', () => {
    // 36 mm over 1.5.
    for (const text of [plan(), plan(KEPT)])
      expect(frost(text).magnification).toBeCloseTo(24 / 60, 9);
  });
});

describe('the edit', () => {
  const cutOf = (change: Readonly<Record<string, string>>) =>
    coreWith(plan(change)).editFigures(PLAN)!.cuts[0]!;

  it('a conformed clip is slow at 100%', () => {
    expect(cutOf({ edit: cuts('duration: 4 s') })).toMatchObject({
      slowestSpeedWithoutRepeats: 1,
      sourceS: 4,
      uncoveredFrames: 0,
    });
  });

  it('a kept rate is slowed in the edit', () => {
    const cut = cutOf({ ...KEPT, edit: cuts('duration: 4 s, speed: 25 %') });
    expect(cut.slowestSpeedWithoutRepeats).toBeCloseTo(25 / RATE, 9);
    expect(cut).toMatchObject({ sourceS: 1, uncoveredFrames: 0 });
  });

  it('a conformed clip slowed again repeats frames, and is said to be slow already', () => {
    const text = plan({ edit: cuts('duration: 4 s, speed: 50 %') });
    const [found] = findingsOf(text).filter(({ rule }) => rule === 'slower-than-recorded');
    expect(found?.why).toMatch(/^Its clip plays at 25 fps, already slowed from 119\.88 fps/);
  });

  it('a cut longer than the clip lengthens the take by real time', () => {
    // 50 s of the clip are 50 × 25 / 119.88 = 10.43 s of milk.
    const core = coreWith(plan({ edit: cuts('from: 0 s, duration: 50 s') }));
    const [found] = core.findings(PLAN).filter(({ rule }) => rule === 'cut-outruns-clips');
    expect(found?.what).toContain('but its clip plays 38.4 s');
    expect(core.fixesOf(found!).map(({ title }) => title)).toContainEqual(
      expect.stringContaining('Lengthen each take of frost to 11 s'),
    );
  });
});

describe('a smaller mode', () => {
  const UHD = { 'deliver/resolution': '3840 x 2160', 'shots/skin/record': 'large-25' };
  const LARGE = {
    [`${MODES}/large-25`]:
      '{ resolution: 3840 x 2160, rate: 25 fps, bitrate: 100 Mb/s, area: 36 x 20.25 mm }',
  };
  const found = (edit: string) =>
    findingsOf(plan({ ...LARGE, ...UHD, edit })).filter(
      ({ rule, shot }) => rule === 'smaller-than-delivery' && shot === 'frost',
    );

  it('is an error where no cut says that it is meant', () => {
    expect(found(cuts('duration: 4 s')).map(({ severity }) => severity)).toEqual(['error']);
  });

  it('is a note with the enlargement where its cut does', () => {
    const [one, ...others] = found(cuts('duration: 4 s, reframe: 1.2x'));
    expect(others).toEqual([]);
    // 3840 over 1920, and 1.2 times that.
    expect(one).toMatchObject({ severity: 'note', numbers: { enlarged: 2.4 } });
    expect(one?.why).toBe('`one` enlarges it 2.4x, so fine detail is softer.');
  });

  it('can be said to be meant by a fix, which leaves the note and says what it costs', () => {
    const text = plan({ ...LARGE, ...UHD, edit: cuts('duration: 4 s') });
    const core = coreWith(text);
    const [one] = core.findings(PLAN).filter(({ rule }) => rule === 'smaller-than-delivery');
    const fix = core.fixesOf(one!).find(({ title }) => title.includes('reframe: 1x'));
    expect(fix?.title).toBe('Enlarge it on purpose in one: `reframe: 1x`');
    expect(fix?.sideEffects).toContain('enlarged 2x, so fine detail is softer');
    const mended = applied(text, fix!.edits);
    judgeFix(text, core.findings(PLAN), one!, fix!);
    const after = findingsOf(mended).filter(({ rule }) => rule === 'smaller-than-delivery');
    expect(after).toMatchObject([{ severity: 'note', numbers: { enlarged: 2 } }]);
  });

  it('is an error again where another cut of it says nothing', () => {
    const two = `{ cuts: { one: { shot: frost, duration: 1 s, reframe: 1x }, two: { shot: frost, duration: 1 s } } }`;
    expect(found(two).map(({ severity }) => severity)).toEqual(['error']);
  });
});

describe('clips', () => {
  const ask = (rate: number, takeS: number): ClipAsk => ({
    ...{ size: null, codec: null, bitsPerS: null, shutterS: null, iso: null, whiteBalance: null },
    rate: rate === 25 ? rational(25) : rational(120_000, 1001),
    takeS,
  });
  const clip = (durationS: number): ClipFacts => ({
    ...{ bytes: 1, size: { width: 1920, height: 1080 }, rotation: 0, codec: 'h264', bitsPerS: 1 },
    ...{ shutterS: null, iso: null, whiteBalance: null, created: null },
    rate: { kind: 'constant', rate: rational(25) },
    durationS,
  });

  it('25 fps are right where the body conforms', () => {
    expect(differences(ask(25, 38.36), clip(38.4))).toEqual([]);
  });

  it('25 fps are lost frames where it keeps its rate', () => {
    expect(differences(ask(119.88, 8), clip(9))).toMatchObject([{ of: 'rate', lost: true }]);
  });

  it('and none are lost where the body slowed a clip that it should have kept', () => {
    expect(differences(ask(119.88, 8), clip(38.4))).toMatchObject([
      { of: 'rate', isConformed: true, lost: false },
    ]);
  });

  it('a plan asks for the rate that the clip plays at', () => {
    const text = `${plan()}\nclips:\n  frost: [{ file: a.mp4 }]\n`;
    const reading = { state: 'read', facts: clip(38.4) } as const;
    const told = (plain: string) =>
      coreWith(plain)
        .checkClips(PLAN, new Map([['a.mp4', reading]]))
        .map(({ what }) => what)
        .join();
    expect(told(text)).not.toContain('119.88');
    const kept = {
      state: 'read',
      facts: { ...clip(8), rate: { kind: 'constant', rate: rational(120_000, 1001) } },
    } as const;
    expect(
      coreWith(text)
        .checkClips(PLAN, new Map([['a.mp4', kept]]))
        .map(({ what, why }) => `${what} ${why}`)
        .join(),
    ).toContain('kept at 119.88 fps by the body, not slowed to 25 fps');
    expect(told(text.replace('record: slow-25', 'record: fast-120'))).toContain(
      'slowed to 25 fps by the body, not kept at 119.88 fps',
    );
  });
});
