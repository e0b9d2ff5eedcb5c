/** The summary of a shot that rules about the whole plan read. */
import type { Bench } from '../figures/bench.ts';
import { carriedOf, heldLights, lightsWithCare } from '../figures/carried.ts';
import { dayShotOf } from '../figures/day-plan.ts';
import { disagreementsOf } from '../figures/disagreement.ts';
import { footageOf } from '../figures/edit-footage.ts';
import type { Need } from '../figures/figure.ts';
import { holderOf } from '../figures/holder.ts';
import { needsOf } from '../figures/needs.ts';
import { takesOfShot } from '../figures/recording.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { ifKnown, isKnown } from '../plan/field.ts';
import { checksCalledFor, isJudged, missingChecks } from '../rules/checks-called-for.ts';
import type { ChecksOfShot, ColouredLight, Rendering, ShotSummary } from '../rules/plan-rule.ts';
import { unknownVitals } from '../rules/readiness.ts';
import type { Finding } from '../rules/rule.ts';
import type { FoundInShot } from './shot-findings.ts';

export function summaryOf(
  bench: Bench,
  figures: ShotFigures,
  { byPlan, lacksChecks, betterMode }: FoundInShot,
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
    lit: litOf(bench),
    rendering: renderingOf(bench),
    holder: holderOf(bench),
    carried: carriedOf(bench, figures),
    takes: takesOfShot(bench, figures),
    footage: footageOf(bench),
    day: dayShotOf(bench, figures),
    care: lightsWithCare(bench),
    heldLights: heldLights(bench),
    disagreements: disagreementsOf(bench),
    unknown: unknownVitals(bench, figures),
    checks: checksOfShot(bench, lacksChecks),
    betterMode: betterMode && { at: betterMode.at, facts: betterMode.facts },
    acceptedByPlan: byPlan,
  };
}

function litOf({ lights }: Bench): readonly ColouredLight[] | null {
  if (!lights.known) return null;
  const lit: ColouredLight[] = [];
  for (const { name, fields, gelShift } of lights.value) {
    const kelvin = ifKnown(fields['colour-temperature']);
    if (kelvin === undefined || gelShift === null) return null;
    lit.push({ light: name, kelvin, shift: gelShift });
  }
  return lit;
}

const INDICES = ['cri', 'tlci'] as const;

const renderingOf = ({ lights }: Bench): readonly Rendering[] =>
  lights.known
    ? lights.value.flatMap(({ name, fields }) =>
        INDICES.flatMap((index): Rendering[] => {
          const field = fields[index];
          return isKnown(field) ? [{ light: name, index, value: field.value, at: field.at }] : [];
        }),
      )
    : [];

const namesOf = (checks: readonly { readonly name: string }[]): readonly string[] =>
  checks.map(({ name }) => name);

/** @param lacks some that nothing accepts */
function checksOfShot(bench: Bench, lacks: boolean): ChecksOfShot {
  const { preflight } = bench.fields;
  const judged = isJudged(bench);
  const missing = judged ? namesOf(missingChecks(bench)) : [];
  return {
    judged,
    calledFor: namesOf(checksCalledFor(bench)),
    missing: lacks ? missing : [],
    accepted: lacks ? [] : missing,
    own: { at: preflight.at, count: ifKnown(preflight)?.size ?? 0 },
  };
}

/** The value that would settle a probable finding, where one of the plan would. */
export function settledBy({ unsure }: Finding): readonly Need[] {
  if (!unsure) return [];
  const { key, of, at } = unsure.input;
  return of !== null && at !== null ? [{ key, of, at }] : [];
}
