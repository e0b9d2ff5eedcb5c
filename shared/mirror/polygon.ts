/** Convex polygons: cut, measured. Sutherland and Hodgman 1974; area and centroid by Green. */

export type Point2 = readonly [number, number];

/**
 * The part of a convex polygon where `inside` is 0 or more; `inside` is linear over its edges.
 * `between` gives the point at fraction t from a to b.
 */
export function cut<P>(
  polygon: readonly P[],
  inside: (point: P) => number,
  between: (a: P, b: P, t: number) => P,
): readonly P[] {
  const kept: P[] = [];
  polygon.forEach((point, i) => {
    const next = polygon[(i + 1) % polygon.length] as P;
    const [here, there] = [inside(point), inside(next)];
    if (here >= 0) kept.push(point);
    if (here >= 0 !== there >= 0) kept.push(between(point, next, here / (here - there)));
  });
  return kept;
}

const between2 = (a: Point2, b: Point2, t: number): Point2 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
];

/** The part of a convex polygon inside the rectangle of half extents w and h about the origin. */
export function cutToRectangle(
  polygon: readonly Point2[],
  halfWidth: number,
  halfHeight: number,
): readonly Point2[] {
  const edges: readonly ((p: Point2) => number)[] = [
    (p) => halfWidth - p[0],
    (p) => halfWidth + p[0],
    (p) => halfHeight - p[1],
    (p) => halfHeight + p[1],
  ];
  return edges.reduce((rest, inside) => cut(rest, inside, between2), polygon);
}

/** Area (positive however the polygon runs) and first moments: area times centroid. */
export function moments(polygon: readonly Point2[]): { area: number; x: number; y: number } {
  let area = 0;
  let x = 0;
  let y = 0;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] as Point2;
    const cross = a[0] * b[1] - b[0] * a[1];
    area += cross / 2;
    x += (cross * (a[0] + b[0])) / 6;
    y += (cross * (a[1] + b[1])) / 6;
  });
  const sign = area < 0 ? -1 : 1;
  return { area: area * sign, x: x * sign, y: y * sign };
}

const turn = (a: Point2, b: Point2, c: Point2): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** The convex hull of points, counter-clockwise (monotone chain; A. Andrew 1979). */
export function hull(points: readonly Point2[]): readonly Point2[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (along: readonly Point2[]): readonly Point2[] => {
    const chain: Point2[] = [];
    for (const point of along) {
      while (chain.length >= 2 && turn(chain.at(-2)!, chain.at(-1)!, point) <= 0) chain.pop();
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** What two convex polygons share; `other` runs counter-clockwise. */
export function inside(polygon: readonly Point2[], other: readonly Point2[]): readonly Point2[] {
  if (other.length < 3) return [];
  return other.reduce((rest, a, i) => {
    const b = other[(i + 1) % other.length] as Point2;
    return cut(rest, (p) => turn(a, b, p), between2);
  }, polygon);
}
