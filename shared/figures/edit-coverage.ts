/** What the clips of the shots give of the cuts, at their joins and to their ends. */
import { ifKnown } from '../plan/field.ts';
import type { Rational } from '../quantity/rational.ts';
import { type Exact, fromRational, fromWritten, toNumber, ZERO } from '../timeline/exact.ts';
import { handleSource, type JoinFrames } from '../timeline/join.ts';
import { framesOf, type Laid, layCuts, type Wanted } from '../timeline/lay.ts';
import { timeAt } from '../timeline/speed.ts';
import { message } from '../words/message.ts';
import { type Draft, PLAIN_CUT } from './edit-draft.ts';
import type { EditPlan, ShotInEdit } from './edit-plan.ts';
import { derive, type Figure, figureOf, known, notKnown, silent } from './figure.ts';
import { lastOf } from './remembered.ts';

/** Nothing shorter than this part of a frame is missed: it is less than rounding to frames moves. */
const SHORT_OF_A_FRAME = 0.5;

export interface Handle {
  /** Frames of the edit that the join needs of the clip, and that the clip has. */
  readonly neededFrames: number;
  readonly thereFrames: number;
}

export interface Handles {
  readonly before: Figure<number>;
  readonly after: Figure<number>;
}

/** A clip is needed before its cut by the join that begins it, after it by the next one's. */
export const handlesOf = lastOf(
  (own: Figure<JoinFrames>, next: Figure<JoinFrames> | null): Handles => ({
    before: derive([own], ({ before }) => before),
    after: derive([next ?? known(PLAIN_CUT)], ({ after }) => after),
  }),
);

export interface InClip {
  readonly laid: Figure<Laid>;
  readonly clipFile: string | null;
  readonly clipS: Figure<Exact>;
}

/** The cuts of each shot into its clips; behind one that can't be laid, none of the shot is. */
export function layAll(
  drafts: readonly Draft[],
  handles: readonly Handles[],
  rate: Figure<Rational>,
  plan: EditPlan,
): readonly InClip[] {
  const out: InClip[] = drafts.map(() => NOWHERE);
  const byShot = new Map<string | null, number[]>();
  for (const [index, { shot }] of drafts.entries()) {
    const others = byShot.get(shot);
    if (others) others.push(index);
    else byShot.set(shot, [index]);
  }
  for (const [shot, inEdit] of plan.shots) {
    const indexes = byShot.get(shot) ?? [];
    const wanted = indexes.map((index) => wantedOf(drafts[index]!, handles[index]!, rate));
    const laid = laidOf(inEdit, wanted);
    indexes.forEach((index, place) => {
      out[index] = laid[place]!;
    });
  }
  return out;
}

const NOWHERE: InClip = { laid: silent, clipFile: null, clipS: silent };

/** The cuts of one shot. */
const laidOf = lastOf(
  (inEdit: ShotInEdit, wanted: readonly Figure<Wanted>[]): readonly InClip[] => {
    const { clips, lengthS, files } = materialOf(inEdit);
    const unknown = wanted.findIndex((one) => !one.known);
    const sure = wanted
      .slice(0, unknown < 0 ? wanted.length : unknown)
      .flatMap((one) => (one.known ? [one.value] : []));
    const laid = layCuts(sure, { clips, length: lengthS.known ? lengthS.value : undefined });
    return wanted.map((_, place) => {
      const one = laid[place];
      return {
        laid: one ? known(one) : (wanted[unknown] as Figure<never>),
        clipFile: (one && files[one.clip]) ?? null,
        clipS: lengthS,
      };
    });
  },
);

const wantedOf = lastOf(
  (draft: Draft, handles: Handles, rate: Figure<Rational>): Figure<Wanted> => {
    const { fields, footage, speed, sourceS, name } = draft;
    if (!fields || !footage) return silent;
    const from = fields.from.state === 'missing' ? known(undefined) : figureOf(fields.from, name);
    return derive(
      [from, sourceS, handles.before, handles.after, rate, speed],
      (start, source, before, after, fps, ramp) => ({
        from: start === undefined ? undefined : fromWritten(start),
        source,
        before: handleSource(before, fromRational(fps), ramp.from),
        after: handleSource(after, fromRational(fps), ramp.to),
      }),
    );
  },
);

interface ShotMaterial {
  readonly clips: number;
  readonly lengthS: Figure<Exact>;
  readonly files: readonly string[];
}

/** The clips that are kept, else those not rejected, else the takes that are planned. */
function materialOf({ footage, clips }: ShotInEdit): ShotMaterial {
  const verdict = (clip: NonNullable<ShotInEdit['clips']>[number]) => ifKnown(clip.verdict);
  const kept = clips?.filter((clip) => verdict(clip) === 'keep') ?? [];
  const usable = kept.length > 0 ? kept : clips?.filter((clip) => verdict(clip) !== 'reject');
  const lengthS: Figure<Exact> =
    footage === null
      ? silent
      : footage.takeS === null
        ? notKnown(message`the length of a take of ${footage.shot} is unknown`)
        : known(fromWritten(footage.takeS));
  return {
    clips: usable?.length ?? footage?.takes ?? 1,
    lengthS,
    files: usable?.map(({ file }) => ifKnown(file) ?? '') ?? [],
  };
}

interface There {
  readonly handleBefore: Figure<Handle>;
  readonly handleAfter: Figure<Handle>;
  /** Frames at the end of the cut for which the clip has nothing; may be negative. */
  readonly missingFrames: Figure<number>;
}

/** What the clip gives of it, at its joins and at its end. */
export const thereOf = lastOf(
  (
    { speed, lengthS }: Draft,
    { before, after }: Handles,
    { laid, clipS }: InClip,
    rate: Figure<Rational>,
  ): There => ({
    handleBefore: derive([laid, before, rate, speed], (place, neededFrames, fps, ramp) => ({
      neededFrames,
      thereFrames: framesOf(place.roomBefore, fromRational(fps), ramp.from),
    })),
    handleAfter: derive([laid, clipS, after, rate, speed], (place, _, needed, fps, ramp) => ({
      neededFrames: needed,
      thereFrames: framesOf(place.roomAfter ?? ZERO, fromRational(fps), ramp.to),
    })),
    missingFrames: derive([laid, clipS, lengthS, rate, speed], (place, _, length, fps, ramp) => {
      const missing = toNumber(length) - timeAt(ramp, length, place.covered);
      return Math.ceil(missing * toNumber(fromRational(fps)) - SHORT_OF_A_FRAME);
    }),
  }),
);
