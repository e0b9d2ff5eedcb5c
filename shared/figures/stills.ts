/** What the body says of its stills. */
import { stillSizePrior } from '../assumptions/table.ts';
import type { Field } from '../plan/field.ts';
import type { Stills } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';

import type { Assumed } from './assumed.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, silent } from './figure.ts';

/** A value of the body's stills; `needs` names it where it is missing. */
export function stillsField<K extends keyof Stills>(
  { body }: Pick<Bench, 'body'>,
  key: K,
): Stills[K] | null {
  if (!body) return null;
  const { stills } = body.fields;
  if (stills.state === 'known') return stills.value[key];
  if (stills.state === 'invalid') return stills as Stills[K];
  const at = { ...stills.at, path: [...stills.at.path, key] };
  return { state: 'missing', at } as Stills[K];
}

/** The same as a figure, so that what follows from it is unknown for the same reason. */
export function stillsOf<K extends keyof Stills>(
  bench: Pick<Bench, 'body' | 'fields' | 'shot'>,
  key: K,
): Stills[K] extends Field<infer V> ? Figure<V> : never {
  const field = stillsField(bench, key);
  const figure = field
    ? figureOf(field as Field<unknown>, message`the stills of ${bench.body!.name}`)
    : bench.fields.rig.state === 'missing'
      ? figureOf(bench.fields.rig, bench.shot)
      : silent;
  return figure as Stills[K] extends Field<infer V> ? Figure<V> : never;
}

/** Whether it takes single stills: of a time-lapse, or of a stack. */
export const isOfStills = ({ timeLapse, stack }: Pick<Bench, 'timeLapse' | 'stack'>): boolean =>
  (timeLapse?.isStills || stack?.isStills) ?? false;

/** Whether the size of a still is taken from its pixels, because nobody gave it. */
const isSizeAssumed = (bench: Pick<Bench, 'body' | 'recordedPixels'>): boolean =>
  stillsField(bench, 'size')?.state === 'missing' && bench.recordedPixels.known;

/** Size of one still, bytes: as given, else by its pixels. */
export const stillBytesOf = (bench: Bench): Figure<number> =>
  isSizeAssumed(bench)
    ? derive(
        [bench.recordedPixels],
        ({ width, height }) => width * height * bench.source.reader.constants.stillBytesPerPixel,
      )
    : stillsOf(bench, 'size');

/** Between which sizes a still of the shot is taken to be; undefined: it is given, or there are none. */
export function assumedStillOf(bench: Bench): Assumed | undefined {
  const { recordedPixels } = bench;
  if (!isOfStills(bench) || !isSizeAssumed(bench) || !recordedPixels.known) return undefined;
  const { width, height } = recordedPixels.value;
  return { id: 'still-size', prior: stillSizePrior(width * height) };
}
