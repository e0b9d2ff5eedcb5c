/** The summary of a shot that rules about the whole plan read. */
import type { Bench } from '../figures/bench.ts';
import { needsOf } from '../figures/needs.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { addsRearReflection, HOLDERS, longerHolders } from '../film/life.ts';
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
    ? lights.value.flatMap((light) => ifKnown(light.fields.colour) ?? [])
    : [];
  return {
    shot: bench.shot,
    at: bench.at,
    needs: needsOf(figures),
    whiteBalance: isKnown(whiteBalance) ? { value: whiteBalance.value, at: whiteBalance.at } : null,
    lightColours: [...new Set(colours)].sort((a, b) => a - b),
    holder: holderOf(bench),
    acceptedByPlan,
  };
}

/** Only holders whose usual life is known can be compared. */
function holderOf({ subject }: Bench): ShotSummary['holder'] {
  if (!subject || ifKnown(subject.fields.kind) !== 'film') return null;
  const { holder, stands } = subject.fields;
  const stance = ifKnown(stands);
  const held = HOLDERS.find((each) => each === ifKnown(holder));
  const enclosed = ifKnown(holder) === 'enclosed holder';
  if (!held && !enclosed) return null;
  return {
    at: holder.at,
    subject: subject.name,
    holder: ifKnown(holder) ?? '',
    longer: held && stance ? longerHolders(stance, held) : [],
    // A level film is filmed from above, down into its vessel, which is kept dark.
    rear: enclosed || (held !== undefined && stance === 'upright' && addsRearReflection(held)),
  };
}
