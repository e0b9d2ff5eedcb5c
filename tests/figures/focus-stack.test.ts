/** Stacks and scales: what they follow from, what is not known of them, and how they are printed. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { documentOf, drawing, pageOf } from '../report/support/sheets.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const stacked = (stack: string, more: Readonly<Record<string, string | null>> = {}): string =>
  changed(EXAMPLE_PLAN, {
    'subjects/frost-plate/depth': '12 mm',
    'shots/frost/iso': 'auto',
    'shots/frost/stack': stack,
    'preflight/once/stack-ends-checked': 'open',
    ...more,
  });

const figures = (text: string) => coreWith(text).figures(PLAN).get('frost')!;
const sheetOf = (text: string) => coreWith(text).sheet(PLAN, { isWrittenOn: true }).shots[0]!;

describe('a stack', () => {
  it('of stills uses the whole sensor; of video the recorded area', () => {
    const stills = figures(stacked('{ with: rail, settle: 2 s }'));
    expect(stills.fieldMm).toEqual([expect.closeTo(60, 6), expect.closeTo((60 * 4024) / 6048, 6)]);
    const video = figures(stacked('{ with: rail, settle: 2 s, mode: video }'));
    expect(video.fieldMm).toEqual([expect.closeTo(60, 6), expect.closeTo((60 * 20.25) / 36, 6)]);
  });

  it('keeps the exposure of one frame', () => {
    const stack = figures(stacked('{ with: rail, settle: 2 s }'));
    const without = figures(changed(EXAMPLE_PLAN, { 'shots/frost/iso': 'auto' }));
    expect(stack.isoNeeded).toBe(without.isoNeeded);
    expect(stack.effectiveFNumber).toBe(without.effectiveFNumber);
  });

  it('has as many frames as are written', () => {
    const found = figures(stacked('{ with: rail, frames: 30, settle: 2 s }'));
    expect(found.stackFrames).toBe(30);
    expect(found.stackTravelMm).toBeCloseTo(29 * (found.stackStepMm as number), 9);
  });

  it('needs its settling time, and the depth of its subject', () => {
    const found = figures(stacked('{ with: rail }', { 'subjects/frost-plate/depth': null }));
    expect(found.notKnown.stackTimeS).toMatch(/`depth` of frost-plate/);
    expect(found.notKnown.stackTimeS).toMatch(/`settle` of frost's stack/);
    expect(figures(EXAMPLE_PLAN).notKnown.stackFrames).toBe('the shot has no focus stack');
  });

  it('by ring goes no nearer than infinity, and at 1:1 away from the turning point', () => {
    // The lens alone at 1:1: the thin-lens distance f·(2 + m + 1/m) is least there, but f shortens.
    const close = figures(stacked('{ with: ring, settle: 2 s }', { 'shots/frost/field': '36 mm' }));
    expect(close.stackTravelMm).toBeGreaterThanOrEqual(12);
    expect(close.stackDepthMm).toBeGreaterThanOrEqual(12);
  });

  it('tells step and frames in the hover, and its wait on the sheet', () => {
    const text = stacked('{ with: rail, settle: 2 s }');
    const line = text.split('\n').findIndex((it) => it.includes('with: rail'));
    const character = text.split('\n')[line]!.indexOf('rail');
    const { markdown } = coreWith(text).hover(PLAN, { line, character })!;
    const frames = figures(text).stackFrames;
    expect(markdown).toContain(`**${frames}**`);
    expect(markdown).toMatch(/\(1 − overlap\)/);
    const { settings } = sheetOf(text);
    const tile = settings.find(({ key, value }) => key === 'stack' && value !== 'stills');
    expect(tile).toMatchObject({ value: `${frames} frames` });
    expect(tile?.note).toMatch(/by rail, wait 2 s before each/);
  });
});

describe('the table of a stack', () => {
  const text = stacked('{ with: rail, settle: 2 s }', { 'shots/frost/aperture': 'f/2.8' });

  it('has every frame of a short one, with its rail', () => {
    const short = stacked('{ with: rail, frames: 5, settle: 2 s }');
    const step = figures(short).stackStepMm as number;
    const rows = sheetOf(short).focus!.table.rows;
    expect(rows.map(([frame]) => frame)).toEqual(['1', '2', '3', '4', '5']);
    for (const [index, [, at]] of rows.entries())
      expect(Number.parseFloat(String(at))).toBeCloseTo(index * step, 1);
  });

  it('is folded where it is long, and keeps the last frame', () => {
    const { table, words } = sheetOf(text).focus!;
    const frames = figures(text).stackFrames as number;
    expect(frames).toBeGreaterThan(24);
    expect(table.rows.length).toBeLessThanOrEqual(24);
    expect(table.rows.at(-1)![0]).toBe(String(frames));
    expect(words).toMatch(/one frame in 2/);
    expect(words).toContain(`\`frost-${frames}\``);
  });

  it('goes with a scale that is as long on paper as on the rail', () => {
    const scale = drawing(
      documentOf(pageOf(coreWith(text))),
      'frost',
      'Scale for the rail, actual size',
    );
    const paperMm = Number.parseFloat(scale.svg.getAttribute('width')!);
    const [, , units] = scale.svg.getAttribute('viewBox')!.split(' ').map(Number);
    expect(paperMm / units!).toBeCloseTo(scale.mmPerUnit, 6);
    const step = figures(text).stackStepMm as number;
    const marks = scale.all('[data-frame]');
    const at = (mark: Element): number => Number(mark.getAttribute('x1'));
    const frame = (mark: Element): number => Number(mark.getAttribute('data-frame'));
    expect(marks.length).toBeGreaterThan(3);
    for (const mark of marks)
      expect((at(mark) - at(marks[0]!)) * scale.mmPerUnit).toBeCloseTo((frame(mark) - 1) * step, 2);
    const bar = scale.all('[data-scale-bar-mm]')[0]!;
    const long = Number(bar.getAttribute('x2')) - Number(bar.getAttribute('x1'));
    expect(long * scale.mmPerUnit).toBeCloseTo(50, 2);
  });
});

describe('the scale of a focus pull', () => {
  const pulled = (move: string): string =>
    changed(EXAMPLE_PLAN, {
      'circle-of-confusion': '0.03 mm',
      'shots/frost/iso': 'auto',
      'shots/frost/move': move,
      'preflight/once/focus-ends-marked': 'open',
    });
  const PULL = '{ kind: focus-pull, from: 0.38 m, to: 0.43 m, duration: 10 s }';

  it('goes from end to end in steps of the depth of field', () => {
    const { table } = sheetOf(pulled(PULL)).focus!;
    const at = table.rows.map((row) => Number.parseFloat(String(row[2])));
    expect(at[0]).toBeCloseTo(380, 3);
    expect(at.at(-1)).toBeCloseTo(430, 3);
    const widths = table.rows.map((row) => Number.parseFloat(String(row[3])));
    for (const [index, place] of at.slice(0, -2).entries()) {
      // Ray's close-up form, with the frame 36 mm wide on the sensor.
      const m = 36 / widths[index]!;
      const depth = (2 * 0.03 * 8 * (1 + m)) / m ** 2;
      expect(at[index + 1]! - place).toBeGreaterThan(0.96 * depth);
      expect(at[index + 1]! - place).toBeLessThan(1.04 * depth);
    }
  });

  it('is the same marks backwards, end for end', () => {
    const back = sheetOf(pulled(PULL.replace(/0\.38 m, to: 0\.43/, '0.43 m, to: 0.38')));
    const places = back.focus!.table.rows.map((row) => Number.parseFloat(String(row[2])));
    expect([places[0], places.at(-1)]).toEqual([430, 380]);
    expect(places).toEqual([...places].sort((a, b) => b - a));
  });

  it('breathes by the change of its field, and moves the corners', () => {
    const found = figures(pulled(PULL));
    const [[from], [to]] = found.pullFieldsMm as [[number, number], [number, number]];
    expect(found.pullBreathing).toBeCloseTo(to / from - 1, 9);
    // Half the frame's diagonal grows from one end to the other in 10 s.
    const half = (width: number): number => (width * Math.hypot(1, 20.25 / 36)) / 2;
    expect(found.subjectSpeedMmPerS).toBeCloseTo((half(to) - half(from)) / 10, 9);
  });

  it('is told where the edit has no pixels to even it out, and fits a larger mode', () => {
    const told = (text: string) => findingsOf(text).filter(({ rule }) => rule === 'focus-breathes');
    const text = pulled(PULL);
    const [found, ...more] = told(text);
    expect(more).toEqual([]);
    expect(found?.severity).toBe('note');
    expect(found?.numbers).toMatchObject({ breathing: figures(text).pullBreathing, headroom: 1 });
    const { start } = found!.range;
    expect(text.split('\n')[start.line]!.trim()).toBe(`move: ${PULL}`);
    // 2880 of 1920 pixels even out half again as much; the pull changes a third at most.
    const large =
      '{ resolution: 2880 x 1620, rate: 25 fps, bitrate: 60 Mb/s, area: 36 x 20.25 mm }';
    const modes = { 'kit/bodies/body-a/recording-modes/large-25': large };
    expect(told(changed(text, { ...modes, 'shots/frost/record': 'large-25' }))).toEqual([]);
    expect(told(pulled(PULL.replace('0.43 m', '0.382 m')))).toEqual([]);
  });

  it('too quick for its breathing is motion blur, at its duration', () => {
    const text = pulled(PULL.replace('10 s', '0.5 s'));
    const [found] = findingsOf(text).filter(({ rule }) => rule === 'motion-blur');
    const { line, character } = found!.range.start;
    expect(text.split('\n')[line]!.slice(character)).toMatch(/^0\.5 s/);
    expect(findingsOf(pulled(PULL)).map(({ rule }) => rule)).not.toContain('motion-blur');
  });

  it('is none at infinity', () => {
    expect(sheetOf(pulled('{ kind: focus-pull, from: infinity, to: closest }')).focus).toBeNull();
  });
});
