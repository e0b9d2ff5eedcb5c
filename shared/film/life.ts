/**
 * How long a soap film lasts, by how it stands and what holds it. Common practice, not physics: a
 * plan's own `lifetime` always wins.
 */

type Stance = 'upright' | 'level';

export const HOLDERS = ['smooth-container', 'wicking-frame', 'closed-vessel'] as const;
export type Holder = (typeof HOLDERS)[number];

/**
 * Shortest and longest usual life, s. `hours`: "up to hours", for which nobody gives a figure to
 * plan by.
 */
type FilmLife =
  | { readonly kind: 'span'; readonly shortestS: number; readonly longestS: number }
  | { readonly kind: 'hours' };

/**
 * Usual life of a film, by common practice: upright in a smooth container 25 to 30 s; upright on a
 * wire frame wrapped with two layers of absorbent strip, which wicks what drains, 1 to 2 min;
 * level over a closed vessel up to hours.
 *
 * @returns null for other pairs: not known
 */
export function usualLife(stance: Stance, holder: Holder): FilmLife | null {
  if (stance === 'upright' && holder === 'smooth-container')
    return { kind: 'span', shortestS: 25, longestS: 30 };
  if (stance === 'upright' && holder === 'wicking-frame')
    return { kind: 'span', shortestS: 60, longestS: 120 };
  if (stance === 'level' && holder === 'closed-vessel') return { kind: 'hours' };
  return null;
}

/** Whether the holder's far wall shows behind the film as a reflection of its own. */
export const addsRearReflection = (holder: Holder): boolean => holder !== 'wicking-frame';

/** Holders that usually keep a film of this stance longer than the given one, longest first. */
export function longerHolders(stance: Stance, holder: Holder): readonly Holder[] {
  const length = (each: Holder): number => {
    const life = usualLife(stance, each);
    if (life === null) return Number.NaN;
    return life.kind === 'hours' ? Number.POSITIVE_INFINITY : life.shortestS;
  };
  return HOLDERS.filter((each) => length(each) > length(holder)).sort(
    (a, b) => length(b) - length(a),
  );
}
