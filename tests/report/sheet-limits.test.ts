/** What goes wrong in a shot, and when, as its sheet says it. */
import { expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith } from '../support/plans.ts';
import { pageOf } from './support/sheets.ts';

const sheetAt = (modulation: string): string =>
  pageOf(coreWith(changed(EXAMPLE_PLAN, { 'lights/panel/modulation': modulation })));

// 1/50 s holds two whole pulses of 100 Hz and some hundreds of 25 kHz, of which one more or less is
// under a thousandth: 1/(π·25000/50) = 0.0006 (the magnitude of sin(πft)/(πft)).
it('keeps a shutter on whole pulses of a light only where another would show them', () => {
  expect(sheetAt('100 Hz')).toContain(
    'whole multiples of 1/100 s avoid flicker from <code>panel</code>',
  );
  expect(sheetAt('25 kHz')).not.toContain('avoid flicker from <code>panel</code>');
});
