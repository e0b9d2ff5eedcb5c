/** A clip against what its shot asks: where they differ by more than bodies and files do anyway. */

import { compare, equal, type Rational, toNumber } from '../quantity/rational.ts';
import type { Pixels } from '../quantity/recording.ts';
import { codecFamily } from './codec.ts';
import { type PictureDifference, pictureDifferences } from './compare-picture.ts';
import type { ClipAsk, ClipEdit, ClipFacts, ClipGap, ClipRate } from './facts.ts';

/** A variable bit rate takes less for a quiet picture; under this share it was another setting. */
const LEAST_BITRATE = 0.5;
/** What a take may end early by: a hand on the button is not a clock. s. */
const EARLY_S = 1;
/** Bodies conform to half speed or slower; 50 for 60 fps is a wrong setting. */
const LEAST_SLOWED = 1.9;
/** A third of a stop, the least step of bodies, is 26 %: halfway to it is another setting. */
const SAME_STEP = 2 ** (1 / 6);
/** A just noticeable step of white is about 5 mired. */
const SAME_MIRED = 5;

/** What differs; `lost`: no edit brings it back, the material is not what was asked for. */
export type Difference =
  /** A clip where a picture is meant, or a picture where a clip is. */
  | { readonly of: 'kind'; readonly found: 'clip' | 'picture'; readonly lost: boolean }
  | PictureDifference
  | {
      readonly of: 'missing-frames';
      readonly gaps: readonly ClipGap[];
      readonly lost: boolean;
    }
  | {
      /** The file itself says that not all of it is shown. */
      readonly of: 'edit';
      readonly found: ClipEdit;
      readonly lost: boolean;
    }
  | { readonly of: 'size'; readonly asked: Pixels; readonly found: Pixels; readonly lost: boolean }
  | {
      readonly of: 'rate';
      readonly asked: Rational;
      readonly found: ClipRate;
      /** The body wrote all frames into a clip that plays slowed. */
      readonly isConformed?: true;
      /** The body should have slowed it, and wrote it at the rate that it was recorded at. */
      readonly isUnslowed?: true;
      readonly lost: boolean;
    }
  | {
      readonly of: 'codec';
      readonly asked: string;
      readonly found: string;
      readonly lost: boolean;
    }
  | { readonly of: 'rotation'; readonly found: number; readonly lost: boolean }
  | {
      readonly of: 'bitrate' | 'duration' | 'shutter' | 'iso';
      readonly asked: number;
      readonly found: number;
      readonly lost: boolean;
    }
  | {
      /** A cut of the edit goes on where the clip has ended. s. */
      readonly of: 'cut';
      readonly cut: string;
      readonly asked: number;
      readonly found: number;
      readonly lost: boolean;
    }
  | {
      readonly of: 'white-balance';
      readonly asked: number;
      readonly found: number | 'auto';
      readonly lost: boolean;
    };

/** In the order of their weight: what is lost for good comes first. */
export function differences(ask: ClipAsk, facts: ClipFacts): readonly Difference[] {
  const isPicture = facts.isPicture === true;
  if (isPicture !== (ask.isPicture ?? false))
    return [{ of: 'kind', found: isPicture ? 'picture' : 'clip', lost: true }];
  return [
    ...sizeDifference(ask, facts),
    ...rateDifference(ask, facts),
    ...gapDifference(facts),
    ...pictureDifferences(ask.picture ?? {}, facts.picture ?? {}),
    ...codecDifference(ask.codec, facts),
    ...bitrateDifference(ask.bitsPerS, facts),
    ...shutterDifference(ask.shutterS, facts),
    ...isoDifference(ask.iso, facts),
    ...whiteDifference(ask.whiteBalance, facts),
    ...rotationDifference(ask.size, facts),
    ...editDifference(facts),
    ...durationDifference(ask.takeS, facts),
  ];
}

function sizeDifference({ size: asked, isLeast }: ClipAsk, { size }: ClipFacts): Difference[] {
  if (!asked || (asked.width === size.width && asked.height === size.height)) return [];
  const lost = size.width < asked.width || size.height < asked.height;
  return isLeast && !lost ? [] : [{ of: 'size', asked, found: size, lost }];
}

function rateDifference(
  { rate: asked, takeS, slowedFrom }: ClipAsk,
  { rate, durationS }: ClipFacts,
): Difference[] {
  if (!asked || !rate) return [];
  if (rate.kind === 'variable') return [{ of: 'rate', asked, found: rate, lost: true }];
  if (equal(rate.rate, asked)) return [];
  if (slowedFrom && equal(rate.rate, slowedFrom))
    return [{ of: 'rate', asked, found: rate, isUnslowed: true, lost: false }];
  const slowed = toNumber(asked) / toNumber(rate.rate);
  // As many frames as a take has at the rate asked: no hand lets a take run on for that long.
  if (takeS !== null && slowed >= LEAST_SLOWED && durationS >= (takeS - EARLY_S) * slowed)
    return [{ of: 'rate', asked, found: rate, isConformed: true, lost: false }];
  return [{ of: 'rate', asked, found: rate, lost: compare(rate.rate, asked) < 0 }];
}

/** A plan's take has every frame, whatever its rate. */
function gapDifference({ gaps = [] }: ClipFacts): Difference[] {
  return gaps.length > 0 ? [{ of: 'missing-frames', gaps, lost: true }] : [];
}

function editDifference({ edit }: ClipFacts): Difference[] {
  return edit ? [{ of: 'edit', found: edit, lost: false }] : [];
}

function codecDifference(asked: string | null, { codec }: ClipFacts): Difference[] {
  const wanted = asked === null ? null : codecFamily(asked);
  const found = codecFamily(codec);
  if (asked === null || wanted === null || found === null || wanted === found) return [];
  return [{ of: 'codec', asked, found: codec, lost: false }];
}

function bitrateDifference(asked: number | null, { bitsPerS }: ClipFacts): Difference[] {
  if (asked === null || bitsPerS >= asked * LEAST_BITRATE) return [];
  return [{ of: 'bitrate', asked, found: bitsPerS, lost: true }];
}

function shutterDifference(asked: number | null, { shutterS }: ClipFacts): Difference[] {
  if (asked === null || shutterS === null || sameStep(asked, shutterS)) return [];
  return [{ of: 'shutter', asked, found: shutterS, lost: false }];
}

function isoDifference(asked: number | null, { iso }: ClipFacts): Difference[] {
  if (asked === null || iso === null || sameStep(asked, iso)) return [];
  return [{ of: 'iso', asked, found: iso, lost: false }];
}

const sameStep = (a: number, b: number): boolean => Math.max(a / b, b / a) < SAME_STEP;

function whiteDifference(asked: number | null, { whiteBalance: found }: ClipFacts): Difference[] {
  if (asked === null || found === null) return [];
  const isNear = found !== 'auto' && Math.abs(1e6 / asked - 1e6 / found) < SAME_MIRED;
  return isNear ? [] : [{ of: 'white-balance', asked, found, lost: false }];
}

/** Upside down is how it hung; on its side, it is shown narrow. */
function rotationDifference(asked: Pixels | null, { rotation }: ClipFacts): Difference[] {
  const isAside = rotation === 90 || rotation === 270;
  return asked && isAside ? [{ of: 'rotation', found: rotation, lost: false }] : [];
}

/** Only what is missing counts: a take may run on. */
function durationDifference(asked: number | null, { durationS }: ClipFacts): Difference[] {
  if (asked === null || durationS >= asked - EARLY_S) return [];
  return [{ of: 'duration', asked, found: durationS, lost: false }];
}
