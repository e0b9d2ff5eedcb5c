/** Every number that the figures of a shot have, as somebody asks how sure it is. */
import { CATALOGUE } from '../../shared/figures/catalogue/catalogue.ts';
import type { Shape } from '../../shared/figures/catalogue/shape.ts';
import type { Figure } from '../../shared/figures/figure.ts';
import type { ShotFigures } from '../../shared/figures/shot-figures.ts';
import type { Pick } from '../../shared/figures/uncertain.ts';

type Take = (figures: ShotFigures) => Figure<unknown>;

const half = (figure: Figure<unknown>, index: 0 | 1): Figure<number> =>
  figure.known ? { ...figure, value: (figure.value as readonly [number, number])[index] } : figure;

function numbersOf(name: string, shape: Shape, take: Take): readonly (readonly [string, Pick])[] {
  if (shape.kind === 'number') return [[name, take as Pick]];
  if (shape.kind !== 'pair') return [];
  return [
    [`${name}[0]`, (figures) => half(take(figures), 0)],
    [`${name}[1]`, (figures) => half(take(figures), 1)],
  ];
}

/** By name; the two of a pair apart. */
export const NUMBERS: readonly (readonly [name: string, pick: Pick])[] = CATALOGUE.flatMap(
  ([key, entry]) =>
    entry.kind === 'figure'
      ? numbersOf(key, entry.is, entry.of)
      : Object.entries(entry.parts).flatMap(([part, { is }]) =>
          numbersOf(`${key}.${part}`, is, (figures) => entry.of(figures)[part]!),
        ),
);
