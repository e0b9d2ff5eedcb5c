import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coveredTiltsRad } from '../../shared/mirror/covered-tilts.ts';
import { filmSurface } from '../../shared/mirror/film-surface.ts';
import { coversFrame } from '../../shared/mirror/patch.ts';
import type { Source } from '../../shared/mirror/source.ts';

const degrees = (rad: number): number => (rad * 180) / Math.PI;

describe('coveredTiltsRad', () => {
  it('lies around half the angle at which the light stands', () => {
    const source: Source = {
      face: { shape: 'rectangle', widthMm: 600, heightMm: 400 },
      distanceMm: 500,
      upRad: (26 * Math.PI) / 180,
      acrossRad: 0,
    };
    const view = { widthMm: 24, heightMm: 13.5, pupilDistanceMm: 480, pupilMm: 10 };
    const tilts = coveredTiltsRad(view, source, 'level');
    expect(tilts).not.toBeNull();
    expect(degrees(tilts!.leastRad)).toBeLessThan(13);
    expect(degrees(tilts!.greatestRad)).toBeGreaterThan(13);
  });

  it('is where the exact test of the whole patch says so, to both sides', () => {
    const scene = fc.record({
      widthMm: fc.double({ min: 8, max: 60, noNaN: true }),
      pupilDistanceMm: fc.double({ min: 150, max: 900, noNaN: true }),
      pupilMm: fc.double({ min: 0, max: 30, noNaN: true }),
      lightMm: fc.double({ min: 60, max: 800, noNaN: true }),
      distanceMm: fc.double({ min: 150, max: 1200, noNaN: true }),
      up: fc.double({ min: 6, max: 60, noNaN: true }),
    });
    fc.assert(
      fc.property(scene, ({ widthMm, pupilDistanceMm, pupilMm, lightMm, distanceMm, up }) => {
        const view = { widthMm, heightMm: (widthMm * 9) / 16, pupilDistanceMm, pupilMm };
        const source: Source = {
          face: { shape: 'rectangle', widthMm: lightMm, heightMm: lightMm * 0.7 },
          distanceMm,
          upRad: (up * Math.PI) / 180,
          acrossRad: 0,
        };
        const covers = (tilt: number) => coversFrame(view, filmSurface(tilt), source);
        const tilts = coveredTiltsRad(view, source, 'level');
        if (!tilts) return !covers((up * Math.PI) / 360);
        const step = 1e-4;
        const [least, most] = [tilts.leastRad + step, tilts.greatestRad - step];
        const inside = covers(least) && covers(most);
        const below = tilts.leastRad === 0 || !covers(tilts.leastRad - step);
        const above = tilts.greatestRad >= Math.PI / 3 || !covers(tilts.greatestRad + step);
        return tilts.greatestRad - tilts.leastRad < 2 * step || (inside && below && above);
      }),
      { numRuns: 500 },
    );
  });
});
