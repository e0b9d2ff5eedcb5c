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

const PLACES = Object.keys(CHOICES);

/** A plan with up to `most` values exchanged, and which they are. */
export const randomPlan = (most = 5) =>
  fc
    .uniqueArray(fc.constantFrom(...PLACES), { minLength: 1, maxLength: most })
    .chain((places) =>
      fc.tuple(
        ...places.map((place) =>
          fc.constantFrom(...CHOICES[place]!).map((value) => [place, value] as const),
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
