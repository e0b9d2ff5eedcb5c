/**
 * The edit with the names of the JSON contract. Frames are those of the delivered edit, times are
 * in seconds.
 */
import { type Exact, toNumber } from '../timeline/exact.ts';
import { timecode } from '../timeline/timecode.ts';
import { inLanguage, later } from '../words/message.ts';
import type { CutFigures, EditFigures } from './edit-figures.ts';
import { type Figure, reasonOf, valueIn } from './figure.ts';

export interface CutJson {
  readonly cut: string;
  readonly shot: string | null;
  readonly startFrame: number | null;
  /** SMPTE ST 12-1, from 00:00:00:00; null where the rate has none. */
  readonly startTimecode: string | null;
  readonly durationFrames: number | null;
  /** As written and exact, before rounding to frames. */
  readonly durationS: number | null;
  /** Shares of real time, at its beginning and end. */
  readonly speed: readonly [from: number, to: number] | null;
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
  /** Frames at its end that no clip covers. */
  readonly uncoveredFrames: number | null;
  readonly notKnown: Readonly<Record<string, string>>;
}

export interface EditJson {
  readonly rateFps: number | null;
  readonly totalFrames: number | null;
  readonly totalS: number | null;
  readonly totalTimecode: string | null;
  readonly framesPerBeat: number | null;
  readonly cuts: readonly CutJson[];
  readonly notKnown: Readonly<Record<string, string>>;
}

const INVALID_INPUT = later`it depends on an invalid entry`;
const NO_TIMECODE = later`the rate has no timecode`;

/** Collects the reason for every value that is null. */
class Reasons {
  readonly notKnown: Record<string, string> = {};

  one<T, V>(
    name: string,
    figure: Figure<T>,
    value: (known: T) => V | undefined,
    none = '',
  ): V | null {
    if (figure.known) {
      const said = value(figure.value);
      if (said !== undefined) return said;
      if (none !== '') this.notKnown[name] = none;
      return null;
    }
    this.notKnown[name] = reasonOf(figure) ?? inLanguage(INVALID_INPUT);
    return null;
  }
}

const seconds = (value: Exact): number => toNumber(value);

export function editJson(edit: EditFigures | null): EditJson | null {
  if (!edit) return null;
  const { rate, music, totalFrames, cuts } = edit;
  const why = new Reasons();
  const fps = valueIn(rate);
  return {
    rateFps: why.one('rateFps', rate, ({ n, d }) => n / d),
    totalFrames: why.one('totalFrames', totalFrames, (frames) => frames),
    totalS: why.one('totalS', totalFrames, (frames) => fps && (frames * fps.d) / fps.n),
    totalTimecode: why.one(
      'totalTimecode',
      totalFrames,
      (frames) => fps && timecode(frames, fps),
      inLanguage(NO_TIMECODE),
    ),
    framesPerBeat: why.one('framesPerBeat', music, ({ tempo }) =>
      fps ? (60 * fps.n) / fps.d / toNumber(tempo) : undefined,
    ),
    cuts: cuts.map((cut) => cutJson(cut, edit)),
    notKnown: why.notKnown,
  };
}

function cutJson(cut: CutFigures, { rate }: EditFigures): CutJson {
  const why = new Reasons();
  const fps = valueIn(rate);
  const { track, laid, speed, handleBefore, handleAfter } = cut;
  return {
    cut: cut.name,
    shot: cut.shot,
    startFrame: why.one('startFrame', track, ({ startFrame }) => startFrame),
    startTimecode: why.one(
      'startTimecode',
      track,
      ({ startFrame }) => fps && timecode(startFrame, fps),
      inLanguage(NO_TIMECODE),
    ),
    durationFrames: why.one(
      'durationFrames',
      track,
      ({ startFrame, endFrame }) => endFrame - startFrame,
    ),
    durationS: why.one('durationS', cut.lengthS, seconds),
    speed: why.one('speed', speed, ({ from, to }) => [toNumber(from), toNumber(to)] as const),
    slowestSpeedWithoutRepeats: why.one(
      'slowestSpeedWithoutRepeats',
      cut.slowestWithoutRepeats,
      seconds,
    ),
    repeatsFrames: why.one('repeatsFrames', cut.repeatsFrames, (does) => does),
    sourceS: why.one('sourceS', cut.sourceS, seconds),
    clip: why.one('clip', laid, ({ clip }) => clip + 1),
    clipFile: cut.clipFile,
    sourceStartS: why.one('sourceStartS', laid, ({ start }) => toNumber(start)),
    sourceEndS: why.one('sourceEndS', laid, ({ end }) => toNumber(end)),
    fromBeatFrames: why.one('fromBeatFrames', cut.fromBeatFrames, (frames) => frames),
    dissolveFrames: why.one('dissolveFrames', cut.join, ({ before, after }) => before + after),
    handleBeforeNeededFrames: why.one(
      'handleBeforeNeededFrames',
      handleBefore,
      ({ neededFrames }) => neededFrames,
    ),
    handleBeforeThereFrames: why.one(
      'handleBeforeThereFrames',
      handleBefore,
      ({ thereFrames }) => thereFrames,
    ),
    handleAfterNeededFrames: why.one(
      'handleAfterNeededFrames',
      handleAfter,
      ({ neededFrames }) => neededFrames,
    ),
    handleAfterThereFrames: why.one(
      'handleAfterThereFrames',
      handleAfter,
      ({ thereFrames }) => thereFrames,
    ),
    uncoveredFrames: why.one('uncoveredFrames', cut.uncoveredFrames, (frames) => frames),
    notKnown: why.notKnown,
  };
}
