/** A shot's frame, traced from the plan. */
import type { DrawnFrame } from '../api/frame.ts';
import { reasonOf } from '../figures/figure.ts';
import { frameOf } from '../frame/frame.ts';
import { idOf } from '../plan/entry-id.ts';
import type { FileId } from '../plan/place.ts';
import type { Context } from '../workspace/context.ts';

/** null: no shot that can be read. */
export function drawnFrame(
  { analysis }: Context,
  file: FileId,
  shot: string,
  width: number,
): DrawnFrame | null {
  const id = idOf('shots', shot);
  const bench = analysis.bench(file, id);
  const figures = analysis.figures(file, id);
  if (!bench || !figures) return null;
  const frame = frameOf(bench, figures, width);
  return frame.known ? { ok: true, ...frame.value } : { ok: false, why: reasonOf(frame) };
}
