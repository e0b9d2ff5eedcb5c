/** Exposures that were found otherwise than planned, as a row of the body's `bench`. */
import { kindOf } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import type { DayExposure } from './day.ts';
import type { PlanText } from './plan-text.ts';
import type { Told } from './told.ts';
import { saysSame, stopsOf } from './value.ts';
import { flowMap } from './write.ts';

/** Two test frames, each found to 0.2 stops as the bench assumes, differ by no more. */
const MOST_SPREAD_STOPS = 0.4;
/** No body is set finer, and no histogram read. */
const LEAST_STOPS = 0.1;

interface Found extends DayExposure {
  /** Against the plan; positive is brighter. */
  readonly offset: number;
}

export function proposeExposures(
  exposures: readonly DayExposure[],
  plan: PlanText,
  told: Told,
): void {
  const byBody = new Map<string, Found[]>();
  for (const one of exposures) {
    const offset = stopsOf(one.found) - stopsOf(one.planned);
    byBody.set(one.body, [...(byBody.get(one.body) ?? []), { ...one, offset }]);
  }
  for (const [body, found] of byBody) proposeBody(body, found, plan, told);
}

function proposeBody(body: string, found: readonly Found[], plan: PlanText, told: Told): void {
  const lights = new Map<string, number[]>();
  for (const { lights: names, offset } of found) {
    const key = names.join(', ');
    lights.set(key, [...(lights.get(key) ?? []), offset]);
  }
  if (lights.size < 2) {
    told.keep(
      message`Exposure with ${body} was found under one light only. A second light tells whether body or light differs.`,
    );
    return;
  }
  const offsets = found.map(({ offset }) => offset);
  if (Math.max(...offsets) - Math.min(...offsets) > MOST_SPREAD_STOPS) {
    const by = [...lights].map(([names, own]) => message`${words(mean(own))} with ${names}`);
    told.keep(
      message`Exposures found with ${body} differ by light: ${by.join('; ')}. Read the lights again.`,
    );
    return;
  }
  const offset = Math.round(mean(offsets) * 10) / 10;
  if (Math.abs(offset) < LEAST_STOPS) {
    told.keep(message`Exposure with ${body} was found as planned.`);
    return;
  }
  const row = { set: mostOften(found.map(({ iso }) => iso)), found: words(offset) };
  writeRow(body, row, plan, told);
}

function writeRow(
  body: string,
  row: { readonly set: string; readonly found: string },
  plan: PlanText,
  told: Told,
): void {
  const written = flowMap(Object.entries(row));
  if (!plan.has('kit', 'bodies', body)) {
    told.keep(message`This file has no body ${body}. Add to its \`bench\`: ${written}`);
    return;
  }
  const path = ['kit', 'bodies', body, 'bench'];
  const list = plan.at(...path);
  const count = list?.kind === 'seq' ? list.items.length : 0;
  const says = (index: number, key: 'set' | 'found', kind: 'iso' | 'over-under') =>
    saysSame(plan.scalar(...path, index, key) ?? '', row[key], kind);
  const isThere = Array.from({ length: count }, (_, index) => index).some(
    (index) => says(index, 'set', 'iso') && says(index, 'found', 'over-under'),
  );
  if (isThere) return;
  // The plan calculates with its rows already, so what was found comes on top of them.
  if (count > 0 || (list !== null && list.kind !== 'seq'))
    told.keep(
      message`\`bench\` of ${body} has rows already; the day found ${row.found} on top of them.`,
    );
  else if (plan.set(path, `- ${written}\n`))
    told.bring(message`Bench of ${body}: ${row.found} at ISO ${row.set}.`);
  else told.leave(message`Bench of ${body} can't be written where it belongs.`);
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, one) => sum + one, 0) / values.length;

const words = (stops: number): string =>
  kindOf('over-under').print(Math.round(stops * 10) / 10 + 0);

/** The first of those that are most often there. */
function mostOften(texts: readonly string[]): string {
  const count = (text: string): number => texts.filter((one) => one === text).length;
  return texts.reduce((best, one) => (count(one) > count(best) ? one : best));
}
