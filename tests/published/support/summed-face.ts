/**
 * A glowing face summed over small pieces, each by the inverse-square and the cosine law
 * (J. H. Lambert, Photometria, 1760): a check on the closed form by brute force.
 */
export interface SummedFace {
  /** mm; of a round face its diameter, twice. */
  readonly width: number;
  readonly height: number;
  readonly isRound?: boolean;
  /** From the subject's middle, mm. */
  readonly distance: number;
  readonly upDeg: number;
  readonly acrossDeg: number;
}

type Vector = readonly [number, number, number];

const DEGREE = Math.PI / 180;

/**
 * E/L, sr, at the point `at` of a surface with this unit normal; the subject's middle is the
 * origin, the lens along z, up along y, the camera's right along x.
 */
export function summedWeight(
  { width, height, isRound, distance, upDeg, acrossDeg }: SummedFace,
  normal: Vector,
  at: Vector = [0, 0, 0],
  pieces = 160,
): number {
  const [up, across] = [upDeg * DEGREE, acrossDeg * DEGREE];
  const out = [
    Math.cos(up) * Math.sin(across),
    Math.sin(up),
    Math.cos(up) * Math.cos(across),
  ] as const;
  const right = [Math.cos(across), 0, -Math.sin(across)] as const;
  const above = [
    -Math.sin(up) * Math.sin(across),
    Math.cos(up),
    -Math.sin(up) * Math.cos(across),
  ] as const;
  const area = (width / pieces) * (height / pieces);
  let sum = 0;
  for (let i = 0; i < pieces; i++)
    for (let j = 0; j < pieces; j++) {
      const x = ((i + 0.5) / pieces - 0.5) * width;
      const y = ((j + 0.5) / pieces - 0.5) * height;
      if (isRound && Math.hypot(x, y) > width / 2) continue;
      const to = [0, 1, 2].map(
        (k) => distance * out[k]! + x * right[k]! + y * above[k]! - at[k]!,
      ) as unknown as Vector;
      const squared = to[0] ** 2 + to[1] ** 2 + to[2] ** 2;
      const far = Math.sqrt(squared);
      const leaving = (to[0] * out[0] + to[1] * out[1] + to[2] * out[2]) / far;
      const arriving = (to[0] * normal[0] + to[1] * normal[1] + to[2] * normal[2]) / far;
      sum += (Math.max(0, leaving) * Math.max(0, arriving) * area) / squared;
    }
  return sum;
}
