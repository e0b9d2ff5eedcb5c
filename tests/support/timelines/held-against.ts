/** What a reader finds in a timeline, held against the plan frame by frame. */
import { expect } from 'vitest';
import type { EditJson } from '../../../shared/figures/edit-json.ts';
import { plannedFrame, type RandomEdit } from './edits.ts';
import type { ReadTimeline, ShownFrame } from './shown.ts';

/** Which cut is on at a frame of the edit. */
const cutAt = ({ cuts }: EditJson, frame: number): number =>
  cuts.findIndex(
    ({ startFrame, durationFrames }) =>
      frame >= startFrame! && frame < startFrame! + durationFrames!,
  );

export function expectPlanned(
  edit: RandomEdit,
  figures: EditJson,
  read: Pick<ReadTimeline, 'frames' | 'dissolves'>,
  format: string,
): void {
  expect(read.frames).toHaveLength(figures.totalFrames!);
  const compare = (shown: ShownFrame | null, index: number, frame: number): void => {
    const at = frame - figures.cuts[index]!.startFrame!;
    const planned = plannedFrame(edit, figures, index, at);
    const where = `${format}, frame ${frame}, ${figures.cuts[index]!.cut} at ${at}`;
    if (!planned.isThere) {
      // A ramp may come to the end of its clip a frame sooner or later.
      if (!planned.isRamp || shown === null) expect(shown, where).toBeNull();
      return;
    }
    expect(shown?.clip, where).toBe(planned.clip);
    const off = Math.abs(shown!.frame - planned.frame);
    expect(off, `${where}: ${shown!.frame} for ${planned.frame}`).toBeLessThanOrEqual(
      planned.isRamp ? 1 : 0,
    );
  };
  read.frames.forEach(({ own, out }, frame) => {
    const dissolve = read.dissolves.find(({ from, to }) => frame >= from && frame < to);
    if (!dissolve) {
      compare(own, cutAt(figures, frame), frame);
      return;
    }
    const into = figures.cuts.findIndex(({ cut }) => cut === dissolve.into);
    compare(own, into, frame);
    const previous = figures.cuts.findLastIndex(
      ({ durationFrames }, index) => index < into && durationFrames! > 0,
    );
    compare(out ?? null, previous, frame);
  });
  read.dissolves.forEach(({ from, to }, index) => {
    expect(from).toBeGreaterThanOrEqual(read.dissolves[index - 1]?.to ?? 0);
    expect(to).toBeGreaterThan(from);
  });
}
