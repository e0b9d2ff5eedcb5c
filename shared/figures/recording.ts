/** Length and data of a shot's takes, and the body that records them. */
import { type Field, ifKnown } from '../plan/field.ts';
import type { Take } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import { recordedBytes } from '../recording/bytes.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, valueIn } from './figure.ts';
import type { Makers } from './lazily.ts';
import { once } from './lazily.ts';
import type { RecordingFigures } from './shot-figures.ts';

export function recordingFigures(bench: Bench): Makers<RecordingFigures> {
  const takeS = once(() => takeLengthOf(bench));
  const takes = once(() => takesOf(bench));
  const recordedS = once(() => derive([takeS(), takes()], (each, count) => each * count));
  return {
    recordedS,
    recordedBytes: once(() => derive([bitrateOf(bench), recordedS()], recordedBytes)),
  };
}

const recordOf = (take: Bench['fields']['take']): Figure<Take> =>
  take.state === 'missing' ? notKnown(message`no take is planned`) : figureOf(take, 'take');

/** Length of one take, s. */
export function takeLengthOf({ fields, shot }: Bench): Figure<number> {
  const take = recordOf(fields.take);
  return take.known ? figureOf(take.value.duration, message`${shot}'s take`) : take;
}

/** How many takes there are; one where the plan doesn't say. */
export function takesOf({ fields, shot }: Bench): Figure<number> {
  const take = recordOf(fields.take);
  if (!take.known) return take;
  const { count } = take.value;
  return count.state === 'missing' ? known(1) : figureOf(count, message`${shot}'s take`);
}

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
  readonly settleS: number;
}

export function takesOfShot(bench: Bench): TakesOfShot | null {
  const { body, fields, shot } = bench;
  if (!body) return null;
  const takeS = takeLengthOf(bench);
  const bytes = derive([bitrateOf(bench), takeS], recordedBytes);
  const take = ifKnown(fields.take);
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
    takeBytes: valueIn(bytes) ?? null,
    settleS: (take && ifKnown(take.settle)) ?? 0,
  };
}

const limitOf = (field: Field<number>): Limit | null =>
  field.state === 'known' ? { value: field.value, at: field.at } : null;
