/** What the body says of its stills. */
import type { Field } from '../plan/field.ts';
import type { Stills } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { type Figure, figureOf, silent } from './figure.ts';

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
