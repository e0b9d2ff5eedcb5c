/** What a clip or picture on disk is, as its host read it, and what its shot asks of it: plain data. */

import type { LookedAt } from '../looked-at/looked.ts';
import type { Rational } from '../quantity/rational.ts';
import type { Pixels } from '../quantity/recording.ts';

/** Frames a second: one rate throughout, or frames of different length. */
export type ClipRate =
  | { readonly kind: 'constant'; readonly rate: Rational }
  | {
      readonly kind: 'variable';
      /** By the longest and the shortest frame, and on average. */
      readonly lowest: number;
      readonly highest: number;
      readonly mean: number;
    };

/** What the clock of the recorder counted at the first frame that is shown (SMPTE ST 12-1). */
export interface ClipTimecode {
  /** Counted frames from 00:00:00:00 on, with none left out: a count of frames, not of numbers. */
  readonly frame: number;
  /** Counted frames a second, exactly; a clip of 50 fps may have a clock of 25. */
  readonly rate: Rational;
  /** Numbers are left out, so that a count of 30 stays with the wall clock at 29.97. */
  readonly dropFrame: boolean;
}

/** How the file says that its frames are shown (edit list, ISO/IEC 14496-12, 8.6.6). */
export interface ClipEdit {
  /** Frames of the file before the first that is shown. */
  readonly skippedFrames: number;
  /** Nothing is shown for so long before the first frame, s. */
  readonly emptyS: number;
  /** Frames after the last that is shown. */
  readonly leftFrames: number;
  /** Length of what is shown, s. */
  readonly shownS: number;
  /** Stretches of frames that follow each other; 1: one. */
  readonly pieces: number;
}

/** How brightness and colour are stored: what is left out, the file doesn't say. */
export interface ClipPicture {
  /** Bits of a sample of brightness. */
  readonly bitDepth?: number;
  readonly chroma?: ClipChroma;
  /** Coded as fields, of which every other line belongs to another moment. */
  readonly isInterlaced?: boolean;
  /** Width over height of a pixel. */
  readonly pixelAspect?: Rational;
  /** Named by ITU-T H.273. */
  readonly transfer?: string;
  readonly primaries?: string;
}

/** Samples of colour for those of brightness; 4:0:0 has none. */
export type ClipChroma = '4:0:0' | '4:1:1' | '4:2:0' | '4:2:2' | '4:4:4';

/** Frames that are missing between two that are there. */
export interface ClipGap {
  /** Frames of the clip before the gap. */
  readonly frame: number;
  /** Where it begins in the clip, s. */
  readonly atS: number;
  readonly missing: number;
}

export interface ClipFacts {
  readonly bytes: number;
  /** As it is stored, before any turning. */
  readonly size: Pixels;
  /** Clockwise, for display, degrees: 0, 90, 180 or 270. */
  readonly rotation: number;
  /** null: too few frames to tell. */
  readonly rate: ClipRate | null;
  /** Family, as `codecFamily` names it, else the container's own code. */
  readonly codec: string;
  /** A still picture: it has neither rate nor length. */
  readonly isPicture?: true;
  /** From the start of the first frame that is shown to the end of the last one, s. */
  readonly durationS: number;
  /** Of the whole file over its duration, bit/s. */
  readonly bitsPerS: number;
  /** The settings of the body, where the file carries them; null: it doesn't. */
  readonly shutterS: number | null;
  readonly iso: number | null;
  readonly whiteBalance: number | 'auto' | null;
  /** By the body's clock, ISO 8601. */
  readonly created: string | null;
  /** Of the first frame that is shown. Left out: the file carries none, or none that is read. */
  readonly startTimecode?: ClipTimecode;
  /** Left out: every frame is shown, from the first to the last. */
  readonly edit?: ClipEdit;
  readonly picture?: ClipPicture;
  /** Of a clip of constant rate, in order; left out: none in the frames that were judged. */
  readonly gaps?: readonly ClipGap[];
}

export type ClipReading =
  | {
      readonly state: 'read';
      readonly facts: ClipFacts;
      /** Left out: its pictures were not looked at. */
      readonly looked?: LookedAt;
      /** Why they couldn't be looked at, by the program that decodes them. */
      readonly lookFailed?: string;
    }
  | { readonly state: 'not-found' }
  /** `why`, for people: "it is empty". */
  | { readonly state: 'unreadable'; readonly why: string; readonly fault?: ClipFault };

/**
 * What is at fault, where that is known. Damaged: a copy that is whole could be read. Unsupported:
 * it may well be whole, and no copy helps. Refused: it was not opened.
 */
export type ClipFault = 'damaged' | 'unsupported' | 'refused';

/** What a shot asks of its clips; null: nothing, or it isn't known. */
export interface ClipAsk {
  readonly size: Pixels | null;
  /** A larger picture than `size` is as asked. */
  readonly isLeast?: boolean;
  /** It is one picture, which the edit holds. */
  readonly isPicture?: boolean;
  /** That the clip plays at. */
  readonly rate: Rational | null;
  /** That it is recorded at, where the body writes it to play slower. */
  readonly slowedFrom?: Rational;
  readonly codec: string | null;
  readonly bitsPerS: number | null;
  readonly takeS: number | null;
  readonly shutterS: number | null;
  /** null also where it is automatic. */
  readonly iso: number | null;
  /** K; null also where it is automatic. */
  readonly whiteBalance: number | null;
  /** What the recording mode says of its pictures; left out: nothing. */
  readonly picture?: Pick<ClipPicture, 'bitDepth' | 'chroma' | 'transfer' | 'primaries'>;
}
