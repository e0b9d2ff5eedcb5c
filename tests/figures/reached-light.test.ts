/** A film is exposed by what it shows: where no light reaches the frame, no setting is advised. */
import { describe, expect, it } from 'vitest';
import { messageOf } from '../../shared/api/located.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const skin = (change: Readonly<Record<string, string | null>>) => {
  const core = coreWith(changed(EXAMPLE_PLAN, change));
  const figures = core.figures(PLAN).get('skin') as unknown as {
    exposureErrorStops: number | null;
    isoNeeded: number | null;
    blackShare: number;
    dimShare: number;
    notKnown: Readonly<Record<string, string>>;
  };
  const found = core.findings(PLAN).filter(({ shot }) => shot === 'skin');
  return { figures, found, rules: found.map(({ rule }) => rule) };
};

const BEHIND = { 'lights/strip/at': '{ distance: 300 mm, elevation: 14 deg, azimuth: 180 deg }' };
const ELSEWHERE = { 'lights/strip/at': '{ distance: 300 mm, elevation: 60 deg }' };
const NO_LIGHT = 'no light of the shot reaches the frame, so nothing exposes it';

describe('a light that the mirror shows nowhere', () => {
  it.each([
    ['behind the film', BEHIND],
    ['where the film does not look', ELSEWHERE],
  ])('%s exposes nothing', (_, at) => {
    for (const iso of ['100', '1600', 'auto']) {
      const { figures, found, rules } = skin({ ...at, 'shots/skin/iso': iso });
      expect(figures.blackShare).toBe(1);
      expect(figures.exposureErrorStops).toBeNull();
      expect(figures.isoNeeded).toBeNull();
      expect(figures.notKnown.isoNeeded).toBe(NO_LIGHT);
      expect(rules).toContain('source-too-small');
      expect(rules).not.toContain('exposure-off');
      expect(rules).not.toContain('iso-out-of-range');
      const texts = found.map(messageOf).join(' ');
      expect(texts).toContain('100% of the frame is black');
      expect(texts).not.toMatch(/correct exposure/i);
    }
  });

  it('does so by a reading of the film too: what is read is not in the picture', () => {
    const reading = '{ aperture: f/8, shutter: 1/50 s, iso: 400, through: this-rig }';
    const { figures } = skin({ ...BEHIND, 'lights/strip/reading': reading });
    expect(figures.exposureErrorStops).toBeNull();
  });

  it('leaves the exposure to another light that it shows', () => {
    const other =
      '\n    kind: led\n    emitting-size: 240 x 120 mm\n    at: { distance: 300 mm, elevation: 14 deg, azimuth: 180 deg }\n    colour-temperature: 5600 K\n    modulation: none\n    supply: low-voltage\n    luminance: 90000 cd/m2';
    const alone = skin({}).figures;
    const { figures } = skin({ 'lights/back': other, 'shots/skin/light': '[strip, back]' });
    expect(figures.exposureErrorStops).toBeCloseTo(alone.exposureErrorStops ?? Number.NaN, 9);
  });
});

describe('a light that the mirror shows', () => {
  it('in part exposes that part', () => {
    const high = skin({ 'lights/strip/at': '{ distance: 300 mm, elevation: 19 deg }' });
    expect(high.figures.blackShare).toBeGreaterThan(0.1);
    expect(high.figures.blackShare).toBeLessThan(0.95);
    expect(high.figures.exposureErrorStops).toBeCloseTo(
      skin({}).figures.exposureErrorStops ?? Number.NaN,
      9,
    );
  });

  it('is taken at its word where it is not said where it is', () => {
    const { figures } = skin({ 'lights/strip/at': null });
    expect(figures.exposureErrorStops).not.toBeNull();
  });
});

describe('what the finding says', () => {
  it('is black, dims, or both', () => {
    const said = (at: string, more = {}) =>
      skin({ 'lights/strip/at': at, ...more })
        .found.filter(({ rule }) => rule === 'source-too-small')
        .map(messageOf)
        .join();
    expect(said('{ distance: 300 mm, elevation: 19 deg }')).toMatch(
      /% of the frame is black at the bottom, .*% dim: the reflection of strip doesn't cover it/,
    );
    // Just off its place: each point of the edge is still seen lit by part of the pupil.
    const dims = { 'lights/strip/emitting-size': '240 x 50 mm' };
    expect(said('{ distance: 300 mm, elevation: 9 deg }', dims)).toMatch(
      /^[\d.]+% of the frame is dim.*: strip fills only part of the aperture\./,
    );
  });
});
