/** How much of each cut the clips cover, at its transitions and to its end. */
import { ifKnown } from '../plan/field.ts';
import type { Clip } from '../plan/generated/types.ts';
import type { Rational } from '../quantity/rational.ts';
import { type Exact, fromRational, fromWritten, toNumber, ZERO } from '../timeline/exact.ts';
import { handleSource, type JoinFrames } from '../timeline/join.ts';
import { framesOf, type Laid, layCuts, type MarkedPart, type Wanted } from '../timeline/lay.ts';
import { timeAt } from '../timeline/speed.ts';
import { message } from '../words/message.ts';
import { type Draft, PLAIN_CUT } from './edit-draft.ts';
import type { EditPlan, ShotInEdit } from './edit-plan.ts';
import { derive, type Figure, figureOf, known, notKnown, silent } from './figure.ts';
import { lastOf } from './remembered.ts';

/**
 * Missing footage shorter than this part of a frame doesn't count: rounding to frames moves more.
 */
const SHORT_OF_A_FRAME = 0.5;

export interface Handle {
  /** Frames of the edit that the transition needs of the clip, and that the clip has. */
  readonly neededFrames: number;
  readonly thereFrames: number;
}

export interface Handles {
  readonly before: Figure<number>;
  readonly after: Figure<number>;
}

/**
 * The transition at the start of a cut needs the clip before it; the next transition needs the
 * clip after it.
 */
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

/**
 * The cuts of each shot, placed in its clips. After a cut that can't be placed, no later cut of
 * the shot is.
 */
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
    const { clips, lengthS, files, marked } = materialOf(inEdit);
    if (inEdit.footage?.isHeld) return wanted.map(() => heldOf(clips > 0, files[0] ?? null));
    const unknown = wanted.findIndex((one) => !one.known);
    const sure = wanted
      .slice(0, unknown < 0 ? wanted.length : unknown)
      .flatMap((one) => (one.known ? [one.value] : []));
    const laid = layCuts(sure, {
      clips,
      marked,
      length: lengthS.known ? lengthS.value : undefined,
    });
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

/** The picture of a shot, which every cut of it shows from beginning to end. */
const heldOf = (isThere: boolean, file: string | null): InClip => ({
  laid: known({
    ...{ clip: 0, start: ZERO, end: ZERO, covered: ZERO, roomBefore: ZERO },
    roomAfter: isThere ? undefined : ZERO,
  }),
  clipFile: file,
  clipS: known(ZERO),
});

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
  /** null: no file is named yet. */
  readonly files: readonly (string | null)[];
  readonly marked: readonly (MarkedPart | null)[];
}

/**
 * The clips that are kept, else those not rejected, else the takes that are planned. Those whose best
 * part is marked come first.
 */
function materialOf({ footage, clips }: ShotInEdit): ShotMaterial {
  const verdict = (clip: NonNullable<ShotInEdit['clips']>[number]) => ifKnown(clip.verdict);
  const kept = clips?.filter((clip) => verdict(clip) === 'keep') ?? [];
  const those = kept.length > 0 ? kept : clips?.filter((clip) => verdict(clip) !== 'reject');
  const usable = those && [...those].sort((a, b) => Number(!markedIn(a)) - Number(!markedIn(b)));
  const lengthS: Figure<Exact> =
    footage === null
      ? silent
      : footage.takeS === null
        ? notKnown(message`the length of a take of ${footage.shot} is unknown`)
        : known(fromWritten(footage.takeS));
  return {
    clips: usable?.length ?? footage?.takes ?? 1,
    lengthS,
    files: usable?.map(({ file }) => ifKnown(file) ?? null) ?? [],
    marked: usable?.map(markedIn) ?? [],
  };
}

function markedIn({ used }: Clip): MarkedPart | null {
  const part = ifKnown(used);
  return part ? { from: fromWritten(part.from), to: fromWritten(part.to) } : null;
}

interface There {
  readonly handleBefore: Figure<Handle>;
  readonly handleAfter: Figure<Handle>;
  /** Frames at the end of the cut that the clip doesn't cover; may be negative. */
  readonly missingFrames: Figure<number>;
}

/** How much of the cut the clip covers, at its transitions and at its end. */
export const thereOf = lastOf(
  (draft: Draft, handles: Handles, inClip: InClip, rate: Figure<Rational>): There =>
    draft.footage?.isHeld
      ? thereOfPicture(draft, handles, inClip, rate)
      : thereOfClip(draft, handles, inClip, rate),
);

/** A picture lasts as long as it is needed, where there is one. */
function thereOfPicture(
  { lengthS }: Draft,
  { before, after }: Handles,
  { laid }: InClip,
  rate: Figure<Rational>,
): There {
  const handleOf = (needed: Figure<number>): Figure<Handle> =>
    derive([needed, laid], (neededFrames, { roomAfter }) => ({
      neededFrames,
      thereFrames: roomAfter === undefined ? neededFrames : 0,
    }));
  return {
    handleBefore: handleOf(before),
    handleAfter: handleOf(after),
    missingFrames: derive([laid, lengthS, rate], ({ roomAfter }, length, fps) =>
      roomAfter === undefined ? 0 : Math.ceil(toNumber(length) * toNumber(fromRational(fps))),
    ),
  };
}

function thereOfClip(
  { speed, lengthS }: Draft,
  { before, after }: Handles,
  { laid, clipS }: InClip,
  rate: Figure<Rational>,
): There {
  return {
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
  };
}
