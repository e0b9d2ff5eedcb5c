/**
 * Adaptation from one white to another: Bradford's matrix, each cone response scaled on its own.
 *
 * Source: ICC.1:2022, Annex E (linear Bradford, with the matrix and its use).
 */
import type { Tristimulus } from './colour-matching.ts';

type Row = readonly [number, number, number];
type Matrix = readonly [Row, Row, Row];

const BRADFORD: Matrix = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
];

const times = (matrix: Matrix, [a, b, c]: Row): Row => {
  const row = (r: Row): number => r[0] * a + r[1] * b + r[2] * c;
  return [row(matrix[0]), row(matrix[1]), row(matrix[2])];
};

function inverse([[a, b, c], [d, e, f], [g, h, i]]: Matrix): Matrix {
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  return [
    [(e * i - f * h) / det, (c * h - b * i) / det, (b * f - c * e) / det],
    [(f * g - d * i) / det, (a * i - c * g) / det, (c * d - a * f) / det],
    [(d * h - e * g) / det, (b * g - a * h) / det, (a * e - b * d) / det],
  ];
}

const BACK = inverse(BRADFORD);
const rowOf = ({ x, y, z }: Tristimulus): Row => [x, y, z];

/** The colour that looks under white `to` as `colour` looks under white `from`. */
export function adapted(colour: Tristimulus, from: Tristimulus, to: Tristimulus): Tristimulus {
  const cones = times(BRADFORD, rowOf(colour));
  const source = times(BRADFORD, rowOf(from));
  const target = times(BRADFORD, rowOf(to));
  const scale = (i: 0 | 1 | 2): number => (cones[i] * target[i]) / source[i];
  const [x, y, z] = times(BACK, [scale(0), scale(1), scale(2)]);
  return { x, y, z };
}
