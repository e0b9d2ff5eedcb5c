/**
 * One cause, one finding: wherever two rules would both speak, the table says which does. Every pair
 * of it is shown: the loser speaks without the winner's cause, and is silent as soon as that is there.
 */

import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { AT_INTERVALS } from '../../shared/rules/fewer-frames.ts';
import { PRECEDENCE, withoutSilenced } from '../../shared/rules/precedence.ts';
import { RULE_NAMES } from '../../shared/rules/registry.ts';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { runShotRules } from '../../shared/workspace/shot-findings.ts';
import { Store } from '../../shared/workspace/store.ts';
import { laws } from '../support/each.ts';
import { entryId } from '../support/entry-id.ts';
import { changed, findingsOf, PLAN, ROOT } from '../support/plans.ts';

type Change = Readonly<Record<string, string | null>>;

/** A rig that frames 30 mm with little detail left, and light enough for it. */
const STACKED: Change = {
  'shots/frost/rig': 'stacked',
  'shots/frost/field': '30 mm',
  'shots/frost/aperture': 'f/22',
  'shots/frost/iso': 'auto',
  'lights/panel/reading': '{ aperture: f/32, shutter: 1/50 s, iso: 400, through: meter }',
};

/** In which shot, what makes the loser speak there, and what then gives the winner its cause. */
interface Pair {
  readonly shot: 'frost' | 'skin';
  readonly loser: Change;
  readonly winner: Change;
  /** The numbers that the loser judges by are not known once the winner has its cause. */
  readonly unmet?: true;
}

const frost = (loser: Change, winner: Change, unmet?: true): Pair => ({
  shot: 'frost',
  loser,
  winner,
  ...(unmet && { unmet }),
});
const skin = (loser: Change, winner: Change, unmet?: true): Pair => ({
  ...frost(loser, winner, unmet),
  shot: 'skin',
});

const TOO_NEAR: Change = { 'shots/frost/field': '6 mm' };
const TOO_NEAR_A_FILM: Change = { 'shots/skin/field': '2 mm' };
const NOT_ON_LENS: Change = { 'shots/frost/aperture': 'f/64' };
const TOO_SLOW: Change = { 'shots/frost/shutter': '1/15 s' };
const UPRIGHT: Change = { 'shots/skin/tilt': '1 deg' };
const SMALL: Change = { 'shots/frost/record': 'small-25' };
const TOO_DARK: Change = { 'shots/frost/iso': '200' };
const TOO_HIGH: Change = { 'shots/frost/iso': '102400' };

/** A polished plate, in which the lamp burns out. */
const POLISHED: Change = {
  'subjects/frost-plate/finish': 'gloss',
  'subjects/frost-plate/reflectance': '80 %',
};
const STACK = '{ with: rail, settle: 4 s }';
const STACKED_DEEP: Change = {
  'subjects/frost-plate/depth': '20 mm',
  'shots/frost/stack': STACK,
  'preflight/once/stack-ends-checked': 'open',
};
const CREEPING: Change = { 'shots/frost/subject-speed': '0.1 mm/s' };

const PAIRS: Readonly<Record<string, Pair>> = {
  'moves-in-stack > stack-short': frost(
    { ...STACKED_DEEP, 'shots/frost/stack': '{ with: rail, frames: 3, settle: 4 s }' },
    CREEPING,
  ),
  'moves-in-stack > stack-steps-too-coarse': frost(
    {
      ...STACKED_DEEP,
      'kit/rails': '{ coarse: { travel: 100 mm, smallest-step: 4 mm } }',
      'rigs/bench/support': '{ rail: coarse }',
    },
    CREEPING,
  ),
  'moves-in-stack > stack-outlasts-subject': frost(
    { ...STACKED_DEEP, 'subjects/frost-plate/lifetime': '10 s' },
    CREEPING,
  ),
  'field-out-of-reach > no-room': skin(
    { 'lights/strip/at': '{ distance: 300 mm, elevation: 3 deg }' },
    TOO_NEAR_A_FILM,
    true,
  ),
  'field-out-of-reach > effective-aperture': frost({}, { 'shots/frost/field': '6 mm' }, true),
  'field-out-of-reach > depth-short': frost({ 'shots/frost/aperture': 'f/4' }, TOO_NEAR, true),
  'field-out-of-reach > diffraction-eats-detail': frost(STACKED, TOO_NEAR, true),
  'field-out-of-reach > exposure-off': frost(TOO_DARK, TOO_NEAR, true),
  'field-out-of-reach > iso-out-of-range': frost(TOO_HIGH, TOO_NEAR),
  'field-out-of-reach > highlight-clips': frost(POLISHED, TOO_NEAR, true),
  'aperture-not-on-lens > highlight-clips': frost(POLISHED, { 'shots/frost/aperture': 'f/1.4' }),
  'shutter-too-slow > highlight-clips': frost(POLISHED, TOO_SLOW),
  'exposure-off > highlight-clips': frost(POLISHED, { 'shots/frost/iso': '3200' }),
  'iso-out-of-range > highlight-clips': frost(POLISHED, TOO_HIGH),
  'field-out-of-reach > lens-reflected': skin(UPRIGHT, TOO_NEAR_A_FILM, true),
  'field-out-of-reach > source-too-small': skin(
    { 'lights/strip/at': '{ distance: 300 mm, elevation: 40 deg }' },
    TOO_NEAR_A_FILM,
    true,
  ),
  'field-out-of-reach > background-washes': skin(
    { 'shots/skin/background-luminance': '60 cd/m2' },
    TOO_NEAR_A_FILM,
  ),
  'field-out-of-reach > backlight-too-small': frost(
    {
      'subjects/frost-plate/transmittance': '90 %',
      'lights/panel/at': '{ distance: 1000 mm, azimuth: 180 deg }',
      'lights/panel/emitting-size': '50 x 50 mm',
    },
    TOO_NEAR,
    true,
  ),
  'field-out-of-reach > motion-blur': skin(
    { 'shots/skin/subject-speed': '8 mm/s' },
    TOO_NEAR_A_FILM,
    true,
  ),
  'field-out-of-reach > focus-drifts': skin(
    { 'shots/skin/move': '{ kind: slide, speed: 4 mm/s, along: upright }' },
    TOO_NEAR_A_FILM,
    true,
  ),
  'motion-blur > crosses-too-fast': frost(
    { 'shots/frost/move': '{ kind: slide, speed: 10 mm/s }', 'shots/frost/shutter': '1/1000 s' },
    { 'shots/frost/shutter': '1/50 s' },
  ),
  'shutter-too-slow > motion-blur': frost({ 'shots/frost/subject-speed': '8 mm/s' }, TOO_SLOW),
  'interval-does-not-fit > growth-jumps': frost(
    { ...AT_INTERVALS, 'shots/frost/subject-speed': '2 mm/min' },
    { 'kit/bodies/body-a/stills': '{ write: 30 s }' },
  ),
  'focus-drifts > depth-short': frost(
    { 'subjects/frost-plate/depth': '2.2 mm' },
    { 'shots/frost/move': '{ kind: push-in, speed: 1 mm/s, duration: 20 s }' },
  ),
  'aperture-not-on-lens > effective-aperture': frost({}, NOT_ON_LENS),
  'aperture-not-on-lens > depth-short': frost(
    { 'shots/frost/aperture': 'f/4' },
    { 'shots/frost/aperture': 'f/1.4' },
  ),
  'aperture-not-on-lens > diffraction-eats-detail': frost(STACKED, NOT_ON_LENS),
  'aperture-not-on-lens > exposure-off': frost(TOO_DARK, NOT_ON_LENS),
  'aperture-not-on-lens > iso-out-of-range': frost(TOO_HIGH, NOT_ON_LENS),
  'smaller-than-delivery > better-recording-mode': frost(
    {
      'shots/frost/record': 'thin-25',
      'kit/bodies/body-a/recording-modes/small-50':
        '{ resolution: 1280 x 720, rate: 50 fps, bitrate: 30 Mb/s, area: 36 x 20.25 mm }',
    },
    SMALL,
  ),
  'smaller-than-delivery > diffraction-eats-detail': frost(
    { ...STACKED, 'shots/frost/aperture': 'f/32' },
    SMALL,
  ),
  'shutter-too-slow > lamp-flicker': frost(
    { 'shots/frost/light': '[bulb]', 'shots/frost/shutter': '1/80 s' },
    TOO_SLOW,
  ),
  'shutter-too-slow > exposure-off': frost({ 'shots/frost/iso': '3200' }, TOO_SLOW),
  'shutter-too-slow > iso-out-of-range': frost(TOO_HIGH, TOO_SLOW),
  'depth-short > diffraction-eats-detail': frost(
    { ...STACKED, 'shots/frost/aperture': 'f/32' },
    { 'subjects/frost-plate/depth': '60 mm' },
  ),
  // At f/4 no tilt is left that hides the lens and holds the depth.
  'lens-reflected > depth-short': skin(
    { 'shots/skin/aperture': 'f/8', 'shots/skin/tilt': '6 deg' },
    { 'shots/skin/aperture': 'f/4' },
  ),
  'lens-reflected > source-too-small': skin(
    { 'lights/strip/at': '{ distance: 300 mm, elevation: 40 deg }' },
    UPRIGHT,
  ),
  'iso-out-of-range > exposure-off': frost({ 'shots/frost/iso': '3200' }, TOO_HIGH),
};

/** Rules that speak in a shot before any silences another. */
function spoken(text: string, shot: string): readonly string[] {
  const store = new Store();
  const analysis = new Analysis(store, { rootOf: () => ROOT });
  store.give(PLAN, text);
  const bench = analysis.bench(PLAN, entryId(`shots/${shot}`))!;
  const figures = analysis.figures(PLAN, entryId(`shots/${shot}`))!;
  return runShotRules({ bench, figures }).map(({ rule }) => rule);
}

/** In the shot, or once for all shots of the plan. */
const said = (text: string, shot: string): readonly string[] =>
  findingsOf(text).flatMap((finding) => ((finding.shot ?? shot) === shot ? [finding.rule] : []));

const table = Object.entries(PRECEDENCE).flatMap(([winner, losers]) =>
  losers.map((loser) => [winner, loser] as const),
);

describe('the table', () => {
  it('names only rules that are there, and no two that silence each other', () => {
    for (const [winner, loser] of table) {
      expect(RULE_NAMES).toContain(winner);
      expect(RULE_NAMES).toContain(loser);
      expect(PRECEDENCE[loser] ?? [], `${winner} and ${loser}`).not.toContain(winner);
    }
  });

  it('has a plan here for each of its pairs', () => {
    expect(Object.keys(PAIRS).sort()).toEqual(table.map((pair) => pair.join(' > ')).sort());
  });
});

const shown = table.flatMap(([winner, loser]) => {
  const pair = PAIRS[`${winner} > ${loser}`];
  return pair ? [{ winner, loser, pair }] : [];
});

laws(
  shown,
  ({ winner, loser }) => `${winner} before ${loser}`,
  ({ winner, loser, pair }, law) => {
    const without = changed(EXAMPLE_PLAN, pair.loser);
    const both = changed(without, pair.winner);

    law('the second speaks where the first has no cause', () => {
      const rules = said(without, pair.shot);
      expect(rules).toContain(loser);
      expect(rules).not.toContain(winner);
    });

    law(
      `with both causes, ${pair.unmet ? 'the second has nothing to judge by' : 'both would speak'}`,
      () => {
        const rules = spoken(both, pair.shot);
        expect(rules).toContain(winner);
        expect(rules.includes(loser)).toBe(!pair.unmet);
      },
    );

    law('only the first is heard', () => {
      const rules = said(both, pair.shot);
      expect(rules).toContain(winner);
      expect(rules).not.toContain(loser);
    });

    law('whatever figures there are', () => {
      expect(withoutSilenced([{ rule: loser }, { rule: winner }])).toEqual([{ rule: winner }]);
      expect(withoutSilenced([{ rule: loser }])).toEqual([{ rule: loser }]);
    });
  },
);
