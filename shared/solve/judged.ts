/**
 * The rules that a setting can have something to do with, and by which settings each decides.
 * What a rule doesn't read can't change what it finds, so it is asked once for all the rest.
 */
import type { Setting } from './choice.ts';

/** The exposure adds up: shutter and ISO count by their own stops, whatever the others are. */
const GEOMETRY: readonly Setting[] = ['aperture', 'tilt', 'light'];

export const JUDGED: Readonly<Record<string, readonly Setting[]>> = {
  'aperture-not-on-lens': ['aperture'],
  'diffraction-eats-detail': ['aperture'],
  'depth-short': ['aperture', 'tilt'],
  'focus-drifts': ['aperture', 'tilt'],
  'stack-short': ['aperture'],
  'stack-steps-too-coarse': ['aperture'],
  'stack-outlasts-subject': ['aperture', 'shutter'],
  'moves-in-stack': ['aperture', 'shutter'],
  'shutter-too-slow': ['shutter'],
  'motion-blur': ['shutter'],
  'lamp-flicker': ['shutter', 'light'],
  // With `auto` all of them, by the ISO that they need.
  'iso-out-of-range': ['iso'],
  'exposure-off': ['aperture', 'shutter', 'iso', 'tilt', 'light'],
  'background-washes': ['tilt', 'light'],
  'polariser-takes-the-colour': ['tilt', 'light'],
  'source-too-small': GEOMETRY,
  'lens-reflected': GEOMETRY,
  'no-room': ['aperture', 'light'],
};

export type Judged = string;

/** In the order in which they are asked: what costs little first. */
export const JUDGED_RULES: readonly Judged[] = Object.keys(JUDGED);

export const isJudged = (rule: string): boolean => Object.hasOwn(JUDGED, rule);
