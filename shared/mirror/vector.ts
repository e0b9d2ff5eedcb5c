/** Points and directions as seen from the camera: x to the right, y up, z toward the lens; mm. */
export type Vec = readonly [x: number, y: number, z: number];

export const add = (a: Vec, b: Vec): Vec => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Vec, b: Vec): Vec => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec, k: number): Vec => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
/** Not by Math.hypot, which takes ten times as long: no length here is near the ends of its range. */
export const norm = (a: Vec): number => Math.sqrt(dot(a, a));
export const unit = (a: Vec): Vec => scale(a, 1 / norm(a));

/** The point a + t·(b − a). */
export const between = (a: Vec, b: Vec, t: number): Vec => add(a, scale(sub(b, a), t));

/** The direction `toward` thrown back by a surface of unit normal `normal`: 2(n·v)n − v. */
export const reflected = (toward: Vec, normal: Vec): Vec =>
  sub(scale(normal, 2 * dot(normal, toward)), toward);
