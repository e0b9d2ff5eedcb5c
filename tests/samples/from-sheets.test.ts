/**
 * The plan from makers' sheets and a ruler: nearly every figure has a value or bounds, the few others
 * say what they need, and it is not noisier than the same plan with everything measured.
 *
 * What sheets leave out, and between which values it lies, is common practice: see the table of
 * assumptions.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isMissed } from '../../shared/figures/reasons.ts';
import { each } from '../support/each.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const SHEETS = readFileSync(
  new URL('../../samples/from-sheets.shootplan.yaml', import.meta.url),
  'utf8',
);

/** The data that no sheet has, within what is assumed of it. */
const given = (
  loss: number,
  pupil: { readonly macro: number; readonly long: number },
  more: { readonly front: number; readonly polariser: number; readonly flange: number },
): string =>
  changed(SHEETS, {
    'kit/bodies/body-a/flange-distance': `${more.flange} mm`,
    'kit/lenses/long-180/loss': `${loss} stops`,
    'kit/lenses/macro-90/loss': `${loss} stops`,
    'kit/lenses/long-180/pupil-ratio': String(pupil.long),
    'kit/lenses/macro-90/pupil-ratio': String(pupil.macro),
    'kit/lenses/long-180/front-diameter': `${72 + more.front} mm`,
    'kit/lenses/macro-90/front-diameter': `${62 + more.front} mm`,
    'kit/converters/by-1-4/loss': '0.2 stops',
    'kit/filters/polariser/loss': `${more.polariser} stops`,
    'lights/panel/modulation': 'none',
    'lights/tube-lamp/modulation': '25 kHz',
  });

const WHOLE: Readonly<Record<string, string>> = {
  'in the middle': given(0.3, { macro: 1, long: 1 }, { front: 4, polariser: 1.6, flange: 20 }),
  'at one end': given(0.1, { macro: 0.8, long: 0.6 }, { front: 2, polariser: 1.3, flange: 16 }),
  'at the other': given(0.5, { macro: 1.2, long: 0.9 }, { front: 8, polariser: 1.9, flange: 44 }),
};

/** Figures that apply to a shot and are unknown, with the reason; and how many apply. */
function unknownIn(text: string): {
  readonly unknown: readonly string[];
  readonly applying: number;
} {
  const unknown: string[] = [];
  let applying = 0;
  for (const [shot, { notKnown, ...figures }] of coreWith(text).figures(PLAN))
    for (const [name, value] of Object.entries(figures)) {
      if (BESIDE.has(name)) continue;
      const why = (notKnown as Readonly<Record<string, string>>)[name];
      if (why !== undefined && isMissed(notKnown, name)) unknown.push(`${shot}: ${name} ${why}`);
      if (why === undefined ? value !== null : isMissed(notKnown, name)) applying++;
    }
  return { unknown, applying };
}

/** What is no figure: how sure figures are, and from where. */
const BESIDE: ReadonlySet<string> = new Set(['bounds', 'widenedBy', 'measured']);

const findingsIn = (text: string): number =>
  coreWith(text)
    .findings(PLAN)
    .filter(({ severity }) => severity !== 'hint').length;

describe('the sample from sheets', () => {
  it('knows nine of ten figures that apply, and the others say what they need', () => {
    const { unknown, applying } = unknownIn(SHEETS);
    expect(applying).toBeGreaterThan(200);
    expect(unknown.length / applying).toBeLessThanOrEqual(0.1);
    each(unknown, (said) => expect(said).toMatch(/ needs `[a-z-]+` of [a-z-]+$/));
  });

  it('has bounds for what its sheets leave out', () => {
    const wick = coreWith(SHEETS).figures(PLAN).get('wick')!;
    const { bounds } = wick as { readonly bounds?: Readonly<Record<string, readonly number[]>> };
    const [low, high] = bounds!.exposureErrorStops!;
    expect(high! - low!).toBeGreaterThan(0.3);
  });

  it('is no noisier than the same plan with everything given', () => {
    each(
      Object.entries(WHOLE),
      ([, whole]) => expect(findingsIn(SHEETS)).toBeLessThanOrEqual(findingsIn(whole) + 2),
      ([where]) => where,
    );
  });

  it('has values with everything given that lie within its bounds', () => {
    const rough = coreWith(SHEETS).figures(PLAN);
    each(
      Object.entries(WHOLE),
      ([, whole]) => {
        for (const [shot, figures] of coreWith(whole).figures(PLAN)) {
          const { bounds = {} } = rough.get(shot)! as unknown as {
            readonly bounds?: Readonly<Record<string, readonly [number, number]>>;
          };
          for (const [name, [low, high]] of Object.entries(bounds)) {
            const value = (figures as unknown as Readonly<Record<string, unknown>>)[name];
            if (typeof value !== 'number') continue;
            const slack = 0.05 * (high - low);
            expect(value, `${shot}: ${name}`).toBeGreaterThanOrEqual(low - slack);
            expect(value, `${shot}: ${name}`).toBeLessThanOrEqual(high + slack);
          }
        }
      },
      ([where]) => where,
    );
  });
});
