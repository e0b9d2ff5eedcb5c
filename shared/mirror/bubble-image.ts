/**
 * Images of rim and lights in a bubble, as the frame shows them: place, size and blur.
 *
 * Off the axis the paraxial equation fails long before the bubble's edge (a light at 60° would be
 * put outside it), so the point of the sphere that throws the light into the pupil is found
 * exactly: the one at which both make the same angle with the normal. Depth, for the blur, by
 * Coddington's equations at that point. The bubble's centre is the origin.
 */
import { requireNotNegative, requirePositive } from './range.ts';
import { add, norm, scale, sub, type Vec } from './vector.ts';

export interface BubbleView {
  /** r, mm. */
  readonly radiusMm: number;
  /** Entrance pupil to the bubble's centre, mm; more than r. */
  readonly pupilFromCentreMm: number;
  /** Plane of focus in front of the bubble's centre, mm; r where it lies on the front vertex. */
  readonly focusFromCentreMm: number;
  /** D: diameter of the entrance pupil, mm. */
  readonly pupilMm: number;
  /** Pixels that 1 mm in the plane of focus takes up. */
  readonly pixelsPerMm: number;
}

/** `front`: upright in the convex near side; `rear`: upside down in the concave far side. */
export type BubbleWall = 'front' | 'rear';

interface ImagePoint {
  /** From the middle of the frame, in the plane of focus, mm. */
  readonly xMm: number;
  readonly yMm: number;
  /** Diameter of the blur circle, in the plane of focus, mm. */
  readonly blurMm: number;
}

function checked(view: BubbleView): void {
  requirePositive('the radius of the bubble r', view.radiusMm);
  requireNotNegative('the pupil D', view.pupilMm);
  requirePositive('the pixels per mm', view.pixelsPerMm);
  requirePositive('the pupil in front of the bubble', view.pupilFromCentreMm - view.radiusMm);
  requirePositive('the focus distance', view.pupilFromCentreMm - view.focusFromCentreMm);
}

type Vec2 = readonly [across: number, toward: number];

/** Angle from a to b, positive when b lies across. */
const turn = (a: Vec2, b: Vec2): number =>
  Math.atan2(b[0] * a[1] - b[1] * a[0], a[0] * b[0] + a[1] * b[1]);

/** Blur circle in the plane of focus of an image at distance `atMm` from the pupil. */
const blurOf = (view: BubbleView, focusMm: number, atMm: number): number =>
  Math.abs(atMm) === Number.POSITIVE_INFINITY
    ? view.pupilMm
    : Math.abs((view.pupilMm * (atMm - focusMm)) / atMm);

/**
 * Where a point shows in the bubble. The sphere's two points that would do are told apart by the
 * wall; further, weak images near the limb of the rear (after more than one bounce, or in the
 * second root of the concave side) are left out.
 *
 * @param at the point, from the bubble's centre, outside the bubble
 * @returns null where the wall doesn't throw it into the pupil: it lies in the bubble's shadow
 * @throws RangeError outside the ranges of `BubbleView`, or where the point is inside the bubble
 */
export function imagePoint(view: BubbleView, at: Vec, wall: BubbleWall): ImagePoint | null {
  checked(view);
  const { radiusMm: r, pupilFromCentreMm: e } = view;
  const distance = norm(at);
  requirePositive('the distance to the bubble', distance - r);
  const aside = Math.hypot(at[0], at[1]);
  const sign = wall === 'front' ? 1 : -1;
  const place = (turned: number) => {
    const normal: Vec2 = [Math.sin(turned), Math.cos(turned)];
    const point: Vec2 = [sign * r * normal[0], sign * r * normal[1]];
    const toPupil: Vec2 = [-point[0], e - point[1]];
    const toObject: Vec2 = [aside - point[0], at[2] - point[1]];
    return { normal, point, toPupil, toObject };
  };
  const unequal = (turned: number): number => {
    const { normal, toPupil, toObject } = place(turned);
    return turn(normal, toPupil) + turn(normal, toObject);
  };
  // The normal turns from the pupil (0) to the object: the angles are equal once on the way.
  let [low, high] = [0, Math.atan2(aside, at[2])];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (unequal(middle) > 0) low = middle;
    else high = middle;
  }
  const { normal, point, toPupil, toObject } = place((low + high) / 2);
  const incidence = Math.abs(turn(normal, toPupil));
  if (incidence >= Math.PI / 2 || Math.abs(turn(normal, toObject)) >= Math.PI / 2) return null;

  const focusMm = e - view.focusFromCentreMm;
  const across = (point[0] * focusMm) / (e - point[1]);
  const reach = Math.hypot(...toPupil);
  const objectAway = Math.hypot(...toObject);
  const cos = Math.cos(incidence);
  // Signed radius: a convex mirror's focal length is negative. The image lies so far toward the pupil.
  const power = (wall === 'front' ? -2 : 2) / r;
  const tangential = 1 / (power / cos - 1 / objectAway);
  const sagittal = 1 / (power * cos - 1 / objectAway);
  const blurs = [tangential, sagittal].map((toward) =>
    // Along the axis, not along the ray: planes of focus are square to the axis.
    blurOf(view, focusMm, ((reach - toward) * toPupil[1]) / reach),
  );
  const [cosAround, sinAround] = aside === 0 ? [1, 0] : [at[0] / aside, at[1] / aside];
  return { xMm: across * cosAround, yMm: across * sinAround, blurMm: Math.max(...blurs) };
}

export interface ImageInBubble {
  /** Middle of the image from the middle of the frame, pixels; x to the right, y up. */
  readonly xPx: number;
  readonly yPx: number;
  /** Size of the sharp image, pixels. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** Its edges are softened by this much, pixels. */
  readonly blurPx: number;
}

/** Points that the whole edge of an outline is followed by: what bulges between two is under 0.02 %. */
const POINTS_OF_EDGE = 64;

/** An outline with points along its sides too, at equal steps. */
function alongEdge(outline: readonly Vec[]): readonly Vec[] {
  const steps = Math.ceil(POINTS_OF_EDGE / outline.length);
  return outline.flatMap((from, index) => {
    const side = sub(outline[(index + 1) % outline.length]!, from);
    return Array.from({ length: steps }, (_, step) => add(from, scale(side, step / steps)));
  });
}

/**
 * An outline (of a light's face, of the rim) as the bubble shows it. A sphere bends straight sides
 * outward, so the whole edge is followed: by its corners alone a softbox comes out a tenth too small, a
 * strip half as high.
 *
 * @returns null where any point of the edge lies in the bubble's shadow
 */
export function imageOfOutline(
  view: BubbleView,
  outline: readonly Vec[],
  wall: BubbleWall,
): ImageInBubble | null {
  const points = alongEdge(outline).map((at) => imagePoint(view, at, wall));
  const shown = points.filter((point) => point !== null);
  if (shown.length === 0 || shown.length < points.length) return null;
  const xs = shown.map((point) => point.xMm);
  const ys = shown.map((point) => point.yMm);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [bottom, top] = [Math.min(...ys), Math.max(...ys)];
  const px = view.pixelsPerMm;
  return {
    xPx: ((left + right) / 2) * px,
    yPx: ((bottom + top) / 2) * px,
    widthPx: (right - left) * px,
    heightPx: (top - bottom) * px,
    blurPx: Math.max(...shown.map((point) => point.blurMm)) * px,
  };
}

/** The front rim's outline: a circle on the axis, from the bubble's centre. */
export function rimOutline(rimMm: number, rimFromCentreMm: number): readonly Vec[] {
  requirePositive('the rim R', rimMm);
  return Array.from({ length: POINTS_OF_EDGE }, (_, i): Vec => {
    const around = (2 * Math.PI * i) / POINTS_OF_EDGE;
    return [(rimMm / 2) * Math.cos(around), (rimMm / 2) * Math.sin(around), rimFromCentreMm];
  });
}
