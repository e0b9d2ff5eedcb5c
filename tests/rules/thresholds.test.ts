/**
 * Where a rule begins to speak, and where it grows louder, against the number that its documentation
 * gives to people. The plan is changed in halves until the edge is found; the number that the finding
 * carries there is the threshold, plus a dead band of a few per cent at most.
 */
import { describe, expect, it } from 'vitest';
import type { LocatedFinding } from '../../shared/api/located.ts';
import { withCuts } from '../../shared/rules/edit-rule.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { withPolariser } from '../../shared/rules/polarisers.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

type Numbers = Readonly<Record<string, number>>;

interface Edge {
  readonly rule: string;
  /** What the documentation says, word by word. */
  readonly says: string;
  readonly severities?: readonly LocatedFinding['severity'][];
  readonly change: (value: number) => Readonly<Record<string, string | null>>;
  /** A value that is fine, and one that isn't. */
  readonly fine: number;
  readonly wrong: number;
  readonly figure: (numbers: Numbers) => number;
  readonly threshold: number;
  /** How far beyond the threshold the rule may begin to speak. */
  readonly band: number;
}

const LOUD = ['warning', 'error'] as const;

const exposure = (iso: number) => ({ 'shots/frost/iso': iso.toFixed(0) });
const flow = (speed: number) => ({ 'shots/skin/subject-speed': `${speed} mm/s` });
const shaken = (vibration: number) => ({
  'kit/stands': `\n    arm: { kind: boom, footprint: 1.1 m, reach: 0.5 m, mass: 6 kg, payload: 8 kg, counterweight: 4 kg, counterweight-arm: 0.5 m, vibration: ${vibration} um }`,
  'rigs/bench/support': '{ stand: arm, foot: 70 mm }',
});
const boom = (arm: number) => ({
  'kit/stands': `\n    arm: { kind: boom, footprint: 0.8 m, reach: 1.4 m, mass: 2 kg, counterweight: 1 kg, counterweight-arm: ${arm} mm }`,
  'rigs/bench/support': '{ stand: arm }',
});
const near = (distance: number) => ({
  'lights/panel/emitting-size': '80 x 60 mm',
  'shots/frost/relight': `{ panel: { at: { distance: ${distance} mm } } }`,
});
const glossy = (latitude: number) => ({
  'subjects/frost-plate/finish': 'gloss',
  'subjects/frost-plate/reflectance': '60 %',
  'kit/bodies/body-a/highlight-latitude': `${latitude} stops`,
});
const stopped = (aperture: number) => ({
  'shots/frost/rig': 'stacked',
  'shots/frost/field': '30 mm',
  'shots/frost/aperture': `f/${aperture}`,
  'shots/frost/iso': 'auto',
});
const lasting = (seconds: number) => ({
  'shots/skin/take': `{ duration: ${seconds} s, settle: 5 s }`,
});

const EDGES: readonly Edge[] = [
  {
    rule: 'exposure-off',
    says: 'by more than 1/3 stop',
    change: exposure,
    fine: 1250,
    wrong: 3200,
    figure: ({ exposureErrorStops }) => exposureErrorStops!,
    threshold: 1 / 3,
    band: 0.05,
  },
  {
    rule: 'exposure-off',
    says: 'a warning above 2/3',
    severities: LOUD,
    change: exposure,
    fine: 1250,
    wrong: 3200,
    figure: ({ exposureErrorStops }) => exposureErrorStops!,
    threshold: 2 / 3,
    band: 0.05,
  },
  {
    rule: 'highlight-clips',
    says: 'brighter than the body records',
    change: glossy,
    fine: 7,
    wrong: 1,
    figure: ({ overGreyStops, latitudeStops }) => overGreyStops! - latitudeStops!,
    threshold: 0,
    band: 0.18,
  },
  {
    rule: 'highlight-clips',
    says: 'up to 1 stop over, a warning above',
    severities: LOUD,
    change: glossy,
    fine: 7,
    wrong: 1,
    figure: ({ overGreyStops, latitudeStops }) => overGreyStops! - latitudeStops!,
    threshold: 1,
    band: 0.01,
  },
  {
    rule: 'vibration-seen',
    says: 'by more than one pixel',
    change: shaken,
    fine: 1,
    wrong: 200,
    figure: ({ jitterPx }) => jitterPx!,
    threshold: 1,
    band: 0.06,
  },
  {
    rule: 'vibration-seen',
    says: 'a warning above 3',
    severities: LOUD,
    change: shaken,
    fine: 1,
    wrong: 400,
    figure: ({ jitterPx }) => jitterPx!,
    threshold: 3,
    band: 0.17,
  },
  {
    rule: 'lamp-flicker',
    says: 'more than 2% flicker',
    change: (thousandths) => ({
      'shots/frost/light': '[bulb]',
      'shots/frost/shutter': `${thousandths / 1000} s`,
    }),
    fine: 10,
    wrong: 12.5,
    figure: ({ flickerResidual }) => flickerResidual!,
    threshold: 0.02,
    band: 0.001,
  },
  {
    rule: 'motion-blur',
    says: 'more than one pixel per frame',
    change: flow,
    fine: 0.1,
    wrong: 8,
    figure: ({ smearPx }) => smearPx!,
    threshold: 1,
    band: 0.06,
  },
  {
    rule: 'motion-blur',
    says: 'a warning above 2',
    severities: LOUD,
    change: flow,
    fine: 0.1,
    wrong: 8,
    figure: ({ smearPx }) => smearPx!,
    threshold: 2,
    band: 0.11,
  },
  {
    rule: 'uneven-light',
    says: 'A note above 1/2 stop',
    change: near,
    fine: 600,
    wrong: 60,
    figure: ({ unevennessStops }) => unevennessStops!,
    threshold: 0.5,
    band: 0.06,
  },
  {
    rule: 'uneven-light',
    says: 'a warning above 1 stop',
    severities: LOUD,
    change: near,
    fine: 600,
    wrong: 60,
    figure: ({ unevennessStops }) => unevennessStops!,
    threshold: 1,
    band: 0.06,
  },
  {
    rule: 'boom-may-tip',
    says: 'is below 1.5',
    change: boom,
    fine: 2000,
    wrong: 10,
    figure: ({ stabilityFactor }) => -stabilityFactor!,
    threshold: -1.5,
    band: 0.02,
  },
  {
    rule: 'boom-may-tip',
    says: 'an error below 1',
    severities: ['error'],
    change: boom,
    fine: 2000,
    wrong: 10,
    figure: ({ stabilityFactor }) => -stabilityFactor!,
    threshold: -1,
    band: 0.02,
  },
  {
    rule: 'diffraction-eats-detail',
    says: 'less than 45% contrast',
    change: stopped,
    fine: 2.8,
    wrong: 32,
    figure: ({ contrast }) => -contrast!,
    threshold: -0.45,
    band: 0.01,
  },
  {
    rule: 'diffraction-eats-detail',
    says: 'a warning below 20%',
    severities: LOUD,
    change: stopped,
    fine: 2.8,
    wrong: 32,
    figure: ({ contrast }) => -contrast!,
    threshold: -0.2,
    band: 0.01,
  },
  {
    rule: 'background-washes',
    says: 'brighter than 1/20 of its reflection',
    change: (luminance) => ({ 'shots/skin/background-luminance': `${luminance} cd/m2` }),
    fine: 0.2,
    wrong: 200,
    figure: ({ strayRatio }) => strayRatio!,
    threshold: 1 / 20,
    band: 0.008,
  },
  {
    rule: 'focus-breathes',
    says: 'above 3% over a focus pull',
    change: (to) => ({
      'shots/frost/move': `{ kind: focus-pull, from: 0.38 m, to: ${to} mm, duration: 10 s }`,
    }),
    fine: 381,
    wrong: 430,
    figure: ({ breathing }) => breathing!,
    threshold: 0.03,
    band: 0.001,
  },
  {
    rule: 'crosses-too-fast',
    says: 'in less than 7 seconds',
    change: (speed) => ({
      'shots/frost/move': `{ kind: slide, speed: ${speed} mm/s }`,
      'shots/frost/shutter': '1/1000 s',
      'shots/frost/iso': 'auto',
    }),
    fine: 0.8,
    wrong: 20,
    figure: ({ crossingS }) => -crossingS!,
    threshold: -7,
    band: 0.4,
  },
  {
    rule: 'colour-rendering-low',
    says: '`cri` or `tlci` below 90',
    change: (cri) => ({ 'lights/panel/cri': cri.toFixed(0) }),
    fine: 96,
    wrong: 80,
    figure: ({ cri }) => -cri!,
    threshold: -90,
    band: 1.1,
  },
  {
    rule: 'rig-pitches',
    says: 'more than 20 mm from its foot',
    change: (foot) => ({ 'rigs/bench/support': `{ foot: ${foot} mm }` }),
    fine: 62,
    wrong: 0,
    figure: ({ centreOfGravityMm, footMm }) => centreOfGravityMm! - footMm!,
    threshold: 20,
    band: 0.2,
  },
  {
    rule: 'take-exceeds-lifetime',
    says: 'longer than the film lasts',
    change: lasting,
    fine: 10,
    wrong: 100,
    figure: ({ takeS, lifeS }) => takeS! / lifeS!,
    threshold: 1,
    band: 0.01,
  },
  {
    rule: 'take-exceeds-lifetime',
    says: 'an error above twice as long',
    severities: ['error'],
    change: lasting,
    fine: 10,
    wrong: 100,
    figure: ({ takeS, lifeS }) => takeS! / lifeS!,
    threshold: 2,
    band: 0.01,
  },
  {
    rule: 'no-room',
    says: 'the working distance is less than 20 mm',
    change: (length) => ({
      'shots/frost/rig': 'crowded',
      'shots/frost/field': null,
      'shots/frost/ring': 'closest',
      'shots/frost/iso': 'auto',
      'subjects/frost-plate/depth': '0.5 mm',
      'kit/lenses/short-50/length': `${length} mm`,
    }),
    fine: 20,
    wrong: 95,
    figure: ({ workingDistanceMm }) => -workingDistanceMm!,
    threshold: -20,
    band: 0.2,
  },
  {
    // Turning a filter matters from the third of a stop on in which settings step: common practice.
    rule: 'polariser-idle',
    says: 'reflects nearly straight back',
    change: (tilt) => withPolariser({ 'shots/skin/tilt': `${tilt} deg` }),
    fine: 40,
    wrong: 4,
    figure: ({ swingStops }) => -swingStops!,
    threshold: -1 / 3,
    band: 0.01,
  },
  {
    rule: 'depth-short',
    says: 'less than the subject, its tilt and the move need',
    change: (aperture) => ({ 'shots/frost/aperture': `f/${aperture}`, 'shots/frost/iso': 'auto' }),
    fine: 16,
    wrong: 2.8,
    figure: ({ depthMm, neededMm }) => neededMm! / depthMm!,
    threshold: 1,
    band: 0.06,
  },
  {
    rule: 'reframed-too-far',
    says: 'beyond its recorded resolution',
    change: (reframe) => withCuts({ one: `shot: frost, duration: 4 s, reframe: ${reframe}x` }),
    fine: 1,
    wrong: 1.2,
    figure: ({ reframe, headroom }) => reframe! / headroom!,
    threshold: 1,
    band: 0.006,
  },
];

const HALVINGS = 10;
const core = coreWith(EXAMPLE_PLAN);

/** One core for all: what a change leaves alone is not calculated anew. */
function saidOf(text: string): readonly LocatedFinding[] {
  core.give(PLAN, text);
  return core.findings(PLAN);
}

/** The finding nearest to the edge, from the wrong side. */
function atTheEdge({ rule, severities, change, fine, wrong }: Edge): LocatedFinding {
  const found = (value: number) =>
    saidOf(changed(EXAMPLE_PLAN, change(value))).find(
      (finding) =>
        finding.rule === rule &&
        (severities === undefined || severities.includes(finding.severity)),
    );
  expect(found(fine), 'said of what is fine').toBeUndefined();
  let [silent, spoken, last] = [fine, wrong, found(wrong)];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (silent + spoken) / 2;
    const finding = found(middle);
    if (finding) [spoken, last] = [middle, finding];
    else silent = middle;
  }
  if (last === undefined) throw new Error('not said of what is wrong');
  return last;
}

describe('a threshold is where the documentation has it', () => {
  it.each(EDGES)('$rule: $says', (edge) => {
    const docs = ALL_RULES.find(({ name }) => name === edge.rule)!.docs;
    expect(docs.when).toContain(edge.says);
    const figure = edge.figure(atTheEdge(edge).numbers ?? {});
    expect(figure).toBeGreaterThanOrEqual(edge.threshold - 1e-9);
    expect(figure).toBeLessThan(edge.threshold + edge.band);
  });
});
