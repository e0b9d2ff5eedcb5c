/**
 * Every format, read back by a reader of its own and held against the plan frame by frame: none is
 * wrong at constant speed, and none is off by more than a frame of the clip on a ramp.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import type { TimelineFormat } from '../../shared/api/timeline.ts';
import type { EditJson } from '../../shared/figures/edit-json.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import {
  plannedFrame,
  RATES,
  type RandomEdit,
  randomEdit,
  readingsOf,
  textOf,
  timecodeOf,
} from '../support/timelines/edits.ts';
import { readEdl } from '../support/timelines/edl.ts';
import { readFcpxml } from '../support/timelines/fcpxml.ts';
import { readOtio } from '../support/timelines/otio.ts';
import type { ReadTimeline, ShownFrame } from '../support/timelines/shown.ts';

const RUNS = manyRuns(13);

/** Drop frame where it is drawn and the rate knows it. */
const startOf = ({ rate, isDrop }: RandomEdit): string =>
  isDrop && ['29.97 fps', '59.94 fps'].includes(rate) ? '01:00:00;00' : '01:00:00:00';

/** What each format that can hold the edit's rate shows. */
function readBack(core: Core, edit: RandomEdit): readonly (readonly [string, ReadTimeline])[] {
  const readings = readingsOf(edit);
  const hasTimecode = edit.rate !== '119.88 fps';
  const text = (format: TimelineFormat): string => {
    const startTimecode = hasTimecode ? { startTimecode: startOf(edit) } : {};
    const made = core.timeline(PLAN, format, { readings, ...startTimecode });
    if (!made.ok) throw new Error(made.why);
    return made.text;
  };
  const [n, d] = RATES[edit.rate]!;
  return [
    ['OpenTimelineIO', readOtio(text('otio'), n / d)],
    ['FCPXML', readFcpxml(text('fcpxml'))],
    ...(hasTimecode
      ? [['EDL', readEdl(text('edl'), [n, d], startOf(edit), timecodeOf(edit))] as const]
      : []),
  ];
}

/** Which cut is on at a frame of the edit. */
const cutAt = ({ cuts }: EditJson, frame: number): number =>
  cuts.findIndex(
    ({ startFrame, durationFrames }) =>
      frame >= startFrame! && frame < startFrame! + durationFrames!,
  );

function check(edit: RandomEdit, figures: EditJson, read: ReadTimeline, format: string): void {
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

it('each frame of the edit is the planned frame of its clip, in every format', () => {
  fc.assert(
    fc.property(randomEdit, (edit) => {
      const core = coreWith(textOf(edit));
      const figures = core.editFigures(PLAN)!;
      for (const [format, read] of readBack(core, edit)) check(edit, figures, read, format);
    }),
    { numRuns: RUNS },
  );
});
