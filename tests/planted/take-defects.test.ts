/**
 * Takes that were shot otherwise than planned, planted into a plan that has nothing wrong. The finding
 * stands on the take's own settings, with numbers that are worked out here by hand: depth by Ray's
 * close-up formula (see tests/published/focus-stack.test.ts), exposure and blur by the definitions of
 * stop and shutter time.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { laws } from '../support/each.ts';
import { changed, findingsOf } from '../support/plans.ts';

const RULE = 'take-off-plan';

/** m = 0.6, c = 0.03 mm: 2·c·N·(1 + m)/m², for a symmetric lens. */
const depthAt = (marked: number): number => (2 * 0.03 * marked * 1.6) / 0.36;

const ALLOWED = '{ check-open: { because: a test clip } }';

/** f/11 gives 2.93 mm of the 2.5 mm that a deeper plate needs. */
const SOUND = {
  'circle-of-confusion': '0.03 mm',
  'subjects/frost-plate/depth': '2.5 mm',
  'shots/frost/aperture': 'f/11',
  'shots/frost/iso': '2500',
  'shots/frost/allow': ALLOWED,
};

const withTakes = (...takes: readonly string[]): string =>
  changed(EXAMPLE_PLAN, { ...SOUND, clips: `{ frost: [${takes.join(', ')}] }` });

const found = (text: string) => findingsOf(text).filter(({ rule }) => rule === RULE);

const under = (text: string, { start, end }: ReturnType<typeof found>[number]['range']): string =>
  text.split('\n')[start.line]!.slice(start.character, end.character);

interface Defect {
  readonly says: string;
  readonly take: string;
  readonly severity: string;
  /** What the finding stands on. */
  readonly on: string;
  readonly what: string;
  readonly why?: RegExp;
  readonly numbers?: Readonly<Record<string, number>>;
}

const DEFECTS: readonly Defect[] = [
  {
    says: 'a kept take with too little depth',
    take: '{ take: 3, verdict: keep, set: { aperture: f/8, iso: 1250 } }',
    severity: 'warning',
    on: '{ aperture: f/8, iso: 1250 }',
    what: 'Take 3 was shot at f/8 and ISO 1250, planned f/11 and ISO 2500.',
    why: /^Depth of field is 2\.1 mm; frost-plate needs 2\.5 mm\./,
    numbers: { take: 3, depthMm: depthAt(8), neededMm: 2.5 },
  },
  {
    says: 'one setting alone, the depth in the first sentence',
    take: '{ take: 2, verdict: keep, set: { aperture: f/8 } }',
    severity: 'warning',
    on: 'f/8',
    what: 'Take 2 was shot at f/8, planned f/11: depth 2.1 mm of 2.5 mm needed.',
    why: /^The shot is 0\.9\d stops overexposed\.$/,
  },
  {
    says: 'the same take, not judged yet',
    take: '{ take: 3, set: { aperture: f/8, iso: 1250 } }',
    severity: 'note',
    on: '{ aperture: f/8, iso: 1250 }',
    what: 'Take 3 was shot at f/8 and ISO 1250, planned f/11 and ISO 2500.',
    why: /^Depth of field is 2\.1 mm/,
  },
  {
    says: 'a kept take two stops too dark',
    take: '{ file: a.mp4, verdict: keep, set: { iso: 640 } }',
    severity: 'warning',
    on: '640',
    what: 'Take 1 was shot at ISO 640, planned ISO 2500.',
    why: /^The shot is \d(\.\d)? stops underexposed\./,
  },
  {
    says: 'a kept take that meets all that is needed',
    take: '{ take: 1, verdict: keep, set: { aperture: f/13, iso: 3200 } }',
    severity: 'note',
    on: '{ aperture: f/13, iso: 3200 }',
    what: 'Take 1 was shot at f/13 and ISO 3200, planned f/11 and ISO 2500.',
    why: /^What the shot needs still holds\. With these settings: depth 3\.5 mm of 2\.5 mm needed/,
    numbers: { depthMm: depthAt(13) },
  },
  {
    says: 'a white balance, which no figure follows from',
    take: '{ take: 1, verdict: keep, set: { white-balance: auto } }',
    severity: 'note',
    on: 'auto',
    what: 'Take 1 was shot at automatic white balance, planned white balance 5600 K.',
  },
];

laws(
  DEFECTS,
  ({ says }) => says,
  ({ take, severity, on, what, why, numbers }, law) => {
    law('is found on the take, with its numbers', () => {
      const text = withTakes(take);
      const [one, ...others] = found(text);
      expect(others).toEqual([]);
      expect(one).toMatchObject({ severity, what });
      expect(under(text, one!.range)).toBe(on);
      if (why) expect(one!.why).toMatch(why);
      // 2 %: the circle of confusion and the Airy disk are combined.
      for (const [key, value] of Object.entries(numbers ?? {}))
        expect(Math.abs((one!.numbers?.[key] ?? 0) / value - 1)).toBeLessThan(0.02);
    });
  },
);

describe('what is told of a take', () => {
  it('is exactly the stops between the settings', () => {
    const errorOf = (set: string) =>
      found(withTakes(`{ take: 1, set: ${set} }`))[0]?.numbers?.exposureErrorStops ?? 0;
    expect(errorOf('{ iso: 5000 }') - errorOf('{ iso: 1250 }')).toBeCloseTo(2, 6);
    expect(errorOf('{ shutter: 1/25 s }') - errorOf('{ shutter: 1/100 s }')).toBeCloseTo(2, 6);
  });

  it('says nothing of takes as planned, of rejected ones, and of settings that are the same', () => {
    for (const take of [
      '{ take: 1, verdict: keep }',
      '{ take: 1, verdict: keep, set: {} }',
      '{ take: 1, verdict: keep, set: { aperture: f/11, iso: 2500, tilt: 0 deg } }',
      '{ take: 1, verdict: keep, set: { shutter: 180 deg } }',
      '{ take: 1, verdict: reject, set: { aperture: f/2.8 } }',
      '{ take: 1, verdict: keep, set: { aperture: wide } }',
    ])
      expect([take, found(withTakes(take)).map(({ what }) => what)]).toEqual([take, []]);
  });

  it('judges every take for itself', () => {
    const text = withTakes(
      '{ take: 1, verdict: keep, set: { aperture: f/8 } }',
      '{ take: 2, verdict: keep }',
      '{ take: 4, verdict: maybe, set: { aperture: f/9 } }',
      'C0007.MP4',
      '{ set: { aperture: f/10 } }',
    );
    expect(found(text).map(({ numbers, severity }) => [numbers?.take, severity])).toEqual([
      [1, 'warning'],
      [4, 'note'],
      // The fifth of the list: one before it can't be read.
      [5, 'note'],
    ]);
  });

  it('counts nothing that the shot accepts, and nothing that its plan has as well', () => {
    const accepted = changed(EXAMPLE_PLAN, {
      ...SOUND,
      'shots/frost/allow':
        '{ check-open: { because: a test clip }, depth-short: { because: a soft look } }',
      clips: '{ frost: [{ take: 1, verdict: keep, set: { aperture: f/9 } }] }',
    });
    expect(found(accepted).map(({ severity }) => severity)).toEqual(['note']);
    const dark = changed(EXAMPLE_PLAN, {
      ...SOUND,
      'shots/frost/iso': '640',
      clips: '{ frost: [{ take: 1, verdict: keep, set: { iso: 800 } }] }',
    });
    expect(found(dark).map(({ severity }) => severity)).toEqual(['note']);
  });

  it('is quiet on the samples', () => {
    const folder = fileURLToPath(new URL('../../samples/', import.meta.url));
    const samples = readdirSync(folder).filter((name) => /^[a-l].*\.shootplan\.yaml$/.test(name));
    expect(samples.length).toBeGreaterThan(3);
    for (const name of samples)
      expect([name, found(readFileSync(folder + name, 'utf8'))]).toEqual([name, []]);
  });
});
