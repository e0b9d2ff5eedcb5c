/** Ways out of a reflection that burns out, each applied to the plan and judged by its text alone. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { judgeFix } from '../support/judged-fix.ts';
import { applied, changed, coreWith, PLAN } from '../support/plans.ts';

const RULE = 'highlight-clips';
const POLISHED = {
  'subjects/frost-plate/finish': 'gloss',
  'subjects/frost-plate/reflectance': '60 %',
  'kit/bodies/body-a/highlight-latitude': '4 stops',
};
/** A lamp on the mirror's own side, so that its image lies in the frame. */
const SHOWN = {
  'subjects/frost-plate/depth': '0 mm',
  'lights/panel/at': '{ distance: 400 mm, elevation: 16 deg }',
};

/** Far enough aside of the lens that something may stand between. */
const ASIDE = {
  'lights/panel/at': '{ distance: 400 mm, elevation: 60 deg }',
  'kit/bodies/body-a/highlight-latitude': '5 stops',
};

const WEAK =
  '{ kind: led, emitting-size: 300 x 300 mm, at: { distance: 900 mm, elevation: 60 deg }, modulation: none, supply: low-voltage, reading: { aperture: f/8, shutter: 1/50 s, iso: 25600, through: meter } }';

function ways(change: Readonly<Record<string, string>>, wanted: RegExp) {
  const text = changed(EXAMPLE_PLAN, { ...POLISHED, ...change });
  const core = coreWith(text);
  const before = core.findings(PLAN);
  const finding = before.find(({ rule }) => rule === RULE);
  const fix = finding && core.fixesOf(finding).find(({ title }) => wanted.test(title));
  if (finding && fix) judgeFix(text, before, finding, fix);
  return { finding, fix, after: fix && applied(text, fix.edits) };
}

describe('a diffuser between light and subject', () => {
  it('is smaller than one at the light, and written as the face that it is', () => {
    const { fix, after } = ways(ASIDE, /^Stand a \d+ × \d+ mm diffuser \d+ mm from the subject/);
    expect(fix?.sideEffects).toContain('read the light again');
    expect(after).toMatch(/panel: \{.*emitting-size: \d+ x \d+ mm/);
    const figures = coreWith(after!).figures(PLAN).get('frost')!;
    const was = coreWith(changed(EXAMPLE_PLAN, { ...POLISHED, ...ASIDE }))
      .figures(PLAN)
      .get('frost')!;
    expect(figures.highlightStops as number).toBeLessThan(was.highlightStops as number);
    expect(figures.exposureErrorStops as number).toBeCloseTo(was.exposureErrorStops as number, 0);
  });

  it('is not offered where it would stand before the lens', () => {
    const { finding, fix } = ways(SHOWN, /^Stand/);
    expect(finding).toBeDefined();
    expect(fix).toBeUndefined();
  });
});

it('a nearer light is offered of a shot that changes none yet, and of one that changes another', () => {
  const changes: readonly Readonly<Record<string, string>>[] = [
    {},
    {
      'lights/bulb': WEAK,
      'shots/frost/light': '[panel, bulb]',
      'shots/frost/relight': '{ bulb: { dimmed: 1 stop } }',
    },
    { 'shots/frost/relight': '{ panel: { polarised: none } }' },
  ];
  for (const change of changes) {
    const { fix } = ways({ ...ASIDE, ...change }, /^Move panel in to/);
    expect(fix, JSON.stringify(change)).toBeDefined();
  }
});

describe('a flat face', () => {
  it('is turned until it reflects past the frame', () => {
    const { finding, fix, after } = ways(SHOWN, /^Tilt the subject/);
    expect(finding?.why).toMatch(/It lies (at|on|in|all over) .*the frame\./);
    expect(fix?.title).toMatch(/°, so that panel reflects (above|below) the frame/);
    expect(coreWith(after!).figures(PLAN).get('frost')!.highlightShare).toBe(0);
  });

  it('that shows it past the frame has no finding', () => {
    expect(ways({ 'subjects/frost-plate/depth': '0 mm' }, /./).finding).toBeUndefined();
  });

  it('shows a second light where the brighter one lies outside', () => {
    const { finding } = ways(
      {
        'subjects/frost-plate/depth': '0 mm',
        'lights/bulb':
          '{ kind: led, emitting-size: 30 x 30 mm, at: { distance: 300 mm, elevation: 3 deg }, modulation: none, supply: low-voltage, reading: { aperture: f/8, shutter: 1/50 s, iso: 3200, through: meter } }',
        'shots/frost/light': '[panel, bulb]',
      },
      /./,
    );
    expect(finding?.what).toMatch(/^bulb's reflection/);
  });
});

it('relief shows the lamp whichever way it is turned', () => {
  const { finding, fix } = ways({ ...SHOWN, 'subjects/frost-plate/depth': '1 mm' }, /^Tilt/);
  expect(finding?.why).toContain('relief shows it anywhere');
  expect(fix).toBeUndefined();
});
