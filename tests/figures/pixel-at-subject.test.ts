/**
 * How much of the subject a pixel covers: the field over its pixels. By arithmetic from the data of a
 * plan, without the sensor: a field of 38.4 mm on 1920 pixels has 20 µm on each.
 */
import { expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const frostOf = (change: Readonly<Record<string, string | null>>) =>
  coreWith(changed(EXAMPLE_PLAN, change)).figures(PLAN).get('frost')!;

it('is the field over the pixels that are delivered', () => {
  const delivered = (resolution: string) =>
    frostOf({
      'shots/frost/field': '38.4 mm',
      deliver: `{ resolution: ${resolution}, rate: 25 fps }`,
    });
  expect(delivered('1920 x 1080').pixelAtSubjectUm).toBeCloseTo(20, 6);
  expect(delivered('1280 x 720').pixelAtSubjectUm).toBeCloseTo(30, 6);
});

it('is not known where the magnification is not', () => {
  const { pixelAtSubjectUm, notKnown } = frostOf({ 'shots/frost/field': '6 mm' });
  expect(pixelAtSubjectUm).toBeNull();
  expect(notKnown.pixelAtSubjectUm).toBe(notKnown.magnification);
});
