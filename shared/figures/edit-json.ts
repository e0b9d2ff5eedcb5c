/** The edit in the names of the JSON contract: frames are the delivered film's, times seconds. */
import type { Reasons } from './reasons.ts';

export interface CutJson {
  readonly cut: string;
  readonly shot: string | null;
  readonly startFrame: number | null;
  /** SMPTE ST 12-1, from 00:00:00:00; null where the rate has none. */
  readonly startTimecode: string | null;
  readonly durationFrames: number | null;
  /** As written and exact, before rounding to frames. */
  readonly durationS: number | null;
  /** Shares of the clip's own speed, at its beginning and end. */
  readonly speed: readonly [from: number, to: number] | null;
  /** Shares of real time, with what the body or the interval has done to the clip. */
  readonly realSpeed: readonly [from: number, to: number] | null;
  /** Delivery rate over recorded rate, a share of real time. */
  readonly slowestSpeedWithoutRepeats: number | null;
  /** Whether any part of it is slower than that, so that frames are shown twice. */
  readonly repeatsFrames: boolean | null;
  /** Length of the clip that it uses, s. */
  readonly sourceS: number | null;
  /** The clip that it is placed in, from 1, with the beginning and end in that clip. */
  readonly clip: number | null;
  readonly clipFile: string | null;
  readonly sourceStartS: number | null;
  readonly sourceEndS: number | null;
  /** From the nearest beat: negative comes early. */
  readonly fromBeatFrames: number | null;
  /** The dissolve that it begins with; 0: a plain cut. */
  readonly dissolveFrames: number | null;
  /** Handles that the transitions need before and after the cut, and that the clip has. */
  readonly handleBeforeNeededFrames: number | null;
  readonly handleBeforeThereFrames: number | null;
  readonly handleAfterNeededFrames: number | null;
  readonly handleAfterThereFrames: number | null;
  /** It shows the one picture of a finished stack; null: the shot isn't known. */
  readonly holdsPicture: boolean | null;
  /** Frames at its end that no clip covers. */
  readonly uncoveredFrames: number | null;
  /** As the plan writes them; null: it doesn't. */
  readonly reframe: number | null;
  readonly grade: string | null;
  readonly about: string | null;
  readonly notKnown: Reasons;
}

export interface EditJson {
  readonly rateFps: number | null;
  readonly totalFrames: number | null;
  readonly totalS: number | null;
  readonly totalTimecode: string | null;
  readonly framesPerBeat: number | null;
  readonly cuts: readonly CutJson[];
  readonly notKnown: Reasons;
}
