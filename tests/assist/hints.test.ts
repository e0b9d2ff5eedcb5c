/** What stands beside a shot's settings, where, and what is left alone. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { BENCH } from './support/bench.ts';

const WHOLE = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };

/** Lines that have a hint, up to where it stands, with its label. */
function hinted(text: string, range = WHOLE): string[] {
  const lines = text.split('\n');
  return coreWith(text)
    .hints(PLAN, range)
    .map(({ position, label }) => {
      const line = lines[position.line]!;
      const rest = line.slice(position.character);
      expect(rest.trim()).toMatch(/^$|^[#,}]/);
      return `${line.slice(0, position.character).trim()} « ${label}`;
    });
}

afterEach(() => vi.restoreAllMocks());

describe('beside the settings of a shot', () => {
  it('stand what they come to', () => {
    const text = BENCH.replace('ring: infinity', 'magnification: 0.25x').replace(
      'iso: 800',
      'iso: 6400',
    );
    expect(hinted(text)).toEqual([
      'magnification: 0.25x « field 144 × 81 mm',
      expect.stringMatching(/^aperture: f\/16 « f\/\d+ · DOF \S+ mm \(\S+ to \S+\)$/),
      expect.stringMatching(/^iso: 6400 « \S+ stops? (over|under) \(.* to .*\)$/),
      'field: 72 mm « 0.5x',
      expect.stringMatching(
        /^aperture: f\/16 « f\/42 \(33 to 42\) · DOF \S+ mm( \(\S+ to \S+\))?$/,
      ),
      expect.stringMatching(/^iso: auto « needs ISO \d+ \(\d+ to \d+\)$/),
    ]);
  });

  it('stand beside a ring setting as magnification and field', () => {
    const [closest] = hinted(BENCH.replace('ring: infinity', 'ring: closest'));
    // Twice 0.3x; 36 mm / 0.6 and 20.25 mm / 0.6 = 33.75 mm.
    expect(closest).toMatch(/^ring: closest « 0\.6x · field 60 × 33\.[78] mm$/);
  });

  // Common practice: behind a 2x converter f/16 works as f/32. At infinity the field has no end.
  it('stand beside the aperture alone where the ring is at infinity', () => {
    expect(hinted(BENCH)[0]).toMatch(/^aperture: f\/16 « f\/32 effective · DOF endless$/);
  });

  // Common practice: 1/100 s at ISO 1600 exposes as 1/50 s at ISO 800.
  it('say the same of the same exposure', () => {
    const iso = (text: string) =>
      hinted(text)
        .find((hint) => hint.startsWith('iso: '))
        ?.split('« ')[1];
    const other = BENCH.replace('1/50 s\n    iso: 800', '1/100 s\n    iso: 1600');
    expect(iso(BENCH)).toMatch(/ under\b/);
    expect(iso(other)).toBe(iso(BENCH));
  });

  it('leave out the f-number where it works as marked', () => {
    const text = BENCH.replace('rig: doubled\n    ring', 'rig: plain\n    ring');
    expect(hinted(text).find((hint) => hint.startsWith('aperture'))).not.toContain('effective');
  });

  it('say the depth in the numbers of the finding about it', () => {
    const text = BENCH.replace('f/16\n    shutter: 1/60', 'f/4\n    shutter: 1/60');
    const finding = coreWith(text)
      .findings(PLAN)
      .find(({ rule }) => rule === 'depth-short');
    const [, there, needed] = finding?.what.match(/is (\S+ mm); .* needs (\S+ mm)/) ?? [];
    expect(there).toBeDefined();
    const hints = hinted(text).filter((hint) => hint.startsWith('aperture: f/4'));
    expect(hints).toEqual([expect.stringContaining(`DOF ${there}`)]);
    expect(needed).toBeDefined();
  });

  it('say the depth needed where the aperture works as marked', () => {
    const text = BENCH.replace('rig: doubled\n    ring', 'rig: plain\n    ring');
    expect(hinted(text)[0]).toMatch(/^aperture: f\/16 « DOF endless, needs 2 mm$/);
  });

  it('are short, and say each value with its unit', () => {
    const texts = ['f/4', 'f/11', 'f/32'].map((stop) => BENCH.replaceAll('f/16', stop));
    for (const hint of texts.flatMap((text) => hinted(text)).map((one) => one.split('« ')[1]!)) {
      expect(hint.length).toBeLessThanOrEqual(40);
      expect(hint.split(/ · |, /).length).toBeLessThanOrEqual(2);
      expect(hint).not.toMatch(/DOF [\d.]+( \(|,|$| ·)/);
    }
  });
});

describe('on one line', () => {
  it('stand behind a comment that is in one column with another, and before one alone', () => {
    const alone = BENCH.replace('field: 72 mm', 'field: 72 mm    # as in the test');
    expect(hinted(alone)).toContain('field: 72 mm « 0.5x');
    const column = alone.replace('tilt: 4 deg', 'tilt: 4 deg     # as in the test');
    expect(hinted(column)).toContain('field: 72 mm    # as in the test « 0.5x');
    const quoted = alone.replace('tilt: 4 deg', 'about: "a thing # no comment"');
    expect(hinted(quoted)).toContain('field: 72 mm « 0.5x');
  });

  // An editor cuts off what is over 43 characters on a line (its setting, as it comes).
  it('are left out where they would be cut off', () => {
    const shot =
      'rig: plain, field: 130 mm, aperture: f/8, shutter: 1/50 s, iso: 800, record: full, subject: frost, light: [lamp]';
    const text = `${BENCH.slice(0, BENCH.indexOf('shots:'))}shots: { one: { ${shot} } }\n`;
    const labels = hinted(text).map((one) => one.split('« ')[1]!);
    expect(labels.length).toBeGreaterThan(1);
    expect(labels.join('').length).toBeLessThanOrEqual(43);
  });
});

describe('nothing stands', () => {
  it('beside what is not known', () => {
    const text = BENCH.replace('      focal-length: 200 mm\n', '').replace(
      '    illuminance: 4000 lx\n',
      '',
    );
    expect(hinted(text)).toEqual([]);
  });

  it('beside what is broken', () => {
    const hints = hinted(
      BENCH.replace('aperture: f/16\n    shutter: 1/60', 'aperture: 16\n    shutter: 1/60'),
    );
    expect(hints.filter((hint) => hint.startsWith('aperture: 16'))).toEqual([]);
    expect(hints).toContain('field: 72 mm « 0.5x');
  });

  it('outside of the range, whose shots alone are looked at', () => {
    const asked = vi.spyOn(Analysis.prototype, 'uncertain');
    const line = BENCH.split('\n').findIndex((one) => one.includes('72 mm'));
    const range = { start: { line, character: 0 }, end: { line, character: 99 } };
    expect(hinted(BENCH, range)).toEqual(['field: 72 mm « 0.5x']);
    expect(asked.mock.calls.map(([, shot]) => shot)).toEqual(['shots/near']);
  });

  it('in a file without shots, or none at all', () => {
    expect(hinted('')).toEqual([]);
    expect(hinted(BENCH.slice(0, BENCH.indexOf('shots:')))).toEqual([]);
    expect(coreWith(BENCH).hints('file:///w/none.shootplan.yaml', WHOLE)).toEqual([]);
  });
});

it('find shots that stand on one line', () => {
  const text = `${BENCH.slice(0, BENCH.indexOf('shots:'))}shots: { one: { rig: doubled, field: 72 mm, record: full } }\n`;
  expect(hinted(text)).toEqual(['shots: { one: { rig: doubled, field: 72 mm « 0.5x']);
});
