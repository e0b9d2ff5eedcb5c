/** What a take comes to with the settings that it was really shot with. */
import type { Bench } from '../../figures/bench.ts';
import { changedBench } from '../../figures/changed.ts';
import { figuresOf } from '../../figures/compute.ts';
import type { Change } from '../../figures/width.ts';
import { idOf } from '../../plan/entry-id.ts';
import { type Field, ifKnown } from '../../plan/field.ts';
import type { ClipSettings } from '../../plan/generated/types.ts';
import type { FileId } from '../../plan/place.ts';
import { below } from '../../plan/place.ts';
import type { QuantityId } from '../../quantity/index.ts';
import { depthPair, exposureWords } from '../../say/figures.ts';
import type { Say } from '../../say/say.ts';
import { shown } from '../../say/shown.ts';
import { message } from '../../words/message.ts';
import type { Context } from '../../workspace/context.ts';
import { takesListed } from '../../workspace/takes.ts';

const KINDS: Readonly<Record<keyof ClipSettings, QuantityId>> = {
  aperture: 'f-number',
  shutter: 'shutter',
  iso: 'iso-or-auto',
  'white-balance': 'white-balance',
  tilt: 'angle',
};

/**
 * "Shot at f/11, planned f/16: depth 4.1 mm of 4.3 mm"
 *
 * @param index of the clip in the list of its shot
 * @returns null where nothing was set otherwise, or there is no such shot
 */
export function takenWords(
  { analysis, say }: Context,
  file: FileId,
  shot: string,
  index: number,
): string | null {
  const field = takesListed(analysis, file, shot)[index]?.set;
  const set = field && ifKnown(field);
  const bench = analysis.bench(file, idOf('shots', shot));
  if (!set || !bench) return null;
  const keys = (Object.keys(KINDS) as (keyof ClipSettings)[]).filter(
    (key) => set[key].state === 'known' && !isAsPlanned(bench, set, key),
  );
  if (keys.length === 0) return null;
  const settings = keys.map((key) => settingWords(bench, set, key, say)).join('; ');
  const comesTo = resultWords(bench, set, keys, say);
  return comesTo === '' ? message`Shot at ${settings}.` : message`Shot at ${settings}: ${comesTo}.`;
}

const actualOf = (set: ClipSettings, key: keyof ClipSettings): unknown =>
  ifKnown(set[key] as Field<unknown>);

function isAsPlanned(bench: Bench, set: ClipSettings, key: keyof ClipSettings): boolean {
  const planned = ifKnown(bench.fields[key] as Field<unknown>);
  return planned !== undefined && JSON.stringify(planned) === JSON.stringify(actualOf(set, key));
}

function settingWords(
  { fields }: Bench,
  set: ClipSettings,
  key: keyof ClipSettings,
  say: Say,
): string {
  const word = (value: unknown): string =>
    key === 'iso' ? message`ISO ${String(value)}` : shown(KINDS[key], value, say);
  const planned = ifKnown(fields[key] as Field<unknown>);
  const actual = word(actualOf(set, key));
  return planned === undefined ? actual : message`${actual}, planned ${word(planned)}`;
}

function resultWords(
  bench: Bench,
  set: ClipSettings,
  keys: readonly (keyof ClipSettings)[],
  say: Say,
): string {
  const changes = keys.map(
    (key): Change => ({ kind: 'field', at: below(bench.at, key), value: actualOf(set, key) }),
  );
  const {
    usableDepthMm: depth,
    depthMm,
    exposureErrorStops: exposure,
  } = figuresOf(changedBench(bench, changes));
  const parts: string[] = [];
  if (depth.known && depthMm.needed.known) {
    const [there, needed] = depthPair(depth.value, depthMm.needed.value, say);
    parts.push(message`depth ${there} of ${needed}`);
  }
  if (exposure.known) parts.push(exposureWords(exposure.value, say));
  return parts.join(', ');
}
