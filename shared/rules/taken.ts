/** A take as it was shot: where its settings differ from its shot's, and the shot with them. */
import { figuresOf } from '../figures/compute.ts';
import { readBench } from '../figures/read-bench.ts';
import { ifKnown } from '../plan/field.ts';
import type { Clip, ClipSettings, Shot } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import type { Say } from '../say/say.ts';
import { message } from '../words/message.ts';
import type { ShotView } from './shot-rule.ts';

/** Of one setting: what a take had and what its shot has, f-number, s, K or rad. */
export interface Otherwise {
  readonly key: keyof ClipSettings;
  readonly taken: number | 'auto';
  readonly planned: number | 'auto';
}

interface Taken {
  /** Never empty. */
  readonly otherwise: readonly Otherwise[];
  /** The one value that differs, or all of the take's settings. */
  readonly at: Place;
  /** The shot as it was shot. */
  readonly view: ShotView;
}

/** Marked settings and angles by hand are no nearer than this to each other. */
const SAME_SHARE = 0.01;

const KEYS = ['aperture', 'shutter', 'iso', 'white-balance', 'tilt'] as const;

/** null: it was shot as planned, as far as both can be read. */
export function takenOtherwise({ bench, figures }: ShotView, clip: Clip): Taken | null {
  const set = ifKnown(clip.set);
  if (!set || !KEYS.some((key) => isSet(set, key))) return null;
  const fields: Shot = { ...bench.fields };
  for (const key of KEYS) if (isSet(set, key)) Object.assign(fields, { [key]: set[key] });
  const { reader, shot } = bench.source;
  const taken = readBench(reader, { ...shot, fields });
  const view: ShotView = { bench: taken, figures: figuresOf(taken) };
  const planned: ShotView = { bench, figures };
  const otherwise = KEYS.flatMap((key): Otherwise[] => {
    if (!isSet(set, key)) return [];
    const [now, then] = [settingOf(view, key), settingOf(planned, key)];
    return now === undefined || then === undefined || isSame(now, then)
      ? []
      : [{ key, taken: now, planned: then }];
  });
  const [first] = otherwise;
  if (!first) return null;
  return { otherwise, at: otherwise.length === 1 ? set[first.key].at : clip.set.at, view };
}

const isSet = (set: ClipSettings, key: Otherwise['key']): boolean => set[key].state === 'known';

function settingOf(
  { bench, figures }: ShotView,
  key: Otherwise['key'],
): Otherwise['taken'] | undefined {
  const { fields } = bench;
  switch (key) {
    case 'aperture':
      return ifKnown(fields.aperture);
    case 'shutter':
      return figures.shutterSeconds.known ? figures.shutterSeconds.value : undefined;
    case 'iso':
      return ifKnown(fields.iso);
    case 'white-balance':
      return ifKnown(fields['white-balance']);
    case 'tilt':
      // A shot without a tilt faces the lens.
      return bench.tiltRad.known ? bench.tiltRad.value : undefined;
  }
}

const isSame = (a: Otherwise['taken'], b: Otherwise['taken']): boolean =>
  a === 'auto' || b === 'auto'
    ? a === b
    : Math.abs(a - b) <= SAME_SHARE * Math.max(Math.abs(a), Math.abs(b));

/** "f/11", "ISO 1600" */
export function settingWords(key: Otherwise['key'], value: Otherwise['taken'], say: Say): string {
  switch (key) {
    case 'aperture':
      return value === 'auto' ? value : `f/${Number(value.toPrecision(3))}`;
    case 'shutter':
      return value === 'auto' ? value : say.shutter(value);
    case 'iso':
      return value === 'auto' ? message`auto ISO` : message`ISO ${value}`;
    case 'white-balance':
      return value === 'auto'
        ? message`automatic white balance`
        : message`white balance ${Math.round(value)} K`;
    case 'tilt':
      return value === 'auto' ? value : message`a tilt of ${say.angle(value)}`;
  }
}
