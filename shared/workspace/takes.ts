/** Takes of a shot: how many are planned, and what was recorded. */
import { valueIn } from '../figures/figure.ts';
import { takesOf } from '../figures/take-length.ts';
import { idOf, nameOf } from '../plan/entry-id.ts';
import { ifKnown } from '../plan/field.ts';
import type { Clip } from '../plan/generated/types.ts';
import type { FileId } from '../plan/place.ts';
import { message } from '../words/message.ts';
import type { Analysis } from './analysis.ts';

/** Clips of a shot, with those that have no file yet, in the order of the list. */
export const takesListed = (analysis: Analysis, file: FileId, shot: string): readonly Clip[] =>
  analysis.reader(file).clipsOf(shot);

interface TakeCounts {
  /** null: not known. */
  readonly planned: number | null;
  readonly kept: number;
  /** Planned takes that aren't kept yet; null: not known. */
  readonly toGo: number | null;
}

/** null: nothing is listed. */
function countsOf(analysis: Analysis, file: FileId, shot: string): TakeCounts | null {
  const clips = takesListed(analysis, file, shot);
  if (clips.length === 0) return null;
  const bench = analysis.bench(file, idOf('shots', shot));
  const planned = (bench && valueIn(takesOf(bench))) ?? null;
  const kept = clips.filter(({ verdict }) => ifKnown(verdict) === 'keep').length;
  return { planned, kept, toGo: planned === null ? null : Math.max(0, planned - kept) };
}

/** "4 planned, 1 kept, 3 to go"; null: nothing is listed. */
export function takeWords(analysis: Analysis, file: FileId, shot: string): string | null {
  const counts = countsOf(analysis, file, shot);
  if (counts === null) return null;
  const { planned, kept, toGo } = counts;
  if (planned === null) return message`${kept} kept`;
  return toGo === 0
    ? message`${planned} planned, ${kept} kept`
    : message`${planned} planned, ${kept} kept, ${toGo ?? 0} to go`;
}

/** Whether as many takes are kept as were planned. */
export const hasAllTakes = (analysis: Analysis, file: FileId, shot: string): boolean =>
  countsOf(analysis, file, shot)?.toGo === 0;

/** Takes of all shots that aren't kept yet; undefined: the plan lists no clips. */
export function takesToGo(analysis: Analysis, file: FileId): number | undefined {
  if (!analysis.entries.list(file).some(({ kind }) => kind.kind === 'clips')) return undefined;
  return analysis.shots(file).reduce((sum, id) => {
    const counts = countsOf(analysis, file, nameOf('shots', id));
    const bench = counts === null ? analysis.bench(file, id) : null;
    return sum + (counts ? (counts.toGo ?? 0) : ((bench && valueIn(takesOf(bench))) ?? 0));
  }, 0);
}
