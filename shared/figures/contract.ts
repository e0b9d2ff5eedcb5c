/** The figures of a shot as JSON, in the names and the order of the catalogue. */
import { boundsJson } from './bounds-json.ts';
import { CATALOGUE } from './catalogue/catalogue.ts';
import type { Figure } from './figure.ts';
import type { JsonFigure, ShotFiguresJson } from './json.ts';
import { type Reason, reasonFor, reasonsOf } from './reasons.ts';
import type { ShotFigures } from './shot-figures.ts';
import type { UncertainShot } from './uncertain.ts';

/** @param uncertain the same shot, where bounds are asked for too */
export function figuresJson(figures: ShotFigures, uncertain?: UncertainShot): ShotFiguresJson {
  const reasons: Reason[] = [];
  const measured: string[] = [];
  const one = (figure: Figure<unknown>, name: string): JsonFigure => {
    if (figure.known) {
      if (figure.measured) measured.push(name);
      return plain(figure.value);
    }
    reasons.push(reasonFor(name, figure));
    return null;
  };
  const out = CATALOGUE.map(([key, entry]): [string, JsonFigure] => {
    if (entry.kind === 'figure') return [key, one(entry.of(figures), key)];
    const parts = Object.entries(entry.of(figures));
    return [
      key,
      Object.fromEntries(parts.map(([part, figure]) => [part, one(figure, `${key}.${part}`)])),
    ];
  });
  return {
    ...Object.fromEntries(out),
    notKnown: reasonsOf(reasons),
    ...(measured.length > 0 && { measured }),
    ...(uncertain && boundsJson(uncertain)),
  };
}

const endless = (value: number): number | 'endless' =>
  value === Number.POSITIVE_INFINITY ? 'endless' : value;

/** What a figure's value becomes: numbers and arrays of numbers as they are, infinity in words. */
function plain(value: unknown): JsonFigure {
  if (typeof value === 'number') return endless(value);
  if (Array.isArray(value)) return value.map((item) => plain(item)) as JsonFigure;
  return value as JsonFigure;
}
