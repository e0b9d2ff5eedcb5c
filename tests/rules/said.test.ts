/**
 * What a rule says in each of its cases: one plan for each sentence that no example of a rule has. The
 * numbers in them follow from the plan by hand, or are left open where another test holds them.
 */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

type Change = Readonly<Record<string, string | null>>;

const MODE_24 = '{ resolution: 1920 x 1080, rate: 24 fps, bitrate: 30 Mb/s, area: 36 x 20.25 mm }';
const BULB: Change = { 'shots/frost/light': '[bulb]', 'shots/frost/iso': 'auto' };
const CROWDED: Change = {
  'shots/frost/rig': 'crowded',
  'shots/frost/field': null,
  'shots/frost/ring': 'closest',
  'shots/frost/iso': 'auto',
};
const SHOT =
  '{ subject: frost-plate, rig: bench, field: 60 mm, aperture: f/8, shutter: 1/50 s, iso: 1250, record: full-25, white-balance: 5600 K, light: [panel] }';
/** Four shots, and what is checked before each of them. */
const four = (...checks: readonly string[]): Change => ({
  'shots/third': SHOT,
  'shots/fourth': SHOT,
  'preflight/every-shot': `[${checks.join(', ')}]`,
});

const FINDINGS: readonly (readonly [rule: string, said: RegExp, change: Change])[] = [
  ['colour-rendering-low', /^`panel` has a TLCI of 80; 90 is usual/, { 'lights/panel/tlci': '80' }],
  [
    'no-room',
    /^The subject would be .* inside/,
    { ...CROWDED, 'kit/lenses/short-50/length': '150 mm' },
  ],
  [
    'no-room',
    /are in the same place\.$/,
    { 'lights/panel/at': '{ distance: 280 mm, elevation: 2 deg }' },
  ],
  ['iso-out-of-range', /^.*50 is below .*'s lowest ISO, 100\.$/, { 'shots/frost/iso': '50' }],
  [
    'iso-out-of-range',
    /^At ISO 100, the lowest of .*, the shot is .* overexposed\.$/,
    {
      'shots/frost/iso': 'auto',
      'shots/frost/aperture': 'f/2.8',
      'lights/panel/reading': '{ aperture: f/22, shutter: 1/50 s, iso: 100, through: meter }',
    },
  ],
  [
    'lamp-flicker',
    / roll through the frame at 4 Hz\./,
    {
      ...BULB,
      'shots/frost/shutter': '1/80 s',
      'kit/bodies/body-a/recording-modes/full-25': MODE_24,
      deliver: '{ resolution: 1920 x 1080, rate: 24 fps }',
    },
  ],
  [
    'lamp-flicker',
    /^.* pulses at 100 Hz; at 1\/80 s that leaves up to .* flicker\.$/,
    { 'lights/panel/modulation': '100 Hz', 'shots/frost/shutter': '1/80 s' },
  ],
  [
    'motion-blur',
    /Not even .* would limit the blur to one pixel\.$/,
    { 'shots/skin/subject-speed': '900 mm/s' },
  ],
  [
    'field-out-of-reach',
    /can't focus at .*: it has no `closest`\.$/,
    {
      'kit/lenses/macro-100/closest': null,
      'shots/frost/field': null,
      'shots/frost/ring': '0.5 m',
    },
  ],
  [
    'rig-pitches',
    /^.* is rear-heavy: its centre of gravity is .* behind the foot\.$/,
    { 'rigs/bench/support': '{ foot: 140 mm }' },
  ],
  [
    'background-washes',
    /[\d.]+ times as bright as /,
    { 'shots/skin/background-luminance': '2000 cd/m2' },
  ],
  [
    'exposure-off',
    /The effective aperture is f\//,
    { 'shots/frost/rig': 'stacked', 'shots/frost/field': '30 mm', 'shots/frost/iso': '200' },
  ],
  [
    'check-missing',
    /^A check is missing in 4 shots: `white-balance-fixed`\.$/,
    four('focus-at-full-size', 'record-setting-read-back', 'exposure-confirmed', 'foot-balanced'),
  ],
  [
    'check-missing',
    /^2 checks are missing in 4 shots\.$/,
    four('focus-at-full-size', 'record-setting-read-back', 'foot-balanced'),
  ],
];

const FIXES: readonly (readonly [rule: string, title: RegExp, change: Change])[] = [
  [
    'lamp-flicker',
    // 20 kHz × 1/8000 s is 2.5 cycles; the mark with a whole number nearest to it has 4.
    /^Set shutter to 1\/5000 s \(whole lamp cycles\)$/,
    {
      'lights/panel/modulation': '20 kHz',
      'shots/frost/shutter': '1/8000 s',
      'shots/frost/iso': 'auto',
    },
  ],
  [
    'field-out-of-reach',
    /^Set 1x, the closest this rig allows$/,
    { 'shots/frost/field': null, 'shots/frost/magnification': '3x' },
  ],
  [
    'field-out-of-reach',
    // Tubes of 20 mm behind 100 mm, doubled.
    /^Set 0\.4x, the widest this rig allows$/,
    {
      'shots/frost/rig': 'stacked',
      'shots/frost/field': null,
      'shots/frost/magnification': '0.1x',
    },
  ],
  [
    'moves-in-stack',
    /^Remove the move$/,
    {
      'shots/frost/stack': '{ with: rail, settle: 2 s }',
      'shots/frost/move': '{ kind: slide, speed: 0.1 mm/s }',
    },
  ],
  [
    'uneven-light',
    /^Move .* back to \d+ mm$/,
    {
      'lights/panel/emitting-size': '80 x 60 mm',
      'lights/panel/at': '{ distance: 150 mm, elevation: 40 deg }',
      'shots/frost/iso': 'auto',
    },
  ],
  [
    'motion-blur',
    /^Pull focus in \d+ s$/,
    { 'shots/frost/move': '{ kind: focus-pull, from: 0.38 m, to: 0.43 m, duration: 0.5 s }' },
  ],
];

const coreOf = (change: Change) => coreWith(changed(EXAMPLE_PLAN, change));

describe('a rule says', () => {
  it.each(FINDINGS)('%s: %s', (rule, said, change) => {
    const own = coreOf(change)
      .findings(PLAN)
      .filter((finding) => finding.rule === rule);
    const sentences = own.flatMap(({ what, why }) => [what, why]);
    expect(sentences).toContainEqual(expect.stringMatching(said));
    expect(sentences.join(' ')).not.toMatch(/undefined|NaN|null/);
  });

  it.each(FIXES)('%s offers: %s', (rule, title, change) => {
    const core = coreOf(change);
    const titles = core
      .findings(PLAN)
      .filter((finding) => finding.rule === rule)
      .flatMap((finding) => core.fixesOf(finding).map((fix) => fix.title));
    expect(titles).toContainEqual(expect.stringMatching(title));
  });
});
