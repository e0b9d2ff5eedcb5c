/** A shot's frame, traced from the plan: at once, or in slices between which a host can do other things. */
import type { DrawnFrame, FrameInMaking } from '../api/frame.ts';
import { reasonOf } from '../figures/figure.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { framing } from '../frame/frame.ts';
import { idOf, nameOf } from '../plan/entry-id.ts';
import type { FileId } from '../plan/place.ts';
import type { Context } from '../workspace/context.ts';
import type { PlanSpot } from './spot.ts';

/** Those that were drawn, by width, kept with the figures: an edit elsewhere leaves them alone. */
const made = new WeakMap<ShotFigures, Map<number, DrawnFrame>>();

/** null: no shot that can be read. */
export function startFrame(
  { analysis }: Context,
  file: FileId,
  shot: string,
  width: number,
): FrameInMaking | null {
  const id = idOf('shots', shot);
  const bench = analysis.bench(file, id);
  const figures = analysis.figures(file, id);
  if (!bench || !figures) return null;
  const kept = made.get(figures) ?? new Map<number, DrawnFrame>();
  made.set(figures, kept);
  const before = kept.get(width);
  if (before) return { work: () => before };
  const steps = framing(bench, figures, width);
  return {
    work(until) {
      for (;;) {
        const { done, value } = steps.next();
        if (done) {
          const drawn: DrawnFrame = value.known
            ? { ok: true, ...value.value }
            : { ok: false, why: reasonOf(value) };
          kept.set(width, drawn);
          return drawn;
        }
        if (until()) return null;
      }
    },
  };
}

export const drawnFrame = (
  context: Context,
  file: FileId,
  shot: string,
  width: number,
): DrawnFrame | null => startFrame(context, file, shot, width)?.work(() => false) ?? null;

/** The shot whose frame shows what stands at a spot: a tilt, a subject, or a film's thickness. */
export function shotShownAt({ analysis }: Context, { place }: PlanSpot): string | null {
  const { file, entry, path } = place;
  const [key] = path;
  if (path.length !== 1) return null;
  if (analysis.isShot(entry))
    return key === 'tilt' || key === 'subject' ? nameOf('shots', entry) : null;
  if (key !== 'thickness') return null;
  const shot = analysis.shots(file).find((id) => {
    const subject = analysis.bench(file, id)?.subject;
    return subject?.entry === entry && subject.file === file;
  });
  return shot === undefined ? null : nameOf('shots', shot);
}
