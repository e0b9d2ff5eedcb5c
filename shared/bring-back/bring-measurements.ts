/** Measurements of lenses as rows of their `bench`. */
import { message } from '../words/message.ts';
import { type DayMeasurement, MEASURED_KINDS } from './day.ts';
import type { PlanText } from './plan-text.ts';
import { sameAs, settle } from './three-ways.ts';
import type { Told } from './told.ts';
import { saysSame } from './value.ts';
import { flowMap } from './write.ts';

export function bringMeasurements(
  measurements: readonly DayMeasurement[],
  plan: PlanText,
  told: Told,
): void {
  for (const measurement of measurements) bringMeasurement(measurement, plan, told);
}

function bringMeasurement(measurement: DayMeasurement, plan: PlanText, told: Told): void {
  const { lens, parts, ring, values } = measurement;
  const of = message`Measurement of ${lens} at ${ring}`;
  if (values.size === 0) return;
  if (!plan.has('kit', 'lenses', lens)) {
    told.leave(message`${of}: this file has no such lens. Add the row where the lens is.`);
    return;
  }
  const path = ['kit', 'lenses', lens, 'bench'];
  const list = plan.at(...path);
  if (list !== null && list.kind !== 'seq') {
    told.leave(message`${of}: \`bench\` is no list. It is left as it is.`);
    return;
  }
  const count = list?.items.length ?? 0;
  const index = Array.from({ length: count }, (_, at) => at).find((at) =>
    isSameSetup(measurement, plan, [...path, at]),
  );
  if (index !== undefined) {
    mergeInto(measurement, plan, [...path, index], of, told);
    return;
  }
  const row = flowMap([['with', `[${parts.join(', ')}]`], ['ring', ring], ...values]);
  const isWritten = count > 0 ? plan.set([...path, count], row) : plan.set(path, `- ${row}\n`);
  if (isWritten) told.bring(message`${of}: added.`);
  else told.leave(message`${of} can't be written where it belongs.`);
}

function isSameSetup(
  { parts, ring }: DayMeasurement,
  plan: PlanText,
  row: readonly (string | number)[],
): boolean {
  const list = plan.at(...row, 'with');
  const names =
    list?.kind === 'seq'
      ? list.items.map((item) => (item?.kind === 'scalar' ? item.text : ''))
      : null;
  const own = plan.scalar(...row, 'ring');
  return (
    names?.length === parts.length &&
    names.every((name, index) => name === parts[index]) &&
    own !== null &&
    saysSame(own, ring, 'ring')
  );
}

function mergeInto(
  { values, before }: DayMeasurement,
  plan: PlanText,
  row: readonly (string | number)[],
  of: string,
  told: Told,
): void {
  let added = 0;
  for (const [key, text] of values) {
    const path = [...row, key];
    if (plan.has(...path))
      settle(
        {
          key,
          now: plan.scalar(...path),
          day: text,
          before: before.flatMap((one) => one.get(key) ?? []),
          isSame: sameAs(MEASURED_KINDS[key]),
        },
        of,
        told,
        () => plan.set(path, text),
      );
    else if (plan.set(path, text)) added++;
    else told.leave(message`${of}: \`${key}\` can't be written where it belongs.`);
  }
  if (added > 0) told.bring(message`${of}: completed.`);
}
