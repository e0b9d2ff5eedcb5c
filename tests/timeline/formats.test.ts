/**
 * Every format, read back by a reader of its own and held against the plan frame by frame: none is
 * wrong at constant speed, and none is off by more than a frame of the clip on a ramp.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
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

const RUNS = manyRuns(14);

/** Drop frame where it is drawn and the rate knows it. */
const startOf = ({ rate, isDrop }: RandomEdit): string =>
  isDrop && ['29.97 fps', '59.94 fps'].includes(rate) ? '01:00:00;00' : '01:00:00:00';

function exported(edit: RandomEdit, format: 'otio' | 'fcpxml' | 'edl') {
  const core = coreWith(textOf(edit));
  const hasTimecode = edit.rate !== '119.88 fps';
  const made = core.timeline(PLAN, format, {
    readings: readingsOf(edit),
    ...(hasTimecode && { startTimecode: startOf(edit) }),
  });
  if (!made.ok) throw new Error(made.why);
  return { text: made.text, notes: made.notes, figures: core.editFigures(PLAN)! };
}

/** Which cut is on at a frame of the edit. */
const cutAt = ({ cuts }: EditJson, frame: number): number =>
  cuts.findIndex(
    ({ startFrame, durationFrames }) =>
      frame >= startFrame! && frame < startFrame! + durationFrames!,
  );

function check(edit: RandomEdit, figures: EditJson, read: ReadTimeline): void {
  expect(read.frames).toHaveLength(figures.totalFrames!);
  const compare = (shown: ShownFrame | null, index: number, frame: number): void => {
    const at = frame - figures.cuts[index]!.startFrame!;
    const planned = plannedFrame(edit, figures, index, at);
    const where = `frame ${frame}, ${figures.cuts[index]!.cut} at ${at}`;
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

describe('each frame of the edit is the planned frame of its clip', () => {
  it('in OpenTimelineIO', () => {
    fc.assert(
      fc.property(randomEdit, (edit) => {
        const { text, figures } = exported(edit, 'otio');
        const [n, d] = RATES[edit.rate]!;
        check(edit, figures, readOtio(text, n / d));
      }),
      { numRuns: RUNS },
    );
  });

  it('in FCPXML', () => {
    fc.assert(
      fc.property(randomEdit, (edit) => {
        const { text, figures } = exported(edit, 'fcpxml');
        check(edit, figures, readFcpxml(text));
      }),
      { numRuns: RUNS },
    );
  });

  it('in an EDL, at rates that have timecode', () => {
    fc.assert(
      fc.property(
        randomEdit.filter(({ rate }) => rate !== '119.88 fps'),
        (edit) => {
          const { text, figures } = exported(edit, 'edl');
          check(edit, figures, readEdl(text, RATES[edit.rate]!, startOf(edit), timecodeOf(edit)));
        },
      ),
      { numRuns: RUNS },
    );
  });
});
