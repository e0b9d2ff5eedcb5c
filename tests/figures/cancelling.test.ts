/**
 * What cancels is not asked for: a value that the exposure does not follow, whatever it is, may be
 * left out. A reading through the rig is an exposure that was found right with all its glass in.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';

type Change = Readonly<Record<string, string | null>>;

/** Through a converter, a tube and two filters, one of the rig and one of the shot. */
const BENCH = changed(EXAMPLE_PLAN, {
  'kit/filters': '{ clear: { loss: 0.1 stops }, grey: { loss: 2 stops } }',
  'rigs/stacked/filters': '[clear]',
  'shots/frost/rig': 'stacked',
  'shots/frost/field': '18 mm',
  'shots/frost/filters': '[grey]',
});

const errorIn = (text: string): number | null =>
  coreWith(text).figures(PLAN).get('frost')!.exposureErrorStops as number | null;

const asked = (text: string): readonly string[] =>
  coreWith(text)
    .findings(PLAN)
    .filter(({ rule }) => rule === 'not-known')
    .map(({ what, why }) => `${what} ${why}`)
    .filter((said) => said.includes('exposure'));

/** Values of the plan that an exposure may follow, each with another one to tell. */
const VALUES: Readonly<Record<string, readonly [string, string]>> = {
  'kit/lenses/macro-100/loss': ['0.3 stops', '0.7 stops'],
  'kit/converters/twice/loss': ['0.1 stops', '0.4 stops'],
  'kit/filters/clear/loss': ['0.1 stops', '0.2 stops'],
  'kit/filters/grey/loss': ['2 stops', '3 stops'],
  'lights/panel/emitting-size': ['300 x 200 mm', '150 x 150 mm'],
  'shots/frost/field': ['18 mm', '17 mm'],
};

const SUBJECTS = [
  '{ kind: solid, size: 200 x 150 mm, depth: 1.5 mm, finish: matt }',
  '{ kind: film, orientation: upright, size: 160 x 100 mm, holder: wicking-frame, lifetime: 40 s }',
];

const BRIGHT = [
  'illuminance: 900 lx',
  'luminance: 9000 cd/m2',
  ...['meter', 'bare-lens', 'bare-lens, distance: 900 mm', 'this-rig'].map(
    (through) => `reading: { aperture: f/8, shutter: 1/50 s, iso: 400, through: ${through} }`,
  ),
];

const RELIGHTS = [
  null,
  '{ panel: { dimmed: 1 stop } }',
  '{ panel: { at: { distance: 400 mm, elevation: 40 deg } } }',
  '{ panel: { at: { distance: 250 mm, elevation: 40 deg } } }',
  '{ panel: { reading: { aperture: f/11, shutter: 1/50 s, iso: 800, through: bare-lens } } }',
  '{ panel: { reading: { aperture: f/11, shutter: 1/50 s, iso: 800, through: this-rig } } }',
];

describe('what cancels', () => {
  it('is not asked for, in any plan', () => {
    const cancelled = new Map<string, number>();
    const plan = fc.record({
      subject: fc.constantFrom(...SUBJECTS),
      bright: fc.constantFrom(...BRIGHT),
      relight: fc.constantFrom(...RELIGHTS),
    });
    fc.assert(
      fc.property(plan, ({ subject, bright, relight }) => {
        const text = changed(BENCH, {
          'subjects/frost-plate': subject,
          // Where a film shows the light.
          ...(subject.includes('film') && { 'shots/frost/tilt': '20 deg' }),
          'lights/panel': `{ kind: led, emitting-size: 300 x 200 mm, at: { distance: 400 mm, elevation: 40 deg }, ${bright} }`,
          ...(relight !== null && { 'shots/frost/relight': relight }),
        });
        const error = errorIn(text);
        expect(error).not.toBeNull();
        const idle = Object.entries(VALUES).filter(([at, [, other]]) => {
          const moved = errorIn(changed(text, { [at]: other }));
          return Math.abs(moved! - error!) < 1e-9;
        });
        for (const [at] of idle) {
          const without = changed(text, { [at]: null });
          expect(errorIn(without), `${at} is asked for`).toBeCloseTo(error!, 9);
          cancelled.set(at, (cancelled.get(at) ?? 0) + 1);
        }
        const none = changed(text, Object.fromEntries(idle.map(([at]) => [at, null])));
        expect(errorIn(none)).toBeCloseTo(error!, 9);
        if (!idle.some(([at]) => at.endsWith('field'))) expect(asked(none)).toEqual([]);
      }),
      { numRuns: manyRuns(24) },
    );
    expect([...cancelled.keys()].sort()).toEqual(Object.keys(VALUES).sort());
  }, 3_600_000);

  it.each([
    ['nothing missing', {}],
    ['a lens without its loss', { 'kit/lenses/macro-100/loss': null }],
    ['a converter without its loss', { 'kit/converters/twice/loss': null }],
    ['filters without theirs', { 'kit/filters/clear/loss': null, 'kit/filters/grey/loss': null }],
    ['a lens without its closest', { 'kit/lenses/macro-100/closest': null }],
    ['no field', { 'shots/frost/field': null }],
  ] as const)('of a reading through the rig itself: %s', (_, change: Change) => {
    const reading = '{ aperture: f/11, shutter: 1/25 s, iso: 800, through: this-rig }';
    const text = changed(BENCH, { ...change, 'lights/panel/reading': reading });
    // f/8 for f/11, 1/50 s for 1/25 s, ISO 1250 for 800: by the marks alone.
    const byHand = 2 * Math.log2(11 / 8) - 1 + Math.log2(1250 / 800);
    expect(errorIn(text)).toBeCloseTo(byHand, 9);
  });

  it('of a reading through the rig leaves a finding to be found without it', () => {
    const text = changed(BENCH, {
      'shots/frost/field': null,
      'lights/panel/reading': '{ aperture: f/8, shutter: 1/50 s, iso: 200, through: this-rig }',
    });
    const found = coreWith(text)
      .findings(PLAN)
      .find(({ rule }) => rule === 'exposure-off')!;
    expect(found.what).toBe('The shot is 2.6 stops overexposed.');
    expect(found.why).toBe('Correct exposure needs about ISO 200.');
  });

  it('of a reading through the bare lens is the lens’s own loss, and nothing else', () => {
    const reading = '{ aperture: f/8, shutter: 1/50 s, iso: 400, through: bare-lens }';
    const text = changed(BENCH, { 'lights/panel/reading': reading });
    const whole = errorIn(text)!;
    expect(errorIn(changed(text, { 'kit/lenses/macro-100/loss': null }))).toBeCloseTo(whole, 9);
    // What a converter's glass takes is assumed, and is not the lens's own.
    expect(errorIn(changed(text, { 'kit/converters/twice/loss': null }))).toBeCloseTo(
      whole - (0.2 - 0.1),
      9,
    );
    expect(errorIn(changed(text, { 'kit/filters/grey/loss': null }))).toBeNull();
  });

  it('does not of a reading through the rig at another magnification', () => {
    const reading = (more: string) =>
      `{ aperture: f/8, shutter: 1/50 s, iso: 400, through: this-rig${more} }`;
    const text = (more: string) => changed(BENCH, { 'lights/panel/reading': reading(more) });
    const here = errorIn(text(''))!;
    const closer = errorIn(text(', magnification: 1.5x'));
    expect(closer).not.toBeNull();
    expect(closer! - here).toBeLessThan(-0.3);
    const same = changed(text(', magnification: 2x'), {
      'shots/frost/field': null,
      'shots/frost/magnification': '2x',
      'kit/lenses/macro-100/loss': null,
    });
    expect(errorIn(same)).toBeCloseTo(here, 9);
  });
});
