/**
 * All figures of a shot that are told, by their keys in the JSON and in its order, which is a contract:
 * keys are added, never changed. A figure that is neither told here nor kept inside doesn't compile.
 */
import type { ShotFigures } from '../shot-figures.ts';
import type { Declaration, Entry, GroupEntry } from './declaration.ts';
import { FILM } from './film.ts';
import { LIGHT } from './light.ts';
import { LOAD } from './load.ts';
import { MIRROR } from './mirror.ts';
import { MOVEMENT } from './movement.ts';
import { PICTURE } from './picture.ts';
import { RECORDING } from './recording.ts';
import { SHARPNESS } from './sharpness.ts';
import { THROUGH } from './through.ts';

const TOLD = {
  ...PICTURE,
  ...SHARPNESS,
  ...LIGHT,
  ...MOVEMENT,
  ...LOAD,
  ...MIRROR,
  ...FILM,
  ...THROUGH,
  ...RECORDING,
};

/** The keys of a shot in the JSON. */
export type FigureKey = keyof typeof TOLD;

/** Each figure that is known or not by itself: those of a group as "depthMm.needed". */
export type FigureName = { [K in FigureKey]: NamesIn<K> }[FigureKey];

type NamesIn<K extends FigureKey> =
  (typeof TOLD)[K] extends GroupEntry<infer F> ? `${K}.${keyof ShotFigures[F] & string}` : K;

type ToldFrom = (typeof TOLD)[FigureKey]['from'][number];

/** Figures that others are worked out of, and why nobody is told them. */
export const KEPT_INSIDE = {
  chain: 'the parts of the rig; not a number',
  trace: 'what of it stands where; not a number',
  glassLossStops: 'a term of the exposure',
  shownLight: 'the exposure as if a mirror showed every light; a search asks for it',
  wholeDepthMm: 'only a focus pull or a stack tells it from the depth needed',
  mirrorView: 'the geometry of the mirror; not a number',
  greatestTiltByDepthRad: 'a bound of the tilt window',
  litTiltsRad: 'a bound of the tilt window',
  lostByLight: 'the dark of the frame by each light; the worst is told',
  pullMarks: 'marks for the ring; the sheet has them',
  stackMarks: 'marks for the ring; the sheet has them',
  pullDepthMm: 'a term of the depth needed along a focus pull',
} as const satisfies Readonly<Record<Exclude<keyof ShotFigures, ToldFrom>, string>>;

export const CATALOGUE: readonly (readonly [key: FigureKey, entry: Entry])[] = Object.entries(
  TOLD,
) as unknown as readonly (readonly [FigureKey, Entry])[];

/** Every figure by its name, those of groups as "depthMm.needed". */
export const DECLARATIONS: ReadonlyMap<string, Declaration> = new Map(
  CATALOGUE.flatMap(([key, entry]): (readonly [string, Declaration])[] =>
    entry.kind === 'figure'
      ? [[key, entry]]
      : Object.entries(entry.parts).map(([part, declared]) => [`${key}.${part}`, declared]),
  ),
);
