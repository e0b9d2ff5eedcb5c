/** What stands beside the cuts of an edit, and what a hover says of them. */
import { describe, expect, it } from 'vitest';
import { MUSIC, withEdit } from '../support/edits.ts';
import { coreWith, PLAN } from '../support/plans.ts';

const TEXT = withEdit([
  'one: { shot: skin, from: 2 s, duration: 2 bars }',
  'two: { shot: frost, duration: 3 beats, speed: 100 to 25 %, transition: dissolve 12 frames }',
]);
const LINES = TEXT.split('\n');

const at = (needle: string, within = needle) => {
  const line = LINES.findIndex((text) => text.includes(needle));
  return { line, character: LINES[line]!.indexOf(within) + 1 };
};

const hover = (needle: string, within?: string) =>
  coreWith(TEXT).hover(PLAN, at(needle, within))?.markdown ?? '';

describe('hints', () => {
  const hints = (from: number, to: number) =>
    coreWith(TEXT)
      .hints(PLAN, { start: { line: from, character: 0 }, end: { line: to, character: 0 } })
      .map(({ position, label }) => [
        LINES[position.line]!.slice(0, position.character).trim(),
        label,
      ]);
  const edit = LINES.indexOf('edit:');

  it('say where a cut begins, and what it uses of its clip', () => {
    // 8 beats of 16 2/3 frames are 133 1/3; 3 beats of 2/3 s at (1 + 0.25)/2 are 1.25 s.
    expect(hints(edit, LINES.length)).toEqual([
      ['one: { shot: skin, from: 2 s, duration: 2 bars', 'at 00:00:00:00 · 133 frames'],
      ['two: { shot: frost, duration: 3 beats', 'at 00:00:05:08 · 50 frames'],
      ['two: { shot: frost, duration: 3 beats, speed: 100 to 25 %', 'uses 1.25 s'],
    ]);
  });

  it('are only asked for where they are shown', () => {
    const second = at('two: {').line;
    expect(hints(second, second + 1)).toHaveLength(2);
    expect(hints(0, edit).filter(([, label]) => label?.startsWith('at '))).toEqual([]);
  });
});

describe('hovers', () => {
  it('on a value of a cut say what the cut comes to', () => {
    const text = hover('two: {', '100 to 25 %');
    expect(text).toContain('Begins: **00:00:05:08**');
    expect(text).toContain('| slowest without repeats | 100% |');
    expect(text).toContain('| clip used | take 1, 0.24 s to 1.49 s |');
    expect(text).toContain('| handle before | 6 frames, needs 6 |');
    expect(text).toContain('| not covered by a clip | none |');
    expect(text).toContain('Playback speed');
  });

  it('say that a clip is taken to be as long as its take is planned', () => {
    const text = `${TEXT}\nclips:\n  frost:\n    - { file: a.mp4, verdict: keep }\n`;
    const markdown = coreWith(text).hover(PLAN, at('two: {', '3 beats'))?.markdown;
    expect(markdown).toContain('| clip used | a.mp4, 0.24 s to 1.49 s |');
    expect(markdown).toContain(
      '| not covered by a clip | none, if the clip is as long as a take is planned |',
    );
  });

  it('on its name and on its shot say it too', () => {
    expect(hover('two: {')).toContain('**00:00:05:08**');
    const shot = hover('two: {', 'frost');
    expect(shot).toContain('frost');
    expect(shot).toContain('**00:00:05:08**');
  });

  it('on the music say how long a beat and a bar are', () => {
    const text = hover(MUSIC, '90 bpm');
    expect(text).toContain('A beat: **16.67 frames**');
    expect(text).toContain('| a bar | 66.67 frames |');
    expect(text).toContain('| the edit | 00:00:07:08, 183 frames |');
  });

  it('say what is not known, and why', () => {
    const text = withEdit(['one: { shot: skin, duration: 2 bars }'], []);
    const lines = text.split('\n');
    const line = lines.findIndex((one) => one.includes('one: {'));
    const markdown = coreWith(text).hover(PLAN, {
      line,
      character: lines[line]!.indexOf('2 bars') + 1,
    })?.markdown;
    expect(markdown).toContain('Unknown: begins, length');
    expect(markdown).toContain('The edit has no music.');
  });
});
