/** What hovers, hints and lenses say of how sure a figure is. */

import { describe, expect, it } from 'vitest';
import { LENS_LOSS } from '../../shared/assumptions/table.ts';
import { entryId } from '../support/entry-id.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { SHEET_PLAN, SURE } from '../support/sheet-plan.ts';
import { rowsOf } from './support/bench.ts';

/** The hover on the first place of `needle`, one character in. */
function hover(text: string, needle: string): string {
  const before = text.slice(0, text.indexOf(needle) + 1).split('\n');
  const at = { line: before.length - 1, character: before.at(-1)!.length };
  return coreWith(text).hover(PLAN, at)?.markdown ?? '';
}

/** "f/16 (13 to 19)" as its ends. */
function endsOf(words: string | undefined): readonly [number, number] {
  const [, low, high] = /\((\S+) to (\S+?)\)/.exec(words ?? '') ?? [];
  expect(high, words).toBeDefined();
  return [Number(low), Number(high)];
}

const GIVEN = changed(SHEET_PLAN, SURE);

describe('on a shot’s aperture', () => {
  const words = hover(SHEET_PLAN, 'f/11');
  const rows = rowsOf(words);

  it('a figure with width says its bounds, and its middle lies between them', () => {
    expect(rows.effective).toMatch(/^f\/\d+ \(\d+ to \d+\) at the sensor$/);
    const [low, high] = endsOf(rows.effective);
    const middle = Number(/^f\/(\d+)/.exec(rows.effective!)![1]);
    expect(low).toBeLessThan(middle);
    expect(high).toBeGreaterThan(middle);
  });

  // From memory, common practice: a lens's glass takes a tenth of a stop to half of one.
  it('the light that the glass takes lies between the ends of what is assumed of a lens', () => {
    expect(endsOf(rows['glass and filters'])).toEqual([LENS_LOSS.low, LENS_LOSS.high]);
    expect([LENS_LOSS.low, LENS_LOSS.high]).toEqual([0.1, 0.5]);
  });

  it('what nobody doubts has none', () => {
    expect(rows.marked).toBe('f/11');
  });

  it('says under the table what widens it most, and how to settle it', () => {
    expect(words).toMatch(
      /\nMost uncertain: `pupil-ratio` of `macro-90`\. It moves effective aperture, /,
    );
    expect(words).toContain(
      '\nAssumed: pupil ratio of `macro-90` 1 (0.6 to 1.4). Give `pupil-ratio`.\n',
    );
    expect(words).toContain(
      '\nAssumed: light loss of `macro-90` 0.3 stops (0.1 to 0.5). Give `loss` or `t-stop`.\n',
    );
    // Where an editor still shows it: before the formulas.
    expect(words.indexOf('Most uncertain: ')).toBeLessThan(words.indexOf('N_eff = '));
  });

  it('a value that is given narrows it and is assumed no more', () => {
    const given = hover(GIVEN, 'f/11');
    const [before, after] = [endsOf(rows.effective), endsOf(rowsOf(given).effective)];
    expect(after[1] - after[0]).toBeLessThan(before[1] - before[0]);
    expect(given).not.toContain('pupil ratio of');
    expect(given).not.toContain('light loss of');
    expect(rowsOf(given)['glass and filters']).toBe('0.3 stops more');
  });

  it('a value given as a range counts as an input, and not as assumed', () => {
    const rough = hover(changed(GIVEN, { 'kit/lenses/macro-90/loss': '0.2 to 0.6 stops' }), 'f/11');
    expect(endsOf(rowsOf(rough)['glass and filters'])).toEqual([0.2, 0.6]);
    expect(rough).toContain('`loss` of `macro-90`. It moves glass and filters.');
    expect(rough).not.toContain('Assumed: light loss');
  });
});

describe('on other settings', () => {
  it('the exposure is said by its sides', () => {
    const bright = rowsOf(hover(SHEET_PLAN.replace('iso: 400', 'iso: 1600'), '1600'));
    expect(bright.exposure).toMatch(/^\S+ stops over \(\S+ to \S+\)$/);
    const [low, high] = endsOf(bright.exposure);
    expect(low).toBeLessThan(high);
    const iso = Math.round(Number(rowsOf(hover(SHEET_PLAN, '400\n'))['ISO needed']!.split(' ')[0]));
    const right = rowsOf(
      hover(SHEET_PLAN.replace('iso: 400', `iso: ${iso}`), `${iso}\n    record`),
    );
    expect(right.exposure).toMatch(/\(\S+ under to \S+ over\)$/);
  });

  it('a speed written as a range reaches the blur: five times the low end is the high end', () => {
    const rows = rowsOf(hover(GIVEN, '1 to 5 mm/s'));
    const [low, high] = endsOf(rows['motion blur']);
    expect(high / low).toBeCloseTo(5, 0);
    expect(endsOf(rows['speed in the frame'])).toEqual([1, 5]);
  });

  it('a light that may flicker says that it may not', () => {
    const words = hover(SHEET_PLAN, '1/60 s');
    // At most 1/(2·f·t) of a lamp that pulses at 100 Hz: 60/200.
    expect(rowsOf(words)['flicker left']).toBe('30% at most (0 to 30)');
    expect(words).toContain('Assumed of `panel`: its light swings at twice the mains frequency');
    const steady = hover(changed(SHEET_PLAN, { 'lights/panel/modulation': 'none' }), '1/60 s');
    expect(rowsOf(steady)['flicker left']).toBe('none: no light flickers');
    expect(steady).not.toContain('Assumed');
  });

  it('a recording says which part of the sensor it was taken to record', () => {
    const words = hover(SHEET_PLAN, 'uhd-25\n    light');
    expect(words).toContain("Assumed of `uhd-25`: the sensor's full width");
    const cropped = SHEET_PLAN.replace(
      'rate: 25 fps }\n  lenses',
      'rate: 25 fps, crop: 1.2x }\n  lenses',
    );
    expect(cropped).not.toBe(SHEET_PLAN);
    expect(hover(cropped, 'uhd-25\n    light')).not.toContain('Assumed');
  });

  it('a shot’s name sums it up with its bounds', () => {
    const words = hover(SHEET_PLAN, 'globe:');
    expect(rowsOf(words).aperture).toMatch(/^f\/11, f\/\d+ effective \(\d+ to \d+\)$/);
    expect(rowsOf(words)['working distance']).toMatch(/^\d+ mm \(\d+ to \d+\)$/);
    expect(words).toMatch(
      /\nMost uncertain: .* Then: `flange-distance` of `body-a`\. It moves working distance/,
    );
  });
});

describe('on an entry', () => {
  it.each([
    ['macro-90:', 'light loss of `macro-90` 0.3 stops (0.1 to 0.5)', 'Give `loss` or `t-stop`.'],
    ['macro-90:', 'pupil ratio of `macro-90` 1 (0.6 to 1.4)', 'Give `pupil-ratio`.'],
    // Four times the diagonal of the body's sensor: a long lens has a small exit pupil.
    ['long-180:', 'pupil ratio of `long-180` 1 (0.4 to 1)', 'Give `pupil-ratio`.'],
    ['body-a:', 'flange distance of `body-a` 20 mm (16 to 47)', 'Give `flange-distance`.'],
    ['body-a:', 'of `uhd-25`: the sensor’s full width', 'Give `area` or `crop`.'],
    ['uhd-25:', 'of `uhd-25`: the sensor’s full width', 'Give `area` or `crop`.'],
    ['polariser:', 'light loss of `polariser` 1.6 stops (1.2 to 2)', 'Give `loss`.'],
    ['panel:', 'of `panel`: its light swings at twice', 'Give `modulation`.'],
    ['panel:', 'meter constant, C 250 (250 to 340)', 'with the meter.'],
  ])('%s lists what is assumed of it: %s', (name, assumed, settle) => {
    const line = hover(SHEET_PLAN, name)
      .split('\n')
      .find((one) => one.startsWith('Assumed') && one.includes(assumed.replace('’', "'")));
    expect(line).toBeDefined();
    expect(line).toContain(settle);
  });

  it('lists nothing that was given', () => {
    expect(hover(GIVEN, 'macro-90:')).not.toMatch(/Assumed: (light loss|pupil ratio)/);
    expect(
      hover(changed(SHEET_PLAN, { 'kit/lenses/macro-90/t-stop': '3.1' }), 'macro-90:'),
    ).not.toContain('light loss of');
    expect(hover(GIVEN, 'body-a:')).not.toContain('flange distance of');
  });

  it('a rough value says its range and its middle', () => {
    const text = changed(SHEET_PLAN, { 'kit/lenses/macro-90/length': '118 to 122 mm' });
    const words = hover(text, '118 to 122 mm');
    expect(words).toContain('**118 to 122 mm**');
    expect(words).toContain('Middle: 120 mm.');
    expect(hover(SHEET_PLAN, '120 mm')).not.toContain('Middle');
    expect(rowsOf(hover(text, 'macro-90:')).length).toBe('118 to 122 mm');
  });
});

describe('hints', () => {
  const whole = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } };
  const hintsOf = (text: string) => coreWith(text).hints(PLAN, whole);
  const labelled = (text: string, word: string) =>
    hintsOf(text).find(({ label }) => label.includes(word))!;

  it('have bounds where there is room, and never more than 40 characters', () => {
    for (const { label } of hintsOf(SHEET_PLAN))
      expect(label.length, label).toBeLessThanOrEqual(40);
    expect(labelled(SHEET_PLAN, 'f/').label).toMatch(
      /^f\/\d+( effective)? · DOF [\d.]+ mm \(\S+ to \S+\)$/,
    );
    expect(labelled(SHEET_PLAN, 'stops').label).toMatch(/^\S+ stops \w+ \(.* to .*\)$/);
  });

  it('have the bounds and what widens them most in the tooltip', () => {
    expect(labelled(SHEET_PLAN, 'f/').tooltip).toMatch(
      /Bounds: effective f-number \d+ to \d+; depth of field \S+ to \S+\. Most uncertain: `pupil-ratio` of `macro-90`\. It moves effective f-number and depth of field\.$/,
    );
  });

  it('narrow with what is given, and change at once with it', () => {
    const core = coreWith(SHEET_PLAN);
    const before = core.hints(PLAN, whole).find(({ label }) => label.startsWith('f/'))!;
    core.give(PLAN, GIVEN);
    const after = core.hints(PLAN, whole).find(({ label }) => label.startsWith('f/'))!;
    const [was, is] = [endsOf(before.label), endsOf(after.label)];
    expect(is[1] - is[0]).toBeLessThan(was[1] - was[0]);
    expect(after.label).toBe(labelled(GIVEN, 'f/').label);
  });
});

describe('the line over a shot', () => {
  it('has the bounds of depth and exposure, those of depth for longer', () => {
    const core = coreWith(SHEET_PLAN);
    expect(core.lensWords(PLAN, 'globe', new Set(['checks']))).toMatch(
      /^DOF \S+ mm \(\S+ to \S+\), needs \d+ mm · .* \(.* to .*\)$/,
    );
    expect(core.lensWords(PLAN, 'globe')).toMatch(
      /^DOF \S+ mm \(\S+ to \S+\), needs \d+ mm · [^()·]* · /,
    );
  });
});

describe('what an offered value comes to', () => {
  it('says its bounds when it is looked at', () => {
    const core = coreWith(SHEET_PLAN);
    const about = {
      kind: 'value',
      entry: entryId('shots/globe'),
      path: ['aperture'],
      text: 'f/16',
    } as const;
    const words = core.explain(PLAN, about) ?? '';
    expect(rowsOf(words).effective).toMatch(/^f\/\d+ \(\d+ to \d+\) at the sensor$/);
    expect(words).toContain('Most uncertain: ');
  });
});
