/**
 * Plans of what makers' sheets and a ruler give: nothing in them was measured, so that every prior
 * of the table of assumptions is in use somewhere.
 */
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from './plans.ts';

const LENSES = ['macro-100', 'short-50', 'long-200'];
const LAMP = 'kind: led, colour-temperature: 5600 K, supply: mains';
const PLACE = 'at: { distance: 400 mm, elevation: 40 deg }';

const SHEET = changed(EXAMPLE_PLAN, {
  'kit/bodies/body-a/flange-distance': null,
  'kit/converters/twice/loss': null,
  'kit/filters': '{ crossed: { kind: polariser } }',
  ...Object.fromEntries(
    LENSES.flatMap((lens) => [
      [`kit/lenses/${lens}/loss`, null],
      [`kit/lenses/${lens}/pupil-ratio`, null],
      [`kit/lenses/${lens}/front-diameter`, null],
      [`kit/lenses/${lens}/filter-thread`, '67 mm'],
    ]),
  ),
  'kit/lenses/long-200/closest': '{ from-sensor: 0.85 m }',
  'lights/strip/modulation': null,
  'lights/strip/supply': 'mains',
});

const with_ = (change: Readonly<Record<string, string | null>>): string => changed(SHEET, change);

export const SHEET_PLANS: Readonly<Record<string, string>> = {
  'as it stands': SHEET,
  'with lux at a metre': with_({
    'lights/panel': `{ ${LAMP}, emitting-size: 300 x 200 mm, ${PLACE}, illuminance: 900 lx, illuminance-distance: 1 m }`,
    'kit/lenses/macro-100/closest': '{ magnification: 1x }',
    'shots/frost/field': '90 mm',
  }),
  'behind a polariser': with_({ 'shots/frost/filters': '[crossed]', 'shots/frost/iso': '6400' }),
  'read through the bare lens': with_({
    'lights/panel/reading': '{ aperture: f/8, shutter: 1/50 s, iso: 400, through: bare-lens }',
    'shots/frost/rig': 'stacked',
    'shots/frost/field': '20 mm',
  }),
  'with a subject known roughly': with_({
    'subjects/frost-plate/depth': '1 to 2 mm',
    'shots/frost/subject-speed': '1 to 3 mm/s',
    'subjects/soap/lifetime': '30 to 60 s',
  }),
  'with a light known roughly': with_({
    'lights/strip/luminance': '9000 to 15000 cd/m2',
    'lights/panel/at': '{ distance: 380 to 420 mm, elevation: 35 to 45 deg }',
  }),
  'with a tilt known roughly': with_({
    'shots/skin/tilt': '3 to 5 deg',
    'shots/frost/tilt': '-2 to 6 deg',
  }),
};
