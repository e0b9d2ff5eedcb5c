/** What rules about a shot look at, and what they share. */
import type { Bench } from '../figures/bench.ts';
import type { KnownFigure } from '../figures/figure.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import type { Place } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import type { Related, Rule } from './rule.ts';

export interface ShotView {
  readonly bench: Bench;
  readonly figures: ShotFigures;
}

export type ShotRule<F> = Rule<F, ShotView>;

/** More than this a reader does not follow; the nearest causes come first. */
const MOST_RELATED = 4;

/** "`focal` of long-200", for a place that a finding follows from. */
export function placeWords(place: Place): string {
  const name = place.entry.split('/').at(-1) ?? place.entry;
  const key = place.path.filter((step) => typeof step === 'string').join('.');
  return key ? `\`${key}\` of ${name}` : name;
}

/** The places that figures follow from, but for the one at fault, each once, in order. */
export function relatedTo(at: Place, ...figures: readonly KnownFigure<unknown>[]): Related[] {
  const seen = new Set([placeKey(at)]);
  const related: Related[] = [];
  for (const place of figures.flatMap((figure) => figure.from)) {
    const key = placeKey(place);
    if (seen.has(key)) continue;
    seen.add(key);
    related.push({ at: place, words: placeWords(place) });
  }
  return related.slice(0, MOST_RELATED);
}

export const placeKey = (place: Place): string =>
  `${place.file} ${place.entry} ${place.path.join('.')}`;

/** A fix that writes one value where one stands, or where it would stand. */
export const setTo = (title: string, at: Place, text: string): PlanFix => ({
  title,
  edits: [{ op: 'set', at, text }],
});
