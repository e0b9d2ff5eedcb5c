/** What a plan has come to: the count of its shots that are clear, its errors, takes and day. */
import type { PlanState } from '../api/facade.ts';
import { dayJson } from '../figures/day-contract.ts';
import type { FileId } from '../plan/place.ts';
import type { Analysis } from './analysis.ts';
import { hasAllTakes, takesToGo } from './takes.ts';

export function planState(analysis: Analysis, file: FileId): PlanState {
  const all = [...analysis.readiness(file).values()];
  const errors = analysis
    .findings(file)
    .filter(({ severity, at }) => severity === 'error' && at.file === file).length;
  const toGo = takesToGo(analysis, file);
  return {
    ready: all.filter(({ state }) => state === 'ready').length,
    shots: all.length,
    ...(errors > 0 && { errors }),
    ...(toGo !== undefined && { takesToGo: toGo }),
    ...dayState(analysis, file),
  };
}

/** How far the plan's day has come. */
function dayState(analysis: Analysis, file: FileId): Pick<PlanState, 'day'> {
  const day = dayJson(analysis.day(file));
  if (!day?.date) return {};
  const kept = day.shots.filter(({ shot }) => hasAllTakes(analysis, file, shot)).length;
  return { day: { date: day.date, shots: day.shots.length, kept } };
}
