/** The summary of a shot that rules about the whole plan read. */
import type { Bench } from '../figures/bench.ts';
import { carriedOf, lightsWithCare } from '../figures/carried.ts';
import { disagreementsOf } from '../figures/disagreement.ts';
import { footageOf } from '../figures/edit-footage.ts';
import { holderOf } from '../figures/holder.ts';
import { needsOf } from '../figures/needs.ts';
import { takesOfShot } from '../figures/recording.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { ifKnown, isKnown } from '../plan/field.ts';
import type { ShotSummary } from '../rules/plan-rule.ts';

export function summaryOf(
  bench: Bench,
  figures: ShotFigures,
  acceptedByPlan: readonly string[],
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
    acceptedByPlan,
  };
}
