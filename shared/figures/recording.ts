/** Length and data of a shot's takes, and the body that records them. */
import { type Field, ifKnown } from '../plan/field.ts';
import type { Place } from '../plan/place.ts';
import { recordedBytes } from '../recording/bytes.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, notKnown, valueIn } from './figure.ts';
import type { Makers } from './lazily.ts';
import { once } from './lazily.ts';
import { clipRateOf, clipSecondsOf } from './playback.ts';
import type { RecordingFigures, ShotFigures, StackFigures } from './shot-figures.ts';
import { assumedStillOf, isOfStills, stillBytesOf, stillsField } from './stills.ts';
import { takeLengthOf, takesOf } from './take-length.ts';

/** What a stack has of stills, and how long it takes with its waits. */
type StackSums = Pick<Makers<StackFigures>, 'stackFrames' | 'stackTimeS'>;

export function recordingFigures(bench: Bench, stack: StackSums): Makers<RecordingFigures> {
  const takes = once(() => takesOf(bench));
  const perTake = (of: Figure<number>): Figure<number> =>
    derive([of, takes()], (each, count) => each * count);
  return {
    recordedS: once(() => perTake(takeSecondsOf(bench, stack.stackTimeS))),
    frameBytes: once(() =>
      isOfStills(bench)
        ? stillBytesOf(bench)
        : derive([bitrateOf(bench), clipRateOf(bench)], (bits, { n, d }) => (bits * d) / n / 8),
    ),
    recordedBytes: once(() => perTake(takeBytesOf(bench, stack.stackFrames))),
  };
}

/** How long one take keeps the body busy, s: a stack has its waits between the stills. */
const takeSecondsOf = (bench: Bench, stackTimeS: () => Figure<number>): Figure<number> =>
  bench.stack?.isStills ? stackTimeS() : takeLengthOf(bench);

/** What one take takes up, bytes: its stills, or its clip at the clip's bit rate. */
function takeBytesOf(bench: Bench, stackFrames: () => Figure<number>): Figure<number> {
  const { timeLapse, stack } = bench;
  if (timeLapse?.isStills) return stillsBytes(timeLapse.frames, stillBytesOf(bench));
  return stack?.isStills
    ? stillsBytes(stackFrames(), stillBytesOf(bench))
    : derive([bitrateOf(bench), clipSecondsOf(bench)], recordedBytes);
}

const stillsBytes = (frames: Figure<number>, size: Figure<number>): Figure<number> =>
  derive([frames, size], (count, each) => count * each);

function bitrateOf({ recording, fields, shot }: Bench): Figure<number> {
  if (recording) return figureOf(recording.fields.bitrate, recording.name);
  const record = figureOf(fields.record, shot);
  if (!record.known) return record;
  // Recording modes belong to the body, so without a rig no mode of that name exists.
  return fields.rig.state === 'missing'
    ? (figureOf(fields.rig, shot) as Figure<never>)
    : notKnown(message`the recording setting can't be read`);
}

/** A limit of the body on its recordings, with its place. */
export interface Limit {
  readonly value: number;
  readonly at: Place;
}

export interface RecordingBody {
  readonly name: string;
  readonly at: Place;
  /** Bytes. */
  readonly card: Limit | null;
  /** Seconds. */
  readonly battery: Limit | null;
}

/** A shot's takes as sums over the plan need them; null: it isn't known. */
export interface TakesOfShot {
  readonly shot: string;
  readonly body: RecordingBody;
  /** The shot's `take`, written or not. */
  readonly at: Place;
  readonly takes: number | null;
  readonly takeS: number | null;
  readonly takeBytes: number | null;
  /** The same with stills of unknown size as small as they may be. */
  readonly leastTakeBytes: number | null;
  /**
   * What one take uses of a battery, in seconds of its recording time; 0: it is fed from the mains.
   * null also where a time-lapse outlasts a battery, which has a finding of its own.
   */
  readonly batteryS: number | null;
  /** null: it is no time-lapse. */
  readonly timeLapse: {
    readonly interval: Field<number>;
    /** `frames` as written, which then stays when the interval changes. */
    readonly frames: Field<number>;
  } | null;
  readonly settleS: number;
}

/** @param figures of the same bench */
export function takesOfShot(bench: Bench, figures: ShotFigures): TakesOfShot | null {
  const { body, fields, shot } = bench;
  if (!body) return null;
  const takeS = takeSecondsOf(bench, () => figures.stackTimeS);
  const take = ifKnown(fields.take);
  const bytes = valueIn(takeBytesOf(bench, () => figures.stackFrames)) ?? null;
  const assumed = assumedStillOf(bench)?.prior;
  return {
    shot,
    body: {
      name: body.name,
      at: { file: body.file, entry: body.entry, path: [] },
      card: limitOf(body.fields.card),
      battery: limitOf(body.fields.battery),
    },
    at: fields.take.at,
    takes: valueIn(takesOf(bench)) ?? null,
    takeS: valueIn(takeS) ?? null,
    takeBytes: assumed ? null : bytes,
    leastTakeBytes: bytes !== null && assumed ? (bytes * assumed.low) / assumed.middle : bytes,
    batteryS: batteryOf(bench, takeS),
    timeLapse: bench.timeLapse?.fields ?? null,
    settleS: (take && ifKnown(take.settle)) ?? 0,
  };
}

/**
 * A battery lasts longer at intervals than while recording, so its use is a share of it. Over a
 * stack the live picture is on, which needs about what recording needs.
 */
function batteryOf(bench: Bench, takeS: Figure<number>): number | null {
  const { timeLapse, body } = bench;
  const seconds = valueIn(takeS) ?? null;
  if (!timeLapse) return seconds;
  const { supply } = timeLapse.fields ?? {};
  if (supply && ifKnown(supply) === 'mains') return 0;
  const atIntervals = stillsField(bench, 'battery');
  const lasts = atIntervals && ifKnown(atIntervals);
  const recording = body && ifKnown(body.fields.battery);
  if (seconds === null || !lasts || recording === undefined || seconds > lasts) return null;
  return (seconds / lasts) * recording;
}

const limitOf = (field: Field<number>): Limit | null =>
  field.state === 'known' ? { value: field.value, at: field.at } : null;
