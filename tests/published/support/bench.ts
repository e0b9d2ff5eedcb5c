import type { Random } from './random.ts';

/**
 * An optical bench for brute force, apart from the code under test: thin elements at places along the
 * axis, rays followed by height and angle from element to element (refraction u' = u − y/f, Smith's
 * paraxial ray trace). z grows from the sensor (0) toward the subject.
 */
export interface Element {
  readonly z: number;
  readonly focal: number;
}

export interface Ray {
  readonly z: number;
  readonly y: number;
  readonly slope: number;
}

/** Follows a ray through elements in the order in which they are given, toward the subject. */
export function toward(ray: Ray, elements: readonly Element[]): Ray {
  let { z, y, slope } = ray;
  for (const element of elements) {
    y += slope * (element.z - z);
    slope -= y / element.focal;
    z = element.z;
  }
  return { z, y, slope };
}

/** Follows a ray from the subject back to the sensor; `elements` still in order from the sensor. */
export function back(ray: Ray, elements: readonly Element[]): Ray {
  const mirrored = elements.toReversed().map(({ z, focal }) => ({ z: -z, focal }));
  const { z, y, slope } = toward({ z: -ray.z, y: ray.y, slope: -ray.slope }, mirrored);
  return { z: -z, y, slope: -slope };
}

/** Height of a ray at a plane. */
export function heightAt(ray: Ray, z: number): number {
  return ray.y + ray.slope * (z - ray.z);
}

/** Where rays from a point of the axis at `z` meet the axis again. */
export function imageOf(z: number, elements: readonly Element[]): number {
  const out = toward({ z, y: 0, slope: 1 }, elements);
  return out.z - out.y / out.slope;
}

/** A lens of two thin groups with a stop between, as measured on the bench. */
export interface TwoGroupLens {
  readonly focal: number;
  /** Exit over entrance pupil. */
  readonly pupilRatio: number;
  /** Height at the stop over height at the entrance pupil. */
  readonly stopScale: number;
  /** Separation of the principal planes, front less rear. */
  readonly hiatus: number;
  /** Rear group, stop and front group, ahead of the rear principal plane. */
  readonly rear: Element;
  readonly stop: number;
  readonly front: Element;
  /** Entrance pupil ahead of the front principal plane. */
  readonly pupilAhead: number;
}

/** A random lens of positive focal length with real room for its stop. */
export function randomLens(random: Random): TwoGroupLens {
  for (;;) {
    const sign = random.pick([1, 1, -1]);
    const front = { z: 0, focal: random.spread(25, 300) };
    const gap = random.between(5, 80);
    const rear = { z: -gap, focal: sign * random.spread(25, 300) };
    const stop = -gap * random.between(0.05, 0.95);
    // Parallel light from the subject gives the rear principal plane, from the sensor the front one.
    const in_ = back({ z: 10, y: 1, slope: 0 }, [rear, front]);
    const focal = 1 / in_.slope;
    const rearPrincipal = in_.z + (1 - in_.y) / in_.slope;
    const out = toward({ z: -gap - 10, y: 1, slope: 0 }, [rear, front]);
    const frontPrincipal = out.z + (1 - out.y) / out.slope;
    if (!(focal > 15 && focal < 400)) continue;
    // The stop seen through the front group is the entrance pupil, through the rear group the exit pupil.
    const entrance = pupilThrough(stop, front, 1);
    const exit = pupilThrough(stop, rear, -1);
    if (!(entrance.scale > 0.2 && exit.scale > 0.2)) continue;
    if (entrance.scale > 5 || exit.scale > 5) continue;
    return {
      focal,
      pupilRatio: exit.scale / entrance.scale,
      stopScale: 1 / entrance.scale,
      hiatus: frontPrincipal - rearPrincipal,
      rear: { z: rear.z - rearPrincipal, focal: rear.focal },
      stop: stop - rearPrincipal,
      front: { z: front.z - rearPrincipal, focal: front.focal },
      pupilAhead: entrance.z - frontPrincipal,
    };
  }
}

/** Image of the stop's plane by one group: its place, and its size over the stop's. */
function pupilThrough(stop: number, group: Element, direction: 1 | -1) {
  const distance = direction * (group.z - stop);
  const onAxis = { y: distance, slope: 1 - distance / group.focal };
  const offAxis = { y: 1, slope: -1 / group.focal };
  const ahead = -onAxis.y / onAxis.slope;
  return { z: group.z + direction * ahead, scale: offAxis.y + offAxis.slope * ahead };
}

/** A converter of two thin groups, by how it is used: what it does to an image behind a lens. */
export interface TwoGroupConverter {
  readonly factor: number;
  readonly length: number;
  /** Its groups, rear first, measured from the place where the image would fall without it. */
  readonly elements: readonly Element[];
}

/**
 * A random converter. Its front group and gap are drawn, its rear group follows from the factor, and its
 * length is then how far it puts the image back. Not a thin lens: its principal planes are apart.
 */
export function randomConverter(random: Random): TwoGroupConverter {
  for (;;) {
    const factor = random.between(1.2, 2.6);
    const ahead = random.between(15, 60);
    const frontFocal = random.pick([-1, -1, 1]) * random.spread(60, 400);
    const gap = random.between(2, 12);
    // Virtual object `ahead` behind the front group; then what is left of it behind the rear group.
    const first = 1 / (1 / frontFocal + 1 / ahead);
    const left = first - gap;
    if (!(first > 0 && left > 5)) continue;
    const image = (factor * ahead * left) / first;
    const rearFocal = 1 / (1 / image - 1 / left);
    const length = gap + image - ahead;
    if (length < 5 || !Number.isFinite(rearFocal) || rearFocal > 0) continue;
    return {
      factor,
      length,
      elements: [
        { z: ahead - gap, focal: rearFocal },
        { z: ahead, focal: frontFocal },
      ],
    };
  }
}
