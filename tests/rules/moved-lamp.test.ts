/** What a lamp's new place costs stands beside the fix that offers it, and beside the lamp. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Say } from '../../shared/say/say.ts';
import { hoverIn } from '../assist/support/bench.ts';
import { applied, changed, coreWith, PLAN } from '../support/plans.ts';

const DARK = changed(EXAMPLE_PLAN, { 'shots/frost/iso': '400' });

const unevenness = (text: string): number =>
  coreWith(text).figures(PLAN).get('frost')!.unevennessStops as number;

describe('a lamp that is moved nearer', () => {
  it('is offered with what the light over the frame comes to there', () => {
    const core = coreWith(DARK);
    const finding = core.findings(PLAN).find(({ rule }) => rule === 'exposure-off')!;
    const fix = core.fixesOf(finding).find(({ title }) => title.startsWith('Move panel in'))!;
    const there = unevenness(applied(DARK, fix.edits));
    expect(there).toBeGreaterThan(unevenness(DARK) + 0.1);
    expect(fix.sideEffects).toContain(`light varies by ${new Say().stops(there)} across the frame`);
  });

  it('costs nothing farther off', () => {
    const bright = changed(EXAMPLE_PLAN, { 'shots/frost/iso': '3200' });
    const core = coreWith(bright);
    const finding = core.findings(PLAN).find(({ rule }) => rule === 'exposure-off')!;
    const fix = core.fixesOf(finding).find(({ title }) => title.startsWith('Move panel back'))!;
    expect(fix.sideEffects ?? '').not.toContain('light varies');
  });

  it.each([
    ['its name in the shot', EXAMPLE_PLAN, 'light: [panel]', 'light: [p‸anel]'],
    ['its distance', EXAMPLE_PLAN, 'distance: 400 mm', 'distance: 4‸00 mm'],
    [
      'its distance in the shot',
      changed(EXAMPLE_PLAN, { 'shots/frost/relight': '{ panel: { at: { distance: 410 mm } } }' }),
      'distance: 410 mm',
      'distance: 4‸10 mm',
    ],
  ])('says how uneven the frame is at %s', (_, text, from, marked) => {
    const words = hoverIn(text, from, marked)!.markdown;
    expect(words.toLowerCase()).toContain(
      `uneven over the frame of frost: **${new Say().stops(unevenness(text))}**`,
    );
  });
});
