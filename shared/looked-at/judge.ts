/** What of that which was seen in a clip is worth telling, against what its shot asks. */
import { narrowestEdgePx } from './edges.ts';
import type { LookAsk, LookedAt, SeenRepeat } from './looked.ts';
import { apertureHalfContrast } from './spectrum.ts';

/** Share of the picture: a lamp's image in a drop is smaller. */
const MOST_CLIPPED = 0.01;
/** A dark ground fills half of many pictures. */
const MOST_CRUSHED = 0.6;
/** Amplitude of light over its mean, as for the plan's own lamps. */
const SEEN_FLICKER = 0.02;
/** Times that flicker has to stand out of what the scene does by itself. */
const ABOVE_FLOOR = 3;
/** Times coarser than the aperture allows: what demosaicing and sharpening make of it is less. */
const SOFT = 2;
/** Pixels of a colour filter give edges no narrower than this, px. */
const LEAST_EDGE = 1.6;
/** The same as a pattern at half contrast, for a spread like a bell: √(2π)·√(2·ln 2)/2π over the width. */
const FINEST_PATTERN =
  (Math.sqrt(2 * Math.PI) * Math.sqrt(2 * Math.LN2)) / (2 * Math.PI) / LEAST_EDGE;
/** Share of samples; a single crackle is shorter. */
const MOST_SOUND_CLIPPED = 1e-4;
/** dB of full scale: under the noise of any microphone that is plugged in. */
const SILENT_DB = -60;
/** A third of a stop is the least step of bodies. */
const DRIFT_STOPS = 1 / 3;
/** Stops of red or blue over green: about 300 K at daylight. */
const DRIFT_COLOUR = 0.15;

export type Sight =
  | {
      readonly of: 'exposure';
      readonly clipped: number;
      readonly crushed: number;
      /** What the plan expects; null: not known. */
      readonly exposureErrorStops: number | null;
    }
  | {
      readonly of: 'flicker';
      readonly lampHz: number;
      readonly depth: number;
      readonly exposedFps: number;
    }
  | {
      readonly of: 'repeats';
      readonly repeats: readonly SeenRepeat[];
      /** Every frame is the same. */
      readonly isFrozen: boolean;
    }
  | {
      readonly of: 'focus';
      readonly edgePx: number;
      readonly narrowestPx: number;
      readonly effectiveFNumber: number;
      /** Of the edges, and of the sharpest that the aperture allows, cycles a pixel. */
      readonly halfContrast: number;
      readonly finest: number;
    }
  | { readonly of: 'sound'; readonly clipped: number; readonly isSilent: boolean };

export function sightsOf(ask: LookAsk, looked: LookedAt): readonly Sight[] {
  return [
    ...repeatsSeen(looked),
    ...exposureSeen(ask, looked),
    ...flickerSeen(ask, looked),
    ...focusSeen(ask, looked),
    ...soundHeard(looked),
  ];
}

function repeatsSeen({ repeats, frames }: LookedAt): Sight[] {
  const total = repeats.reduce((sum, { count }) => sum + count, 0);
  return total === 0 ? [] : [{ of: 'repeats', repeats, isFrozen: total >= frames - 1 }];
}

function exposureSeen({ exposureErrorStops }: LookAsk, { clipped, crushed }: LookedAt): Sight[] {
  if (clipped <= MOST_CLIPPED && crushed <= MOST_CRUSHED) return [];
  return [{ of: 'exposure', clipped, crushed, exposureErrorStops }];
}

const flickerSeen = ({ exposedFps }: LookAsk, { flicker }: LookedAt): Sight[] =>
  flicker.flatMap(({ lampHz, depth, floor }): Sight[] =>
    exposedFps !== null && depth !== null && depth > SEEN_FLICKER && depth > ABOVE_FLOOR * floor
      ? [{ of: 'flicker', lampHz, depth, exposedFps }]
      : [],
  );

/** By the spectrum of edges: one step between two pixels, of noise or a coder, says little in it. */
function focusSeen(
  { effectiveFNumber, pixelUm }: LookAsk,
  { edgePx, halfContrast }: LookedAt,
): Sight[] {
  if (effectiveFNumber === null || pixelUm === null) return [];
  if (edgePx === null || halfContrast === null) return [];
  const narrowestPx = Math.max(LEAST_EDGE, narrowestEdgePx(effectiveFNumber, pixelUm));
  const finest = Math.min(FINEST_PATTERN, apertureHalfContrast(effectiveFNumber, pixelUm));
  return halfContrast * SOFT < finest
    ? [{ of: 'focus', edgePx, narrowestPx, effectiveFNumber, halfContrast, finest }]
    : [];
}

function soundHeard({ sound }: LookedAt): Sight[] {
  if (sound === null) return [];
  const { clipped, peakDb } = sound;
  const isSilent = peakDb === null || peakDb < SILENT_DB;
  return isSilent || clipped > MOST_SOUND_CLIPPED ? [{ of: 'sound', clipped, isSilent }] : [];
}

/** How far one take is from another in exposure and in colour, stops. */
export interface Drift {
  readonly stops: number;
  /** Of red and blue over green. */
  readonly red: number;
  readonly blue: number;
}

/** @returns null where nobody would see it, or one of the two is black */
export function driftBetween(one: LookedAt, other: LookedAt): Drift | null {
  const [r, g, b] = [0, 1, 2].map((index) => Math.log2(other.light[index]! / one.light[index]!));
  const stops = 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
  const drift = { stops, red: r! - g!, blue: b! - g! };
  if (!Object.values(drift).every(Number.isFinite)) return null;
  const isSeen =
    Math.abs(stops) > DRIFT_STOPS ||
    Math.abs(drift.red) > DRIFT_COLOUR ||
    Math.abs(drift.blue) > DRIFT_COLOUR;
  return isSeen ? drift : null;
}
