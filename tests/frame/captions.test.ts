/** What is said of a traced frame, and what is drawn where little is known. */
import { describe, expect, it } from 'vitest';
import { captionOf } from '../../shared/frame/caption.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from '../support/plans.ts';
import { laidOut, luminanceAt, traced } from './support/traced.ts';

const SIZE = { width: 32, height: 18 };

type Change = Parameters<typeof changed>[1];

function drawn(shot: string, change: Change) {
  const it = traced(laidOut(changed(EXAMPLE_PLAN, change), shot)!, SIZE)!;
  const all = Array.from({ length: SIZE.width * SIZE.height }, (_, i) =>
    luminanceAt(it.picture, i),
  );
  return { ...it, all, caption: captionOf(it, it.picture).join('\n') };
}

describe('white', () => {
  const BURNT = { 'lights/strip/luminance': '2000000 cd/m2', 'shots/skin/tilt': '7 deg' };

  it('is where a usual body clips, and the caption says that it is assumed', () => {
    expect(drawn('skin', BURNT).caption).toContain(
      'White is burnt out: more than 3.5 stops over mid-grey, assumed of body-a (2.5 to 6).',
    );
  });

  it('is where the plan says that the body clips', () => {
    const { caption, clipAt } = drawn('skin', {
      ...BURNT,
      'kit/bodies/body-a/highlight-latitude': '5 stops',
    });
    expect(caption).toContain('more than 5 stops over mid-grey, which body-a records.');
    expect(clipAt).toBeCloseTo(0.18 * 32, 10);
  });

  it('is not spoken of where there is none', () => {
    expect(drawn('frost', {}).caption).not.toContain('White');
  });
});

describe('a light behind', () => {
  const CLEAR =
    '{ kind: solid, size: 200 x 150 mm, depth: 1 mm, finish: matt, transmittance: 70 % }';
  const behind = (distance: string, azimuth: string, more: string): Change => ({
    'subjects/frost-plate': CLEAR,
    'lights/panel': `{ kind: led, emitting-size: 300 x 200 mm, at: { distance: ${distance}, azimuth: ${azimuth} }, colour-temperature: 5600 K, ${more} }`,
  });
  const LUMINANCE = 'luminance: 3000 cd/m2';
  const READ = 'reading: { aperture: f/8, shutter: 1/50 s, iso: 1250, through: this-rig }';

  it('that fills the frame leaves no background to speak of', () => {
    const { caption, all } = drawn('frost', behind('100 mm', '180 deg', LUMINANCE));
    expect(caption).toContain('frost-plate is drawn as a flat clear plate.');
    expect(caption).not.toContain('background');
    expect(Math.min(...all)).toBeGreaterThan(0);
  });

  it('outside the field is black: nothing says what the subject scatters', () => {
    const { caption, all } = drawn('frost', behind('400 mm', '110 deg', LUMINANCE));
    expect(caption).toContain('panel is not drawn: panel is behind, outside the field');
    expect(Math.max(...all)).toBe(0);
  });

  it('outside the field is as bright as it was read through the rig', () => {
    const { all } = drawn('frost', behind('400 mm', '110 deg', READ));
    // The same settings as the shot's: mid-grey, on all of the plate.
    for (const value of all) expect(value).toBeCloseTo(0.18, 6);
  });

  it('is not drawn where crossed polarisers let none of it through', () => {
    const { caption, all } = drawn('frost', {
      ...behind('100 mm', '180 deg', `${LUMINANCE}, polarised: crossed`),
      'kit/filters': '{ pol: { kind: polariser, loss: 1.6 stops } }',
      'shots/frost/filters': '[pol]',
    });
    expect(caption).toContain('panel is not drawn: crossed polarisers pass no light through');
    expect(caption).not.toContain('as if it were right');
    expect(Math.max(...all)).toBe(0);
  });
});

describe('a lamp in gloss', () => {
  const POLISHED: Change = {
    'subjects/frost-plate/finish': 'gloss',
    'subjects/frost-plate/reflectance': '60 %',
  };

  it('may show in relief, which is not drawn', () => {
    const { caption } = drawn('frost', POLISHED);
    expect(caption).toMatch(/The reflection of panel lies above the frame, 5(\.\d)? stops over/);
    expect(caption).toContain('Relief may show the lights anywhere; no relief is drawn.');
  });

  it('is told as under mid-grey where it is darker', () => {
    // A tenth of the ISO and a fifteenth of the reflectance are log2(150) = 7.2 stops less.
    const told = (change: Change): number => {
      const { caption } = drawn('frost', { ...POLISHED, ...change });
      const [, stops, side] = /frame, ([\d.]+) stops? (over|under) mid-grey/.exec(caption)!;
      return side === 'under' ? -Number(stops) : Number(stops);
    };
    const dim = { 'subjects/frost-plate/reflectance': '4 %', 'shots/frost/iso': '125' };
    expect(told({}) - told(dim)).toBeCloseTo(Math.log2(150), 0);
    expect(told(dim)).toBeLessThan(0);
  });

  it('lies in a flat face where the caption says', () => {
    const { caption, picture } = drawn('frost', {
      ...POLISHED,
      'subjects/frost-plate/depth': '0 mm',
      'lights/panel/emitting-size': '20 x 20 mm',
      'lights/panel/at': '{ distance: 400 mm, elevation: 5 deg, azimuth: -7 deg }',
    });
    expect(caption).toContain('lies at the upper left of the frame');
    expect(caption).not.toContain('elief');
    const lit = [...picture.lit.keys()].filter((index) => picture.lit[index]! > 0.5);
    expect(lit.length).toBeGreaterThan(0);
    for (const index of lit) {
      expect(index % SIZE.width).toBeLessThan(SIZE.width / 2);
      expect(Math.floor(index / SIZE.width)).toBeLessThan(SIZE.height / 2);
    }
  });

  it('whose place is not known: what it needs', () => {
    const { caption } = drawn('frost', { ...POLISHED, 'subjects/frost-plate/sag': '0.5 mm' });
    expect(caption).toContain('is not known: the face of frost-plate is not flat.');
  });

  it('and each lamp in polish, has a place of its own', () => {
    const two: Change = {
      'subjects/frost-plate':
        '{ kind: solid, size: 200 x 150 mm, depth: 0 mm, finish: mirror, reflectance: 60 % }',
      'lights/strip/at': '{ distance: 400 mm, azimuth: 12 deg }',
      'lights/strip/emitting-size': '20 x 20 mm',
      'shots/frost/light': '[panel, strip]',
    };
    const { caption } = drawn('frost', two);
    expect(caption).toContain('The reflection of panel lies above the frame.');
    expect(caption).toContain('The reflection of strip lies on the right of the frame.');
  });
});
