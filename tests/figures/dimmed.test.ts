/** A dimmer's share of the light, in a shot. A stop is half of it: 40 % is log2(1/0.4) = 1.32 stops. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { hoverWords } from '../assist/support/bench.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const dimmedTo = (text: string): string =>
  changed(EXAMPLE_PLAN, { 'shots/frost/relight': `{ panel: { dimmed: ${text} } }` });

const frostOf = (text: string) => coreWith(text).figures(PLAN).get('frost')!;

describe('a light that is dimmed', () => {
  it('to 40 % gives 40 % of the light', () => {
    const whole = frostOf(EXAMPLE_PLAN);
    const dim = frostOf(dimmedTo('40 %'));
    expect(dim.exposureErrorStops as number).toBeCloseTo(
      (whole.exposureErrorStops as number) + Math.log2(0.4),
      9,
    );
    expect(dim.isoNeeded as number).toBeCloseTo((whole.isoNeeded as number) / 0.4, 6);
  });

  it('to 40 % reads so, in both ways', () => {
    expect(hoverWords(dimmedTo('40 %'), 'dimmed: 40 %', 'dimmed: 4‸0 %')).toContain(
      '1.32 stops, 40% of the light',
    );
    const errors = coreWith(dimmedTo('40 %'))
      .findings(PLAN)
      .filter(({ severity }) => severity === 'error');
    expect(errors).toEqual([]);
  });

  it.each(['40', '40 prcent', '40 per cnt'])('to %s is never meant as 40 stops', (text) => {
    const core = coreWith(dimmedTo(text));
    const titles = core
      .findings(PLAN)
      .flatMap((finding) => core.fixesOf(finding).map(({ title }) => title));
    expect(titles.filter((title) => title.includes('stops'))).toEqual([]);
    if (text === '40') expect(titles).toContain('Write 40 %');
  });

  it('by 40 stops is told that no ISO helps', () => {
    const said = coreWith(dimmedTo('40 stops'))
      .findings(PLAN)
      .filter(({ rule }) => rule === 'exposure-off')
      .map(({ what, why }) => `${what} ${why}`);
    expect(said).toHaveLength(1);
    expect(said[0]).toContain('No ISO from 100 to 25600 gives correct exposure');
  });
});
