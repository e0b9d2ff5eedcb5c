/** The distance between a light's face and a round body that stand well apart: exact, in few steps. */
import { planeOf, type Source } from './source.ts';
import { add, dot, norm, scale, sub, type Vec } from './vector.ts';

/** A round body with flat ends: a lens with its tubes, a stand's column, a boom's arm. */
export interface Cylinder {
  readonly from: Vec;
  readonly to: Vec;
  readonly diameterMm: number;
}

/** A convex body by what a search asks of it. */
interface Body {
  readonly nearestTo: (point: Vec) => Vec;
  /** How far it reaches along a direction. */
  readonly reachAlong: (direction: Vec) => number;
}

const STEPS = 200;
/** Share of the distance that it may be off by. */
const EXACT = 1e-6;

/**
 * Each body's nearest point to the other's, in turn (alternating projections between convex sets);
 * done once the plane between the two proves that nothing is nearer.
 *
 * @returns mm; undefined: they meet, or it is too close to tell in so many steps
 */
export function apartMm(source: Source, cylinder: Cylinder): number | undefined {
  const [face, round] = [faceOf(source), bodyOf(cylinder)];
  let on = face.nearestTo(scale(add(cylinder.from, cylinder.to), 0.5));
  for (let step = 0; step < STEPS; step++) {
    const other = round.nearestTo(on);
    on = face.nearestTo(other);
    const gap = sub(on, other);
    const distance = norm(gap);
    if (!(distance > 0)) return undefined;
    const toward = scale(gap, 1 / distance);
    const atLeast = -face.reachAlong(scale(toward, -1)) - round.reachAlong(toward);
    if (distance - atLeast <= EXACT * distance) return distance;
  }
  return undefined;
}

const within = (value: number, half: number): number => Math.max(-half, Math.min(half, value));

function faceOf(source: Source): Body {
  const { face } = source;
  const { centre, right, up } = planeOf(source);
  const at = (r: number, u: number): Vec => add(centre, add(scale(right, r), scale(up, u)));
  const along = (v: Vec): readonly [number, number] => [dot(v, right), dot(v, up)];
  if (face.shape === 'rectangle') {
    const [halfWidth, halfHeight] = [face.widthMm / 2, face.heightMm / 2];
    return {
      nearestTo: (point) => {
        const [r, u] = along(sub(point, centre));
        return at(within(r, halfWidth), within(u, halfHeight));
      },
      reachAlong: (direction) => {
        const [r, u] = along(direction);
        return dot(centre, direction) + Math.abs(r) * halfWidth + Math.abs(u) * halfHeight;
      },
    };
  }
  const radius = face.diameterMm / 2;
  return {
    nearestTo: (point) => {
      const [r, u] = along(sub(point, centre));
      const back = Math.min(1, radius / (Math.hypot(r, u) || radius));
      return at(r * back, u * back);
    },
    reachAlong: (direction) => dot(centre, direction) + radius * Math.hypot(...along(direction)),
  };
}

function bodyOf({ from, to, diameterMm }: Cylinder): Body {
  const [whole, radius] = [sub(to, from), diameterMm / 2];
  const length = norm(whole);
  const axis = scale(whole, 1 / length);
  return {
    nearestTo: (point) => {
      const off = sub(point, from);
      const z = dot(off, axis);
      const aside = sub(off, scale(axis, z));
      const back = Math.min(1, radius / (norm(aside) || radius));
      return add(add(from, scale(axis, Math.max(0, Math.min(length, z)))), scale(aside, back));
    },
    reachAlong: (direction) => {
      const z = dot(direction, axis);
      const aside = Math.sqrt(Math.max(0, dot(direction, direction) - z * z));
      return Math.max(dot(from, direction), dot(to, direction)) + radius * aside;
    },
  };
}
