/**
 * Values as data sheets print them, with the fix that writes them as the language has them. The
 * spellings are common practice; `M67 x 0.75` is how ISO 261 writes a fine thread.
 */
import { expect, it } from 'vitest';
import { each } from '../support/each.ts';
import { applied, coreWith, PLAN } from '../support/plans.ts';

type Kind = 'body' | 'lens' | 'mode' | 'light';

const IN: Readonly<Record<Kind, (pair: string) => string>> = {
  body: (pair) => `kit:\n  bodies:\n    own:\n      sensor: 36 x 24 mm\n      ${pair}\n`,
  lens: (pair) => `kit:\n  lenses:\n    near:\n      focal-length: 90 mm\n      ${pair}\n`,
  mode: (pair) =>
    `kit:\n  bodies:\n    own:\n      recording-modes:\n        hd: { resolution: 1920 x 1080, rate: 25 fps, ${pair} }\n`,
  light: (pair) => `lights:\n  panel:\n    kind: led\n    ${pair}\n`,
};

const planWith = (kind: Kind, pair: string): string => `shootplan: 1\n${IN[kind](pair)}`;

const fixesFor = (text: string) => {
  const core = coreWith(text);
  return core
    .findings(PLAN)
    .filter(({ rule }) => rule !== 'unused-name')
    .flatMap((finding) => core.fixesOf(finding));
};

const LUX = 'illuminance: 2200 lx\n    illuminance-distance: 1 m';

const CERTAIN: readonly (readonly [Kind, written: string, fixed: string])[] = [
  ...['67', 'M67', '67mm thread', '67 mm filter', '\u00f867 mm', 'M67 x 0.75'].map(
    (thread) => ['lens', `filter-thread: ${thread}`, 'filter-thread: 67 mm'] as const,
  ),
  ...['100-25600', 'ISO 100 - 25600', '100 to 25600', '100\u201325,600', 'iso 100...25600'].map(
    (range) => ['body', `iso: ${range}`, 'iso: { lowest: 100, highest: 25600 }'] as const,
  ),
  // 1000 ms / 60
  ['body', 'readout: 1/60 s', 'readout: 16.7 ms'],
  ['body', 'readout: 1/125', 'readout: 8 ms'],
  ['lens', 'closest: 0.28 m', 'closest: { from-sensor: 0.28 m }'],
  ['lens', 'closest: 11 in', 'closest: { from-sensor: 11 in }'],
  ['lens', 'closest: 1:2', 'closest: { magnification: 0.5x }'],
  ['lens', 'closest: 0.5x', 'closest: { magnification: 0.5x }'],
  ['lens', 'closest: 0.28 m (1:1)', 'closest: { from-sensor: 0.28 m, magnification: 1x }'],
  ['lens', 'closest: 1:1 at 0.28 m', 'closest: { from-sensor: 0.28 m, magnification: 1x }'],
  ['lens', 'closest: 0.28 m / 0.92 ft', 'closest: { from-sensor: 0.28 m }'],
  ['lens', 't-stop: 3.4', 't-stop: T3.4'],
  ['lens', 't-stop: T/3.4', 't-stop: T3.4'],
  ['lens', 'aperture: 1:2.8-22', 'aperture: f/2.8 to 22'],
  ['lens', 'aperture: f/2.8-22', 'aperture: f/2.8 to 22'],
  ['lens', 'aperture: F2.8 - F22', 'aperture: f/2.8 to 22'],
  ['mode', 'crop: 1.5', 'crop: 1.5x'],
  ['mode', 'crop: 1.5 crop', 'crop: 1.5x'],
  ['mode', 'crop: none', 'crop: 1x'],
  ['light', 'illuminance: 2200 lux @ 1 m', LUX],
  ['light', 'illuminance: 2200 lx at 1 m', LUX],
  ['light', 'illuminance: 2200 lx (1m)', LUX],
  ['light', 'illuminance: 2,200 lux/1 m', LUX],
];

it('each is fixed by the only fix, which needs no choice and leaves nothing to find', () => {
  each(
    CERTAIN,
    ([kind, written, fixed]) => {
      const text = planWith(kind, written);
      const fixes = fixesFor(text);
      expect(fixes.map(({ sideEffects }) => sideEffects)).toEqual([undefined]);
      const mended = applied(text, fixes[0]!.edits);
      expect(mended).toBe(planWith(kind, fixed));
      expect(fixesFor(mended)).toEqual([]);
    },
    ([kind, written]) => `${kind}: ${written}`,
  );
});

it('the magnification on a line of its own moves to the closest focus', () => {
  const lens = (pairs: string) => planWith('lens', pairs);
  const moved = (pairs: string) => {
    const [fix, ...others] = fixesFor(lens(pairs));
    expect(fix?.title).toBe('Move it into `closest`');
    expect(fix?.sideEffects).toBeUndefined();
    expect(others.map(({ title }) => title)).toEqual(['Remove magnification']);
    return applied(lens(pairs), fix!.edits);
  };
  expect(moved('magnification: 0.24x')).toBe(lens('closest: { magnification: 0.24x }'));
  expect(moved('closest: { from-sensor: 1.4 m }\n      magnification: 0.24x')).toBe(
    lens('closest: { from-sensor: 1.4 m, magnification: 0.24x }'),
  );
  const twice = lens('closest: { magnification: 0.3x }\n      magnification: 0.24x');
  expect(fixesFor(twice).map(({ title }) => title)).toEqual(['Remove magnification']);
  const [said] = coreWith(twice).findings(PLAN);
  expect(said?.what).toBe('`magnification` is not a key of a lens; it belongs in `closest`.');
});

it('a distance that is given already stays, and the fix says so', () => {
  const text = planWith('light', 'illuminance: 2200 lx @ 1 m\n    illuminance-distance: 2 m');
  const [fix, ...others] = fixesFor(text);
  expect(others).toEqual([]);
  expect(fix!.sideEffects).toBe('what it says of `illuminance-distance` is lost');
  expect(applied(text, fix!.edits)).toContain(
    'illuminance: 2200 lx\n    illuminance-distance: 2 m',
  );
});

it('a format whose crop differs from maker to maker is a guess', () => {
  const fixes = fixesFor(planWith('mode', 'crop: APS-C'));
  expect(fixes.map(({ title }) => title)).toEqual(['Write 1.5x', 'Write 1.6x']);
  expect(fixes.every(({ sideEffects }) => sideEffects !== undefined)).toBe(true);
});

it('what no sheet has is answered as before', () => {
  each(
    [
      ['lens', 'filter-thread: wide'],
      ['lens', 'closest: near'],
      ['lens', 'closest: 0.28 m by hand'],
      ['mode', 'crop: some'],
      ['light', 'illuminance: 2200 lx @ noon'],
      ['light', `illuminance: ${'2'.repeat(90)} lx @ 1 m`],
    ] as const,
    ([kind, written]) => {
      const found = coreWith(planWith(kind, written)).findings(PLAN);
      expect(found.some(({ severity }) => severity === 'error')).toBe(true);
      expect(found.some(({ what }) => what.includes('as a data sheet prints it'))).toBe(false);
    },
    ([, written]) => written,
  );
});

// Common practice: no lamp's watts are its lux.
it('a unit of another quantity is not exchanged without being asked for', () => {
  const [fix] = fixesFor(planWith('light', 'illuminance: 60 W'));
  expect(fix!.sideEffects).toBe('a guess at what was meant');
  const [spelling] = fixesFor(planWith('light', 'illuminance: 60 lxx'));
  expect(spelling!.sideEffects).toBeUndefined();
});
