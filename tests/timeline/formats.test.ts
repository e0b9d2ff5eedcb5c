/**
 * Every format, read back by a reader of its own and held against the plan frame by frame: none is
 * wrong at constant speed, and none is off by more than a frame of the clip on a ramp.
 */
import fc from 'fast-check';
import { it } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import type { TimelineFormat } from '../../shared/api/timeline.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import {
  RATES,
  type RandomEdit,
  randomEdit,
  readingsOf,
  startOf,
  textOf,
  timecodeOf,
} from '../support/timelines/edits.ts';
import { readEdl } from '../support/timelines/edl.ts';
import { readFcpxml } from '../support/timelines/fcpxml.ts';
import { expectPlanned } from '../support/timelines/held-against.ts';
import { readOtio } from '../support/timelines/otio.ts';
import type { ReadTimeline } from '../support/timelines/shown.ts';

const RUNS = manyRuns(13);

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

it('each frame of the edit is the planned frame of its clip, in every format', () => {
  fc.assert(
    fc.property(randomEdit, (edit) => {
      const core = coreWith(textOf(edit));
      const figures = core.editFigures(PLAN)!;
      for (const [format, read] of readBack(core, edit)) expectPlanned(edit, figures, read, format);
    }),
    { numRuns: RUNS },
  );
});
