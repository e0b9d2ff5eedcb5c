/**
 * The figures of the edit: where each cut begins, which part of which clip it uses, and what is
 * missing.
 */
import { type Field, ifKnown } from '../plan/field.ts';
import type { Deliver, EditMusic } from '../plan/generated/types.ts';
import type { Rational } from '../quantity/rational.ts';
import { framesFromBeat, type Music } from '../timeline/beats.ts';
import { type Exact, fromRational, fromWritten, ZERO } from '../timeline/exact.ts';
import type { Laid } from '../timeline/lay.ts';
import { type OnTrack, onTrack } from '../timeline/track.ts';
import { message } from '../words/message.ts';
import {
  type Handle,
  type Handles,
  handlesOf,
  type InClip,
  layAll,
  thereOf,
} from './edit-coverage.ts';
import { type Draft, draftOf, type EditTerms } from './edit-draft.ts';
import type { Footage } from './edit-footage.ts';
import type { EditPlan, PlannedCut } from './edit-plan.ts';
import { derive, type Figure, figureOf, type KnownFigure, known, notKnown } from './figure.ts';
import { lastOf } from './remembered.ts';

export interface CutFigures extends Draft {
  readonly track: Figure<OnTrack>;
  /** From the nearest beat; negative: it comes early. */
  readonly fromBeatFrames: Figure<number>;
  readonly laid: Figure<Laid>;
  /** Path of the clip that it is placed in, if clips are listed. */
  readonly clipFile: string | null;
  readonly clipS: Figure<Exact>;
  readonly handleBefore: Figure<Handle>;
  readonly handleAfter: Figure<Handle>;
  /** Frames at its end that no clip covers. */
  readonly uncoveredFrames: Figure<number>;
}

export interface EditFigures {
  readonly plan: EditPlan;
  readonly rate: Figure<Rational>;
  readonly music: Figure<Music>;
  readonly cuts: readonly CutFigures[];
  readonly totalFrames: Figure<number>;
}

/**
 * null: the plan has no cuts. Parts that have not changed since the last time are not calculated
 * again.
 */
export function editFigures(plan: EditPlan): EditFigures | null {
  if (plan.cuts.length === 0) return null;
  const terms = termsOf(plan.deliver, plan.music);
  const { rate, music } = terms;
  const drafts = plan.cuts.map((cut) => draftOf(cut, footageOf(cut, plan), terms));
  const track = trackOf(drafts, rate);
  const handles = drafts.map(({ join }, index) => handlesOf(join, drafts[index + 1]?.join ?? null));
  const inClips = layAll(drafts, handles, rate, plan);
  const cuts = drafts.map((draft, index) =>
    cutFigures(draft, track[index]!, handles[index]!, inClips[index]!, terms),
  );
  const last = track.at(-1)!;
  return { plan, rate, music, cuts, totalFrames: derive([last], ({ endFrame }) => endFrame) };
}

const footageOf = ({ fields }: PlannedCut, { shots }: EditPlan): Footage | null => {
  const shot = fields && ifKnown(fields.shot);
  return (shot && shots.get(shot)?.footage) || null;
};

const cutFigures = lastOf(
  (
    draft: Draft,
    track: Figure<OnTrack>,
    handles: Handles,
    inClip: InClip,
    { rate, music }: EditTerms,
  ): CutFigures => {
    const { missingFrames, ...there } = thereOf(draft, handles, inClip, rate);
    return {
      ...draft,
      track,
      ...inClip,
      fromBeatFrames: derive([track, music, rate], ({ startFrame }, beats, fps) =>
        framesFromBeat(beats, startFrame, fromRational(fps)),
      ),
      ...there,
      uncoveredFrames: derive([missingFrames, track], (frames, { startFrame, endFrame }) =>
        Math.max(0, Math.min(frames, endFrame - startFrame)),
      ),
    };
  },
);

const termsOf = lastOf((written: Field<Deliver>, music: Field<EditMusic>): EditTerms => {
  const deliver = figureOf(written, message`the plan`);
  const rate = deliver.known ? figureOf(deliver.value.rate, 'deliver') : deliver;
  return { rate, music: musicOf(music), written: music };
});

function musicOf(music: Field<EditMusic>): Figure<Music> {
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

/** Where each cut begins. After a cut of unknown length none is known, for the same reason. */
function trackOf(drafts: readonly Draft[], rate: Figure<Rational>): readonly Figure<OnTrack>[] {
  if (!rate.known) return drafts.map(() => rate);
  let start = ZERO;
  let unknown: Figure<never> | undefined;
  return drafts.map((draft) => {
    if (!unknown && !draft.lengthS.known) unknown = draft.lengthS;
    if (unknown) return unknown;
    const track = placed(draft, start.n, start.d, rate.value);
    start = track.value.end;
    return track;
  });
}

/** A start is calculated in parts; equal numbers are the same place. */
const placed = lastOf(
  ({ lengthS }: Draft, n: bigint, d: bigint, rate: Rational): KnownFigure<OnTrack> =>
    known(onTrack({ n, d }, lengthS.known ? lengthS.value : ZERO, fromRational(rate))),
);
