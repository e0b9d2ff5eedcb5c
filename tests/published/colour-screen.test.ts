/** Screen colours and adaptation against an independent library, colorjs.io. */
import Color from 'colorjs.io';
import { describe, expect, it } from 'vitest';
import { adapted } from '../../shared/film/adaptation.ts';
import { prepareSwatches } from '../../shared/film/colour.ts';
import { SCREEN_WHITE, screenColour } from '../../shared/film/screen.ts';
import { colourSequence } from '../../shared/film/sequence.ts';

const D50_WHITE = { x: 0.3457 / 0.3585, y: 1, z: (1 - 0.3457 - 0.3585) / 0.3585 };

describe('XYZ to sRGB', () => {
  // Two libraries, culori and colorjs.io, agree on it to 1e-16.
  it('(.051595, .067491, .041716) is #3a4f33', () => {
    expect(screenColour({ x: 0.051595, y: 0.067491, z: 0.041716 }).hex).toBe('#3a4f33');
  });

  it('white is #ffffff, nothing is #000000', () => {
    expect(screenColour(SCREEN_WHITE).hex).toBe('#ffffff');
    expect(screenColour({ x: 0, y: 0, z: 0 }).hex).toBe('#000000');
  });
});

describe('Bradford', () => {
  it('takes D50 to D65 as colorjs.io does', () => {
    for (const [x, y, z] of [
      [0.2, 0.3, 0.1],
      [0.4, 0.2, 0.5],
      [0.9, 1, 0.8],
    ] as const) {
      const ours = adapted({ x, y, z }, D50_WHITE, SCREEN_WHITE);
      const theirs = new Color('xyz-d50', [x, y, z]).to('xyz-d65').coords;
      [ours.x, ours.y, ours.z].forEach((value, i) => {
        expect(value).toBeCloseTo(theirs[i] as number, 4);
      });
    }
  });
});

describe('swatches of a film', () => {
  const swatches = prepareSwatches({ lightK: 5600, incidenceRad: 0.07 });
  const colours = colourSequence(swatches, 0, 1000, 101);

  it('are what colorjs.io makes of the same XYZ, by the same method (CSS Color 4)', () => {
    let outside = 0;
    for (const { xyz, screen } of colours) {
      const k = swatches.exposure;
      const exposed = { x: k * xyz.x, y: k * xyz.y, z: k * xyz.z };
      const { x, y, z } = adapted(exposed, swatches.balancedWhite, SCREEN_WHITE);
      const wide = new Color('xyz-d65', [x, y, z]);
      if (!wide.inGamut('srgb')) outside += 1;
      const theirs = wide.to('srgb').toGamut({ space: 'srgb', method: 'css' }).coords;
      [screen.red, screen.green, screen.blue].forEach((value, i) => {
        expect(Math.abs(value - (theirs[i] as number))).toBeLessThan(3 / 255);
      });
    }
    // The method is worth its keep: many a film's colour is more than a screen can show.
    expect(outside).toBeGreaterThan(10);
  });

  it('stay inside the screen', () => {
    for (const { screen } of colours)
      for (const part of [screen.red, screen.green, screen.blue]) {
        expect(part).toBeGreaterThanOrEqual(0);
        expect(part).toBeLessThanOrEqual(1);
      }
  });
});
