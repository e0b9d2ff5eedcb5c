/** A mirror with relief needs depth for both: its tilt may use only what the relief leaves. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

type Change = Readonly<Record<string, string | null>>;

const polished = (depth: string, more: Change = {}): string =>
  changed(EXAMPLE_PLAN, {
    'subjects/frost-plate': `{ kind: solid, size: 200 x 150 mm, depth: ${depth}, finish: mirror, reflectance: 60 % }`,
    ...more,
  });

const figuresOf = (text: string) => coreWith(text).figures(PLAN).get('frost')!;

describe('the tilt window of a mirror with relief', () => {
  it('ends where the tilt and the relief together need the depth of field', () => {
    // By hand: a frame 60 mm wide is 33.75 mm high at 16:9, so t tilts 33.75 mm · tan t out of the plane.
    for (const relief of [0, 0.4]) {
      const { usableDepthMm, tiltWindowDeg } = figuresOf(polished(`${relief} mm`));
      const allowed = Math.atan(((usableDepthMm as number) - relief) / 33.75);
      const [, greatest] = tiltWindowDeg as readonly [number, number];
      expect(greatest, `${relief} mm`).toBeCloseTo((allowed * 180) / Math.PI, 2);
    }
  });

  it('is shut where the relief alone needs all of it', () => {
    const [found] = findingsOf(polished('5 mm')).filter(({ rule }) => rule === 'lens-reflected');
    expect(found?.what).toMatch(/^No tilt works: .* depth of field allows only 0°\.$/);
  });

  it('is as wide as without relief in a stack, which takes the relief frame by frame', () => {
    const stack = { 'shots/frost/stack': '{ with: ring }', 'shots/frost/record': null };
    const window = (depth: string) => figuresOf(polished(depth, stack)).tiltWindowDeg;
    expect(window('0 mm')).toBeDefined();
    expect(window('2 mm')).toEqual(window('0 mm'));
  });

  it('is what the price of tilting counts with', () => {
    const text = polished('0.4 mm', { 'shots/frost/aperture': 'f/22' });
    const core = coreWith(text);
    const found = core.findings(PLAN).find(({ rule }) => rule === 'lens-reflected')!;
    const [fix] = core.fixesOf(found);
    const [, tilt, uses, of] = /Tilt ([\d.]+)° \(uses ([\d.]+) of the ([\d.]+) mm/.exec(
      fix!.title,
    )!;
    expect(Number(uses)).toBeCloseTo(33.75 * Math.tan((Number(tilt) * Math.PI) / 180) + 0.4, 1);
    expect(Number(of)).toBeCloseTo(figuresOf(text).usableDepthMm as number, 0);
  });
});
