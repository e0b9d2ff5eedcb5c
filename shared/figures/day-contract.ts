/** The day as JSON, in the names and the order of its catalogue. */
import { DAY, DAY_SHOT } from './catalogue/day.ts';
import type { DayFigures } from './day-figures.ts';
import type { DayJson, DayShotJson } from './day-json.ts';
import { toldOf } from './edit-contract.ts';

export function dayJson(day: DayFigures | null): DayJson | null {
  if (!day) return null;
  const shots = day.steps.map((step) => toldOf(DAY_SHOT, step, day) as unknown as DayShotJson);
  const { notKnown, ...told } = toldOf(DAY, day);
  return { ...told, shots, notKnown } as unknown as DayJson;
}
