/** Plans that somebody might have written, right and wrong: the examples' plan with values exchanged. */
import fc from 'fast-check';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from './plans.ts';

/** Values to exchange, by place: plausible ones, tired ones, and slips of the keyboard. */
const CHOICES: Readonly<Record<string, readonly (string | null)[]>> = {
  'shots/frost/field': [
    '60 mm',
    '40 mm',
    '20 mm',
    '6 mm',
    '120 mm',
    '60',
    '60mm',
    '2.4 in',
    '60,5 mm',
  ],
  'shots/frost/aperture': [
    'f/2.8',
    'f/4',
    'f/5.6',
    'f/8',
    'f/11',
    'f/16',
    'f/22',
    'f/32',
    'f/64',
    'F8',
    '8',
  ],
  'shots/frost/shutter': ['1/50 s', '1/100 s', '1/80 s', '1/15 s', '180 deg', '1/50', '50', null],
  'shots/frost/iso': ['100', '400', '1250', '6400', '51200', 'auto', 'ISO 800', '1250 iso'],
  'shots/frost/rig': ['bench', 'stacked', 'crowded', 'plain', 'bensh', null],
  'shots/frost/light': ['[panel]', '[bulb]', '[panel, bulb]', '[pannel]', 'panel'],
  'shots/frost/record': ['full-25', 'thin-25', 'small-25', 'ful-25'],
  'shots/frost/white-balance': ['5600 K', '4300 K', 'auto', '5600K'],
  'shots/frost/tilt': [null, '2 deg', '10 deg', '4'],
  'shots/frost/allow': [
    null,
    '{ depth-short: { because: only the rim } }',
    '{ dept-short: { because: x } }',
  ],
  'shots/frost/relight': [
    '{ panel: { dimmed: 40 % } }',
    '{ panel: { dimmed: 40 } }',
    '{ panel: { dimmed: 40 stops } }',
    '{ panel: { at: { distance: 180 mm, elevation: 40 deg } } }',
  ],
  'shots/skin/subject-speed': [null, '8 mm/s', '20 m/s'],
  'lights/strip/luminance': ['12000 cd/m2', '0.02 cd/m2', '90000000 cd/m2'],
  'shots/skin/tilt': ['4 deg', '1 deg', '3 deg', '12 deg', '-4 deg'],
  'shots/skin/aperture': ['f/11', 'f/4', 'f/22', 'f/32'],
  'shots/skin/field': ['48 mm', '38 mm', '80 mm', '12 mm'],
  'shots/skin/take': [
    '{ duration: 20 s, settle: 5 s }',
    '{ duration: 50 s, settle: 5 s }',
    '{ duration: 200 s }',
  ],
  'shots/skin/preflight': [
    '{ background-clear: open, solution-ready: open, lens-not-in-mirror: open }',
    null,
  ],
  'shots/skin/iso': ['1600', '400', '12800'],
  'lights/strip/at': [
    '{ distance: 300 mm, elevation: 14 deg }',
    '{ distance: 300 mm, elevation: 40 deg }',
    '{ distance: 300 mm, elevation: 3 deg }',
  ],
  'lights/panel/modulation': ['none', '100 Hz', null],
  'subjects/frost-plate/depth': ['1.5 mm', '4 mm', '0.2 mm', '1.5', null],
  'subjects/frost-plate/finish': ['matt', 'mat', 'shiny'],
  'subjects/soap/holder': ['wicking-frame', 'smooth-container'],
  'kit/lenses/macro-100/aperture': ['f/2.8 to 32', 'f/32 to 2.8', 'f/2.8-32'],
  'kit/lenses/macro-100/loss': ['0.3 stops', null],
  'kit/lenses/macro-100/bench': [
    '[{ with: [body-a], ring: closest, field: 36.2 mm, from-sensor: 311 mm }]',
    '[{ with: [body-a, tube-20], ring: 0.5 m, field: 30 mm }, { with: [body-a], ring: closest, effective-f-number: 15, marked: f/8 }]',
    '[{ with: [body-a], ring: closest, field: 120 mm }]',
    '[{ with: [body-a], ring: closest }, { with: [body-a, tube-20], ring: infinity, field: 180 mm }]',
    '[{ with: [boddy-a], ring: closest, field: 36 mm }]',
    '[{ with: [body-a], ring: closest, field: 36 }]',
    '{ with: [body-a], ring: closest, field: 36 mm }',
    '[]',
  ],
  'kit/lenses/long-200/bench': [
    '[{ with: [body-a, tube-36], ring: closest, field: 66 mm, working-distance: 412 mm }]',
    '[{ with: [body-a, twice, tube-36], ring: infinity, field: 98 mm }]',
    '[{ with: [tube-36, body-a], ring: closest, field: 66 mm }]',
    '[{ with: [body-a, macro-100], ring: closest, field: 66 mm }]',
  ],
  'kit/bodies/body-a/displayed-aperture': ['marked', 'efective'],
  'deliver/resolution': ['1920 x 1080', '3840 x 2160', '1920x1080'],
  'deliver/duration': ['8 s', '20 s'],
  edit: [
    '{ cuts: { one: { shot: skin, duration: 4 s }, two: { shot: frost, duration: 4 s } } }',
    '{ cuts: { one: { shot: skin, from: 18 s, duration: 4 s, speed: 50 % } } }',
    '{ cuts: { one: { shot: skin, duration: 30 s, speed: 200 to 40 % }, two: { shot: skin, duration: 20 frames, transition: dissolve 1 s } } }',
    '{ music: { tempo: 92 bpm, first-beat: 0.4 s, bar: 4 beats }, cuts: { one: { shot: skin, duration: 2 bars }, two: { shot: frost, duration: 3 s, reframe: 1.4x, grade: warm }, three: { shot: skin, from: 0 s, duration: 3 beats, transition: dissolve 6 frames } } }',
    '{ memory: 8 GB, cuts: { one: { shot: skn, duration: 4 }, two: { shot: frost } } }',
  ],
  severity: [null, '{ motion-blur: error }', '{ depth-short: error }', '{ dept-short: error }'],
};

/**
 * Values that are left out or known only roughly. What stands before them in a record goes with them,
 * so that no two of a plan's places hold one another.
 */
const ROUGH_CHOICES: Readonly<Record<string, readonly (string | null)[]>> = {
  'kit/bodies/body-a/flange-distance': [null],
  'kit/bodies/body-a/readout': ['15 to 20 ms'],
  'kit/bodies/body-a/mass': ['0.7 to 0.8 kg'],
  'kit/lenses/macro-100/focal-length': ['98 to 102 mm', '100 mm \u00b1 3 %'],
  'kit/lenses/macro-100/loss': [null, '0.2 to 0.4 stops'],
  'kit/lenses/macro-100/pupil-ratio': [null, '0.8 to 1.1'],
  'kit/lenses/macro-100/closest': [
    '{ magnification: 1x }',
    '{ from-sensor: 300 to 320 mm, magnification: 1x }',
    '{ from-sensor: 0.31 m, magnification: 0.9 to 1.1x }',
  ],
  'kit/lenses/macro-100/length': ['110 to 130 mm'],
  'kit/lenses/macro-100/front-diameter': ['66 to 74 mm'],
  'kit/lenses/long-200/focal-length': ['195 to 205 mm'],
  'kit/lenses/long-200/loss': [null, '0.2 to 0.5 stops'],
  'kit/lenses/long-200/pupil-ratio': [null, '0.7 to 0.9'],
  'kit/lenses/long-200/closest': [
    '{ magnification: 0.3x }',
    '{ from-sensor: 0.85 m }',
    '{ from-sensor: 820 to 880 mm, magnification: 0.28 to 0.32x }',
  ],
  'kit/lenses/long-200/mass': ['1 to 1.3 kg'],
  'kit/tubes/tube-36/length': ['36 \u00b1 1 mm'],
  'kit/tubes/tube-20/length': ['18 to 22 mm'],
  'kit/converters/twice/factor': ['1.9 to 2.1x'],
  'kit/converters/twice/loss': [null, '0.1 to 0.3 stops'],
  'subjects/frost-plate/depth': ['1 to 2 mm', '0 to 4 mm'],
  'subjects/soap/lifetime': ['30 to 60 s'],
  'shots/frost/rig': ['stacked', 'plain'],
  'shots/frost/field': ['20 mm', '36 mm', '90 mm'],
  'shots/frost/tilt': ['2 to 6 deg', '-2 to 6 deg', '10 deg \u00b1 3 deg'],
  'shots/frost/subject-speed': ['1 to 5 mm/s', '0 to 2 mm/s'],
  'shots/skin/tilt': ['3 to 6 deg', '4 \u00b1 1 deg', '-1 to 5 deg'],
  'shots/skin/subject-speed': ['2 to 6 mm/s'],
  'lights/strip/luminance': ['8000 to 16000 cd/m2', '12000 cd/m2 \u00b1 20 %'],
  'lights/strip/at': [
    '{ distance: 280 to 320 mm, elevation: 14 deg }',
    '{ distance: 300 mm, elevation: 10 to 18 deg, azimuth: -5 to 10 deg }',
  ],
  'lights/panel/at': [
    '{ distance: 380 to 420 mm, elevation: 40 deg }',
    '{ distance: 400 mm, elevation: 30 to 50 deg }',
  ],
  'lights/panel/reading': [
    '{ aperture: f/8, shutter: 1/50 s, iso: 400, through: bare-lens }',
    '{ aperture: f/8, shutter: 1/50 s, iso: 400, through: bare-lens, magnification: 0.2 to 0.4x }',
    '{ aperture: f/8, shutter: 1/50 s, iso: 400, through: this-rig }',
    '{ aperture: f/8, shutter: 1/50 s, iso: 400, through: meter, distance: 350 to 450 mm }',
  ],
};

/** Rows of a ruler that go with the sheets' data, by lens; and what is known roughly beside them. */
const BENCHES: Readonly<Record<string, readonly string[]>> = {
  'kit/lenses/macro-100/bench': [
    '{ with: [body-a], ring: closest, field: 36.2 mm, from-sensor: 311 mm }',
    '{ with: [body-a], ring: closest, field: 35 to 37 mm }',
    '{ with: [body-a, tube-20], ring: infinity, field: 182 \u00b1 2 mm }',
    '{ with: [body-a, tube-36], ring: 0.5 m, working-distance: 120 \u00b1 10 mm }',
    '{ with: [body-a], ring: closest, effective-f-number: 14 to 16, marked: f/8 }',
  ],
  'kit/lenses/long-200/bench': [
    '{ with: [body-a, tube-36], ring: closest, field: 68 mm }',
    '{ with: [body-a, tube-36], ring: closest, working-distance: 430 \u00b1 15 mm }',
    '{ with: [body-a, tube-36], ring: infinity, field: 200 mm }',
    '{ with: [body-a, tube-36], ring: infinity, effective-f-number: 9.5, marked: f/8 }',
    '{ with: [body-a, twice], ring: closest, magnification: 0.58 to 0.62x }',
  ],
};
const BESIDE_BENCHES = [
  'kit/lenses/macro-100/focal-length',
  'kit/lenses/macro-100/loss',
  'kit/lenses/macro-100/closest',
  'kit/lenses/long-200/focal-length',
  'kit/lenses/long-200/pupil-ratio',
  'kit/lenses/long-200/closest',
  'kit/tubes/tube-36/length',
  'kit/converters/twice/factor',
  'shots/frost/field',
];

const PLACES = Object.keys(CHOICES);
const ROUGH_PLACES = Object.keys(ROUGH_CHOICES);

/** A plan with up to `most` values exchanged, and which they are. */
export const randomPlan = (most = 5) => exchanged(PLACES, CHOICES, 1, most);

/** A plan of which much is known only roughly: values left out, and ranges. */
export const uncertainPlan = (most = 4) => exchanged(ROUGH_PLACES, ROUGH_CHOICES, 2, most);

/** A plan of which a lens or two were measured, with rows of each in any number and order. */
export const benchPlan = () => {
  const rows = (place: string) =>
    fc
      .shuffledSubarray([...BENCHES[place]!], { minLength: 1 })
      .map((some) => [place, `[${some.join(', ')}]`] as const);
  const benches = fc
    .subarray(Object.keys(BENCHES), { minLength: 1 })
    .chain((places) => fc.tuple(...places.map(rows)));
  return fc
    .tuple(benches, exchanged(BESIDE_BENCHES, ROUGH_CHOICES, 0, 2))
    .map(([given, { text, change }]) => {
      const all = Object.fromEntries(given);
      return { text: changed(text, all), change: { ...change, ...all }, benches: all };
    });
};

const exchanged = (
  from: readonly string[],
  choices: Readonly<Record<string, readonly (string | null)[]>>,
  least: number,
  most: number,
) =>
  fc
    .uniqueArray(fc.constantFrom(...from), { minLength: least, maxLength: most })
    .chain((places) =>
      fc.tuple(
        ...places.map((place) =>
          fc.constantFrom(...choices[place]!).map((value) => [place, value] as const),
        ),
      ),
    )
    .map((pairs) => {
      let text = EXAMPLE_PLAN;
      const change: Record<string, string | null> = {};
      for (const [place, value] of pairs) {
        // What an earlier exchange took away can't be exchanged again.
        try {
          text = changed(text, { [place]: value });
          change[place] = value;
        } catch (error) {
          if (!(error instanceof Error) || !error.message.startsWith('Nothing to change'))
            throw error;
        }
      }
      return { text, change };
    });
