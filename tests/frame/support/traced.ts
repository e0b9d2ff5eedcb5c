/** A shot of a plan's text, gathered and traced. */
import type { Bench } from '../../../shared/figures/bench.ts';
import type { ShotFigures } from '../../../shared/figures/shot-figures.ts';
import { type Gathered, gather } from '../../../shared/frame/gather.ts';
import { type FramePicture, type FrameSize, traceFrame } from '../../../shared/frame/trace.ts';
import { startChecking } from '../../../shared/workspace/checker.ts';
import { entryId } from '../../support/entry-id.ts';
import { PLAN, ROOT } from '../../support/plans.ts';

export interface LaidOutShot {
  readonly bench: Bench;
  readonly figures: ShotFigures;
}

export function laidOut(text: string, shot: string): LaidOutShot | undefined {
  const { context, checker } = startChecking({ rootOf: () => ROOT });
  checker.give(PLAN, text);
  const id = entryId(`shots/${shot}`);
  const [bench, figures] = [context.analysis.bench(PLAN, id), context.analysis.figures(PLAN, id)];
  return bench && figures && { bench, figures };
}

/** undefined: there is nothing to draw a frame of. */
export function traced(
  { bench, figures }: LaidOutShot,
  size: FrameSize,
): (Gathered & { readonly picture: FramePicture }) | undefined {
  const gathered = gather(bench, figures);
  return gathered.known
    ? { ...gathered.value, picture: traceFrame(gathered.value.scene, size) }
    : undefined;
}

/** Luminance of a pixel, linear; coefficients of IEC 61966-2-1. */
export const luminanceAt = ({ light }: FramePicture, index: number): number =>
  0.2126 * light[index * 3]! + 0.7152 * light[index * 3 + 1]! + 0.0722 * light[index * 3 + 2]!;
