/** Figures of the edit, against sums done by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FAST_SETTING, MUSIC, withEdit } from '../support/edits.ts';
import { coreWith, PLAN } from '../support/plans.ts';

const editOf = (...args: Parameters<typeof withEdit>) => {
  const edit = coreWith(withEdit(...args)).editFigures(PLAN);
  if (!edit) throw new Error('no edit');
  return edit;
};

describe('where cuts stand', () => {
  it('is by whole frames of the delivered film, whatever the lengths are written in', () => {
    const { cuts, totalFrames, totalS, totalTimecode, framesPerBeat } = editOf([
      'one: { shot: frost, duration: 2 bars }',
      'two: { shot: skin, duration: 1 beat }',
      'three: { shot: frost, duration: 12 frames }',
      'four: { shot: skin, duration: 1.5 s }',
    ]);
    // 8 beats of 2/3 s are 133 1/3 frames, 9 are 150; 1.5 s are 37.5 frames.
    expect(cuts.map(({ startFrame }) => startFrame)).toEqual([0, 133, 150, 162]);
    expect(cuts.map(({ durationFrames }) => durationFrames)).toEqual([133, 17, 12, 38]);
    expect(cuts.map(({ startTimecode }) => startTimecode)).toEqual([
      '00:00:00:00',
      '00:00:05:08',
      '00:00:06:00',
      '00:00:06:12',
    ]);
    expect({ totalFrames, totalS, totalTimecode }).toEqual({
      totalFrames: 200,
      totalS: 8,
      totalTimecode: '00:00:08:00',
    });
    expect(framesPerBeat).toBeCloseTo(50 / 3, 12);
  });

  it('is not known behind a length that is not, and says for what', () => {
    const edit = editOf(['one: { shot: frost, duration: 2 bars }', 'two: { shot: skin }'], []);
    expect(edit.cuts[0]).toMatchObject({ startFrame: null, durationS: null });
    expect(edit.cuts[0]?.notKnown.durationS).toBe('the edit has no music');
    expect(edit.notKnown.totalFrames).toBe('the edit has no music');
  });

  it.each([
    ['deliver/rate', null, 'needs `rate` of deliver'],
    ['edit/music', '{ first-beat: 0 s }', 'needs `tempo` of the music'],
    ['edit/music', '{ tempo: 90 bpm }', 'needs `bar` of the music'],
  ])('waits for %s', (path, value, why) => {
    const music = path === 'edit/music' ? [`music: ${value}`] : [MUSIC];
    const change = path === 'edit/music' ? {} : { [path]: value };
    const edit = editOf(['one: { shot: frost, duration: 1 bar }'], music, change);
    expect(edit.totalFrames).toBeNull();
    expect(edit.notKnown.totalFrames).toBe(why);
  });

  it('an invalid value is told by its own finding, and no figure of it is made up', () => {
    const edit = editOf(['one: { shot: frost, duration: soon }'], []);
    expect(edit.notKnown.totalFrames).toBe('it depends on an invalid entry');
  });

  it('there is no edit where there are no cuts', () => {
    expect(coreWith(withEdit([])).editFigures(PLAN)).toBeNull();
  });
});

describe('speed', () => {
  it('50 fps shown at 25 repeats no frame down to half, in every part of a ramp', () => {
    const { cuts } = editOf(
      [
        'half: { shot: frost, duration: 4 s, speed: 50 % }',
        'ramp: { shot: frost, duration: 4 s, speed: 100 to 25 % }',
      ],
      [],
      {
        'kit/bodies/body-a/recording-modes/full-50': FAST_SETTING,
        'shots/frost/record': 'full-50',
      },
    );
    expect(cuts[0]).toMatchObject({
      slowestSpeedWithoutRepeats: 0.5,
      repeatsFrames: false,
      sourceS: 2,
    });
    // (1 + 0.25)/2 · 4 s
    expect(cuts[1]).toMatchObject({ speed: [1, 0.25], repeatsFrames: true, sourceS: 2.5 });
  });

  it('29.97 shown at 30 is called free of repeats at real time: a frame in a thousand', () => {
    const { cuts } = editOf(['one: { shot: frost, duration: 4 s }'], [], {
      'deliver/rate': '30 fps',
      'kit/bodies/body-a/recording-modes/full-25/rate': '29.97 fps',
      'shots/frost/shutter': '1/60 s',
    });
    expect(cuts[0]?.slowestSpeedWithoutRepeats).toBeCloseTo(1.001, 9);
    expect(cuts[0]?.repeatsFrames).toBe(false);
  });
});

describe('clips', () => {
  const placed = (edit: ReturnType<typeof editOf>) =>
    edit.cuts.map(({ clip, sourceStartS, sourceEndS }) => [clip, sourceStartS, sourceEndS]);

  it('are laid one after the other, with room for their dissolves, and then into the next take', () => {
    const edit = editOf(
      [
        'one: { shot: skin, duration: 8 s }',
        'two: { shot: frost, duration: 4 s, transition: dissolve 10 frames }',
        'three: { shot: skin, duration: 8 s, transition: dissolve 10 frames }',
        'four: { shot: skin, duration: 8 s }',
      ],
      [],
      { 'shots/skin/take': '{ duration: 20 s, count: 2, settle: 5 s }' },
    );
    // Half of 10 frames at 25 fps is 0.2 s: `one` uses up to 8.2 s, `three` begins 0.2 s behind it.
    expect(placed(edit)).toEqual([
      [1, 0, 8],
      [1, 0.2, 4.2],
      [1, 8.4, 16.4],
      [2, 0, 8],
    ]);
    expect(edit.cuts.every(({ uncoveredFrames }) => uncoveredFrames === 0)).toBe(true);
  });

  it('that say where they begin are taken at their word', () => {
    const edit = editOf(['one: { shot: skin, from: 18 s, duration: 4 s }'], []);
    expect(placed(edit)).toEqual([[1, 18, 22]]);
    expect(edit.cuts[0]?.uncoveredFrames).toBe(50);
  });

  it('that ramp run out when the integral of their speed does', () => {
    // 100 to 300 % over 12 s: 1·t + 2·t²/24 = 20 at t = (√(1 + 4·20/12) − 1)·6 = 10.614 s.
    const edit = editOf(['one: { shot: skin, duration: 12 s, speed: 100 to 300 % }'], []);
    const covered = 6 * (Math.sqrt(1 + 80 / 12) - 1);
    expect(edit.cuts[0]?.uncoveredFrames).toBe(Math.ceil(25 * (12 - covered) - 0.5));
  });

  it('that are kept are the ones used, by their files', () => {
    const text = `${withEdit(['one: { shot: skin, duration: 12 s }', 'two: { shot: skin, duration: 12 s }'], [])}
clips:
  skin:
    - { file: media/0001.mp4, verdict: reject }
    - { file: media/0002.mp4, verdict: keep }
    - { file: media/0003.mp4, verdict: maybe }
    - { file: media/0004.mp4, verdict: keep }
`;
    const edit = coreWith(text).editFigures(PLAN)!;
    expect(edit.cuts.map(({ clipFile }) => clipFile)).toEqual(['media/0002.mp4', 'media/0004.mp4']);
  });

  it('that are all rejected leave every frame without a picture', () => {
    const text = `${withEdit(['one: { shot: skin, duration: 2 s }'], [])}
clips: { skin: [{ file: a.mp4, verdict: reject }] }
`;
    const core = coreWith(text);
    expect(core.editFigures(PLAN)?.cuts[0]?.uncoveredFrames).toBe(50);
    expect(core.findings(PLAN).find(({ rule }) => rule === 'cut-outruns-clips')?.what).toBe(
      'one has no clip: every clip of skin is rejected.',
    );
  });

  it('of a shot that plans no take are not known to be long enough, nor too short', () => {
    const edit = editOf(['one: { shot: frost, from: 3 s, duration: 400 s }'], [], {
      'shots/frost/iso': '1250',
    });
    expect(edit.cuts[0]?.uncoveredFrames).toBeGreaterThan(0);
    const unplanned = coreWith(
      withEdit(['one: { shot: frost, from: 3 s, duration: 400 s }'], []).replace(
        /\n {4}take: \{ duration: 20 s \}/,
        '',
      ),
    ).editFigures(PLAN)!;
    expect(unplanned.cuts[0]).toMatchObject({ sourceStartS: 3, uncoveredFrames: null });
    expect(unplanned.cuts[0]?.notKnown.uncoveredFrames).toBe(
      'the length of a take of frost is unknown',
    );
  });
});

describe('handles', () => {
  it('are half the dissolve at the speed that the clip has there', () => {
    const { cuts } = editOf(
      [
        'one: { shot: skin, from: 10 s, duration: 9.9 s }',
        'two: { shot: frost, from: 0.5 s, duration: 4 s, speed: 200 to 100 %, transition: dissolve 12 frames }',
      ],
      [],
    );
    // 20 s − 19.9 s are 2 frames; 0.5 s at double speed are 6.
    expect(cuts[0]).toMatchObject({ handleAfterNeededFrames: 6, handleAfterThereFrames: 2 });
    expect(cuts[1]).toMatchObject({ handleBeforeNeededFrames: 6, handleBeforeThereFrames: 6 });
  });

  it('are never negative, and neither is anything else that is counted', () => {
    const cut = fc.record({
      shot: fc.constantFrom('frost', 'skin'),
      from: fc.option(fc.integer({ min: 0, max: 30 })),
      duration: fc.constantFrom('1 s', '2 bars', '3 beats', '7 frames', '31 s', '0.3 s'),
      speed: fc.constantFrom('100 %', '50 %', '20 to 400 %', '33.3333333 %', '400 %'),
      join: fc.constantFrom('cut', 'dissolve 12 frames', 'dissolve 3 beats', 'dissolve 40 s'),
    });
    fc.assert(
      fc.property(
        fc.array(cut, { minLength: 1, maxLength: 8 }),
        fc.constantFrom('25 fps', '29.97 fps', '23.976 fps', '12.5 fps'),
        fc.constantFrom('90 bpm', '117.55 bpm', '91.123456789 bpm'),
        (cuts, rate, tempo) => {
          const core = coreWith(
            withEdit(
              cuts.map(({ shot, from, duration, speed, join }, index) => {
                const start = from === null ? '' : `from: ${from} s, `;
                return `c${index}: { shot: ${shot}, ${start}duration: ${duration}, speed: ${speed}, join: ${join} }`;
              }),
              [`music: { tempo: ${tempo}, first-beat: 0.4 s, bar: 4 beats }`],
              { 'deliver/rate': rate },
            ),
          );
          const edit = core.editFigures(PLAN)!;
          expect(core.findings(PLAN).filter(({ rule }) => rule === 'rule-failed')).toEqual([]);
          let next = 0;
          for (const one of edit.cuts) {
            expect(one.startFrame).toBe(next);
            next += one.durationFrames!;
            for (const [name, value] of Object.entries(one))
              if (/Frames$|S$/.test(name) && name !== 'fromBeatFrames' && typeof value === 'number')
                expect(value, `${name} of ${one.cut}`).toBeGreaterThanOrEqual(0);
            expect(one.uncoveredFrames).toBeLessThanOrEqual(one.durationFrames!);
            expect(Math.abs(one.fromBeatFrames!)).toBeLessThanOrEqual(
              Math.max(edit.framesPerBeat! / 2, 0.4 * edit.rateFps!) + 0.5,
            );
          }
          expect(edit.totalFrames).toBe(next);
        },
      ),
      { numRuns: 60 },
    );
  });
});
