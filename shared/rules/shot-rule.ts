/** The input of rules about a shot, and what they share. */

import type { Bench } from '../figures/bench.ts';
import type { KnownFigure } from '../figures/figure.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { isOf, keyOfEntry } from '../plan/entry-id.ts';
import type { Place } from '../plan/place.ts';
import { message } from '../words/message.ts';
import type { Related, Rule } from './rule.ts';

export interface ShotView {
  readonly bench: Bench;
  readonly figures: ShotFigures;
  /** The shot with another rig of the plan; used only in the search for fixes. */
  readonly withRig?: (rig: string) => ShotView;
}

export type ShotRule<F> = Rule<F, ShotView>;

/** Number of causes that are named; the nearest come first. */
const MOST_RELATED = 2;

/** Keys that a finding may follow from but that nobody decides while planning a shot. */
const GIVEN_BY_THE_MAKER = new Set([
  'flange-distance',
  'length',
  'extends',
  'pupil-ratio',
  'loss',
  'recording-modes',
]);

/** Order of causes: the shot's own values, its subject, its rig, its light, then kit. */
const NEARNESS = ['shots', 'subjects', 'rigs', 'lights'] as const;

/** "`focal-length` of long-200", for a place that a finding follows from. */
export function placeWords(place: Place): string {
  const name = keyOfEntry(place.entry);
  const key = place.path.filter((step) => typeof step === 'string').join('.');
  return key ? message`\`${key}\` of ${name}` : name;
}

/**
 * The decided values that figures follow from, except the one at fault: each key of an entry once,
 * the nearest causes first.
 */
export function relatedTo(at: Place, ...figures: readonly KnownFigure<unknown>[]): Related[] {
  // A figure follows from about a hundred places, so only the few that are kept are converted.
  const nearest: { readonly place: Place; readonly near: number }[] = [];
  for (const figure of figures)
    for (const place of figure.from) {
      const near = nearnessOf(place);
      const worst = nearest[MOST_RELATED - 1];
      if ((worst && near >= worst.near) || GIVEN_BY_THE_MAKER.has(String(place.path[0]))) continue;
      if (sameKey(place, at) || nearest.some((kept) => sameKey(place, kept.place))) continue;
      const behind = nearest.findIndex((kept) => near < kept.near);
      nearest.splice(behind < 0 ? nearest.length : behind, 0, { place, near });
      nearest.length = Math.min(nearest.length, MOST_RELATED);
    }
  return nearest.map(({ place }) => {
    const whole = outermost(place);
    return { at: whole, words: placeWords(whole) };
  });
}

/** Both below the same key of the same entry. */
const sameKey = (a: Place, b: Place): boolean =>
  a.path[0] === b.path[0] && a.entry === b.entry && a.file === b.file;

/** The entry's own key that a place stands below. */
const outermost = (place: Place): Place => ({ ...place, path: place.path.slice(0, 1) });

function nearnessOf({ entry }: Place): number {
  const found = NEARNESS.findIndex((group) => isOf(group, entry));
  return found < 0 ? NEARNESS.length : found;
}

export const placeKey = (place: Place): string =>
  `${place.file} ${place.entry} ${place.path.join('.')}`;
