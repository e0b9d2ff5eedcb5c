/** The edit worked out: where each cut stands, what it uses of which clip, and what is missing. */
import { ifKnown } from '../plan/field.ts';
import type { Rational } from '../quantity/rational.ts';
import { framesFromBeat, type Music } from '../timeline/beats.ts';
import { type Exact, fromRational, fromWritten } from '../timeline/exact.ts';
import type { Laid } from '../timeline/lay.ts';
import { layOnTrack, type OnTrack } from '../timeline/track.ts';
import { message } from '../words/message.ts';
import { handlesOf, layAll, thereOf } from './edit-coverage.ts';
import { type Draft, draftOf } from './edit-draft.ts';
import type { EditPlan } from './edit-plan.ts';
import { derive, type Figure, figureOf, known, notKnown } from './figure.ts';

export interface Handle {
  /** Frames of the edit that the join needs of the clip, and that the clip has. */
  readonly neededFrames: number;
  readonly thereFrames: number;
}

export interface CutFigures extends Draft {
  readonly track: Figure<OnTrack>;
  /** From the nearest beat; negative: it comes early. */
  readonly fromBeatFrames: Figure<number>;
  readonly laid: Figure<Laid>;
  /** Path of the clip that it is laid into, where clips are listed. */
  readonly clipFile: string | null;
  readonly clipS: Figure<Exact>;
  readonly handleBefore: Figure<Handle>;
  readonly handleAfter: Figure<Handle>;
  /** Frames at its end that no clip gives. */
  readonly uncoveredFrames: Figure<number>;
}

export interface EditFigures {
  readonly plan: EditPlan;
  readonly rate: Figure<Rational>;
  readonly music: Figure<Music>;
  readonly cuts: readonly CutFigures[];
  readonly totalFrames: Figure<number>;
}

/** null: the plan has no cuts. */
export function editFigures(plan: EditPlan): EditFigures | null {
  if (plan.cuts.length === 0) return null;
  const deliver = figureOf(plan.deliver, message`the plan`);
  const rate = deliver.known ? figureOf(deliver.value.rate, 'deliver') : deliver;
  const music = musicOf(plan);
  const drafts = plan.cuts.map((cut) => draftOf(cut, plan, rate, music));
  const track = trackOf(drafts, rate);
  const handles = drafts.map(({ join }, index) => handlesOf(join, drafts[index + 1]?.join));
  const laid = layAll(drafts, handles, rate, plan);
  const cuts = drafts.map((draft, index): CutFigures => {
    const one = { ...draft, track: track[index]!, ...laid[index]! };
    return {
      ...one,
      fromBeatFrames: derive([one.track, music, rate], ({ startFrame }, beats, fps) =>
        framesFromBeat(beats, startFrame, fromRational(fps)),
      ),
      ...thereOf(one, handles[index]!, rate),
    };
  });
  const last = track.at(-1)!;
  return { plan, rate, music, cuts, totalFrames: derive([last], ({ endFrame }) => endFrame) };
}

function musicOf({ music }: EditPlan): Figure<Music> {
  if (music.state === 'missing') return notKnown(message`the edit has no music`);
  const record = figureOf(music, message`the edit`);
  if (!record.known) return record;
  const { tempo, bar } = record.value;
  const first = record.value['first-beat'];
  const firstBeat = first.state === 'missing' ? known(0) : figureOf(first, message`the music`);
  return derive([figureOf(tempo, message`the music`), firstBeat], (bpm, at) => {
    const beats = ifKnown(bar);
    return {
      tempo: fromWritten(bpm),
      firstBeat: fromWritten(at),
      ...(beats !== undefined && { bar: beats }),
    };
  });
}

/** Where each stands; behind one of unknown length nothing does, for its reason. */
function trackOf(drafts: readonly Draft[], rate: Figure<Rational>): readonly Figure<OnTrack>[] {
  if (!rate.known) return drafts.map(() => rate);
  const unknown = drafts.findIndex(({ lengthS }) => !lengthS.known);
  const reached = unknown < 0 ? drafts : drafts.slice(0, unknown);
  const laid = layOnTrack(
    reached.flatMap(({ lengthS }) => (lengthS.known ? [lengthS.value] : [])),
    fromRational(rate.value),
  );
  return drafts.map((_, index) => {
    const track = laid[index];
    return track ? known(track) : (drafts[unknown]!.lengthS as Figure<never>);
  });
}
