/** What was really shot, beside what was planned. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { withEdit } from '../support/edits.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const CLIPS = `clips:
  frost:
    - { file: a.mp4, verdict: reject, set: { aperture: f/5.6, iso: 2500 } }
    - { file: b.mp4, verdict: keep, used: 12 to 18 s, set: { aperture: f/16 } }
    - { take: 3, note: lamp moved }
`;
const planned = (takes: number): string =>
  changed(EXAMPLE_PLAN, { 'shots/frost/take': `{ duration: 20 s, count: ${takes} }` });

const hoverOn = (text: string, word: string): string => {
  const line = text.split('\n').findIndex((one) => one.includes(word));
  const character = text.split('\n')[line]!.indexOf(word) + 1;
  return coreWith(text).hover(PLAN, { line, character })?.markdown ?? '';
};

/** Depth and exposure as the lens over the shot says them. */
const lens = (text: string) =>
  /DOF ([\d.]+ mm) .*needs ([\d.]+ mm)\)? · ([^(·]+?) (?:\(|·)/.exec(
    coreWith(text).lensWords(PLAN, 'frost') ?? '',
  );

describe('takes', () => {
  it('are counted over the shot, on the sheet and for the plan', () => {
    const core = coreWith(planned(4) + CLIPS);
    expect(core.lensWords(PLAN, 'frost')).toMatch(/ · 4 planned, 1 kept, 3 to go$/);
    expect(core.lensWords(PLAN, 'skin')).not.toContain('kept');
    const shot = core.sheet(PLAN).shots.find(({ name }) => name === 'frost');
    expect(shot?.clips[0]).toBe('4 planned, 1 kept, 3 to go');
    expect(shot?.clips[2]).toMatch(/^b\.mp4: keep, 12 to 18 s, Shot at f\/16/);
    expect(shot?.clips[3]).toBe('take 3: not judged, lamp moved');
    // `skin` plans one take and has none.
    expect(core.state(PLAN).takesToGo).toBe(4);
    expect(coreWith(planned(1) + CLIPS).lensWords(PLAN, 'frost')).toMatch(/ · 1 planned, 1 kept$/);
    expect(coreWith(EXAMPLE_PLAN).state(PLAN)).not.toHaveProperty('takesToGo');
  });

  it('have the figures of a shot that is planned as they were set', () => {
    const text = planned(4) + CLIPS;
    const same = lens(
      changed(text, { 'shots/frost/aperture': 'f/5.6', 'shots/frost/iso': '2500' }),
    );
    const words = hoverOn(text, 'a.mp4');
    const plan = /aperture: (f\/[\d.]+)/.exec(
      EXAMPLE_PLAN.slice(EXAMPLE_PLAN.indexOf('\n  frost:')),
    )?.[1];
    expect(same).not.toBeNull();
    expect(words).toContain(`Shot at f/5.6, planned ${plan}; ISO 2500, planned ISO `);
    expect(words).toContain(`depth ${same?.[1]} of ${same?.[2]}, ${same?.[3]}.`);
    expect(hoverOn(text, 'f/5.6')).toContain('Shot at f/5.6');
  });

  it('say nothing of settings that are as planned', () => {
    const text = `${changed(planned(4), { 'shots/frost/aperture': 'f/16' })}${CLIPS}`;
    expect(hoverOn(text, 'b.mp4')).not.toContain('Shot at');
  });
});

describe('the best part of a clip', () => {
  const laid = (clips: string, cuts: readonly string[]) =>
    coreWith(`${withEdit(cuts, [])}${clips}`)
      .editFigures(PLAN)!
      .cuts.map(({ clipFile, sourceStartS }) => [clipFile, sourceStartS]);

  it('is where cuts begin, and the clips that have one come first', () => {
    const clips = `clips:
  frost:
    - { file: a.mp4, verdict: keep }
    - { file: b.mp4, verdict: keep, used: 8 to 12 s }
    - { file: c.mp4, verdict: keep, used: 5 to 8 s }
`;
    expect(
      laid(clips, [
        'one: { shot: frost, duration: 3 s }',
        'two: { shot: frost, duration: 1 s }',
        'three: { shot: frost, duration: 3 s }',
        'four: { shot: frost, duration: 2 s }',
      ]),
    ).toEqual([
      ['b.mp4', 8],
      ['b.mp4', 11],
      ['c.mp4', 5],
      ['a.mp4', 0],
    ]);
  });

  it('counts among kept takes only, where any is kept', () => {
    const clips = (second: string): string => `clips:
  frost:
    - { file: a.mp4, verdict: reject, used: 1 to 9 s }
    - { file: b.mp4, verdict: maybe, used: 2 to 9 s }
    - { file: c.mp4, verdict: ${second} }
    - { file: d.mp4, verdict: ${second}, used: 4 to 9 s }
    - { file: e.mp4, used: 5 to 9 s }
`;
    const cuts = ['one', 'two', 'three'].map((name) => `${name}: { shot: frost, duration: 3 s }`);
    expect(laid(clips('keep'), cuts)).toEqual([
      ['d.mp4', 4],
      ['c.mp4', 0],
      ['c.mp4', 3],
    ]);
    // Nothing is kept yet: what is marked comes first, in the order of the list.
    expect(laid(clips('reject'), cuts)).toEqual([
      ['b.mp4', 2],
      ['b.mp4', 5],
      ['e.mp4', 5],
    ]);
  });

  it('gives way to `from`, and to the end of the last clip', () => {
    const clips = 'clips: { frost: [{ file: b.mp4, used: 8 to 12 s }] }\n';
    expect(
      laid(clips, [
        'one: { shot: frost, from: 2 s, duration: 1 s }',
        'two: { shot: frost, duration: 4 s }',
      ]),
    ).toEqual([
      ['b.mp4', 2],
      ['b.mp4', 3],
    ]);
  });
});
