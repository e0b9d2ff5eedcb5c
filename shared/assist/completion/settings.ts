/** Settings of a shot: what each could be, and what the shot comes to with it. */
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Shot } from '../../plan/generated/types.ts';
import { kindOf } from '../../quantity/index.ts';
import { message } from '../../words/message.ts';
import {
  firstAperture,
  firstField,
  firstMagnification,
  firstShutter,
  firstSpeed,
  firstTilt,
} from './first.ts';
import {
  apertures,
  fields,
  magnifications,
  rings,
  shutters,
  speeds,
  tilts,
  whiteBalances,
} from './marks.ts';
import {
  angle,
  clearOfLens,
  contrast,
  depth,
  effective,
  exposure,
  field,
  flicker,
  frameLit,
  magnification,
  type Outcome,
  outcomeOf,
  reached,
  room,
  smear,
  unobstructed,
} from './outcome.ts';
import type { TrialShot } from './trial-shot.ts';

export interface Setting {
  readonly texts: (shot: TrialShot) => readonly string[];
  readonly outcome: (tried: TrialShot) => Outcome;
  /** What to begin with, without trying all of them. */
  readonly first: (shot: TrialShot) => string | undefined;
}

const by =
  (...measures: Parameters<typeof outcomeOf>[1]) =>
  (tried: TrialShot) =>
    outcomeOf(tried, measures);

export const SETTINGS: Partial<Record<keyof Shot, Setting>> = {
  aperture: {
    texts: apertures,
    outcome: by(effective, depth, exposure, contrast),
    first: firstAperture,
  },
  shutter: { texts: shutters, outcome: by(angle, flicker, exposure, smear), first: firstShutter },
  iso: { texts: speeds, outcome: isoOutcome, first: firstSpeed },
  field: {
    texts: fields,
    outcome: by(reached, magnification, depth, room, unobstructed, exposure),
    first: firstField,
  },
  magnification: {
    texts: magnifications,
    outcome: by(reached, field, depth, room, unobstructed, exposure),
    first: firstMagnification,
  },
  ring: { texts: rings, outcome: by(magnification, field, depth, room), first: () => 'closest' },
  tilt: { texts: tilts, outcome: by(clearOfLens, depth, frameLit), first: firstTilt },
  'white-balance': {
    texts: whiteBalances,
    outcome: whiteBalanceOutcome,
    first: (shot) => whiteBalances(shot)[0],
  },
};

/** A text tried out under a key of the shot's take; null where there is none to try it in. */
export function tryTake(shot: TrialShot, key: string, text: string): TrialShot | null {
  const { take } = shot.fields;
  const shape = SHAPES.take.keys[key]?.shape;
  if (take.state !== 'known' || shape?.kind !== 'quantity') return null;
  const parsed = kindOf(shape.of).parse(text);
  const field = { state: 'known', value: parsed.ok && parsed.value, at: take.at };
  return parsed.ok ? shot.with('take', { ...take.value, [key]: field } as never) : null;
}

/** A text tried out; null where it can't be read. */
export function tryText(shot: TrialShot, key: keyof Shot, text: string): TrialShot | null {
  const shape = SHOT_QUANTITY[key];
  const parsed = shape && kindOf(shape).parse(text);
  return parsed?.ok ? shot.with(key, parsed.value as never) : null;
}

/** The text that works best, of all that a setting could be. */
export function bestText(shot: TrialShot, key: keyof Shot): string | undefined {
  const setting = SETTINGS[key];
  if (!setting) return undefined;
  let best: { text: string; rank: number } | undefined;
  for (const text of setting.texts(shot)) {
    const tried = tryText(shot, key, text);
    const rank = tried ? setting.outcome(tried).rank : Number.POSITIVE_INFINITY;
    if (!best || rank < best.rank) best = { text, rank };
  }
  return best?.text;
}

const SHOT_QUANTITY: Partial<Record<keyof Shot, Parameters<typeof kindOf>[0]>> = {
  aperture: 'f-number',
  shutter: 'shutter',
  iso: 'iso-or-auto',
  field: 'length',
  magnification: 'magnification',
  ring: 'ring',
  tilt: 'angle',
  'white-balance': 'white-balance',
};

function isoOutcome(tried: TrialShot): Outcome {
  const { words, rank } = outcomeOf(tried, [exposure]);
  const { iso, isoLimits } = tried.now.bench;
  if (!iso.known) return { words, rank };
  // What the body chooses changes within the take: for want of anything better.
  if (iso.value === 'auto')
    return { words: [message`set by the camera`, words].filter(Boolean).join(' · '), rank: 3 };
  const { cleanTo } = isoLimits;
  const noisy = cleanTo.known && iso.value > cleanTo.value * 1.03;
  return noisy
    ? {
        words: [words, message`above usable ${tried.say.iso(cleanTo.value)}`]
          .filter(Boolean)
          .join(' · '),
        rank: rank + 1,
      }
    : { words, rank };
}

function whiteBalanceOutcome(tried: TrialShot): Outcome {
  const { bench } = tried.now;
  const set = bench.fields['white-balance'];
  if (set.state !== 'known') return { words: '', rank: 0 };
  if (set.value === 'auto') return { words: message`drifts during the take`, rank: 2 };
  const lights = bench.lights.known ? bench.lights.value : [];
  const same = lights.filter(
    ({ fields: { 'colour-temperature': colour } }) =>
      colour.state === 'known' && colour.value === set.value,
  );
  return same.length > 0
    ? { words: message`colour of ${same.map(({ name }) => name).join(', ')}`, rank: 0 }
    : { words: '', rank: 0.5 };
}
