/** The summary of a shot that rules about the whole plan read. */
import type { Bench } from '../figures/bench.ts';
import { carriedOf, lightsWithCare } from '../figures/carried.ts';
import { disagreementsOf } from '../figures/disagreement.ts';
import { footageOf } from '../figures/edit-footage.ts';
import type { Need } from '../figures/figure.ts';
import { holderOf } from '../figures/holder.ts';
import { needsOf } from '../figures/needs.ts';
import { takesOfShot } from '../figures/recording.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { ifKnown, isKnown } from '../plan/field.ts';
import type { Accepted } from '../rules/acceptance.ts';
import type { ShotSummary } from '../rules/plan-rule.ts';
import type { Finding } from '../rules/rule.ts';

export function summaryOf(
  bench: Bench,
  figures: ShotFigures,
  { findings, byPlan }: Accepted,
): ShotSummary {
  const { fields, lights } = bench;
  const whiteBalance = fields['white-balance'];
  const colours = lights.known
    ? lights.value.flatMap((light) => ifKnown(light.fields['colour-temperature']) ?? [])
    : [];
  return {
    shot: bench.shot,
    at: bench.at,
    needs: needsOf(figures),
    whiteBalance: isKnown(whiteBalance) ? { value: whiteBalance.value, at: whiteBalance.at } : null,
    lightColours: [...new Set(colours)].sort((a, b) => a - b),
    holder: holderOf(bench),
    carried: carriedOf(bench, figures),
    takes: takesOfShot(bench),
    footage: footageOf(bench),
    care: lightsWithCare(bench),
    disagreements: disagreementsOf(bench),
    acceptedByPlan: byPlan,
    unsure: findings.flatMap(settledBy),
  };
}

/** The value that would settle a probable finding, where one of the plan would. */
function settledBy({ unsure }: Finding): readonly Need[] {
  if (!unsure) return [];
  const { key, of, at } = unsure.input;
  return of !== null && at !== null ? [{ key, of, at }] : [];
}
