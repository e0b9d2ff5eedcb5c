/** Where in the frame a flat shiny face shows a light. */
import type { FrameView } from './patch.ts';
import { cut, cutToRectangle, moments } from './polygon.ts';
import { filmSeenLit, inPlaneOfFocus } from './seen-lit.ts';
import type { Face, Source } from './source.ts';
import { between, dot, unit, type Vec } from './vector.ts';

export interface ImagePlace {
  /** Share of the frame in which some point of the pupil sees the light, 0 to 1. */
  readonly share: number;
  /**
   * Middle of that part; where the frame shows none of it, of the whole image. In half widths and half
   * heights of the frame from its middle: 1 is the right or the upper edge.
   */
  readonly across: number;
  readonly up: number;
}

/** Less than this part of the frame is rounding. */
const NOTHING = 1e-9;

/**
 * The mirror image of a light's face in a flat face through the subject's middle, as the pupil sees it,
 * with the soft edge that a pupil of some size gives it. Law of reflection; exact but for round edges,
 * which are drawn with 24 sides.
 *
 * @param normal unit normal of the face, toward the lens
 * @param face its outline, its middle in the subject's; left out: it fills the frame
 * @returns null where the lens sees no image: light or lens stands behind the face
 * @throws RangeError where the light has no extent
 */
export function imagePlace(
  view: FrameView,
  normal: Vec,
  source: Source,
  face?: Face,
): ImagePlace | null {
  const { any } = filmSeenLit(view, normal, source);
  const image = inPlaneOfFocus(view, any);
  const onFace = face ? inPlaneOfFocus(view, cutToFace(any, normal, face)) : image;
  const [halfWidth, halfHeight] = [view.widthMm / 2, view.heightMm / 2];
  const part = moments(cutToRectangle(onFace, halfWidth, halfHeight));
  const share = part.area / (4 * halfWidth * halfHeight);
  const isInFrame = share > NOTHING;
  const { area, x, y } = isInFrame ? part : moments(image);
  if (!(area > 0)) return null;
  return {
    share: isInFrame ? Math.min(1, share) : 0,
    across: x / area / halfWidth,
    up: y / area / halfHeight,
  };
}

const SIDES = 24;

/** The part of a polygon in the face's plane that lies on the face. */
function cutToFace(polygon: readonly Vec[], normal: Vec, face: Face): readonly Vec[] {
  // The normal of a tilt about the level axis has no x, that of one about the upright axis no y.
  const [x, y, z] = normal;
  const right = unit([z, 0, -x]);
  const up = unit([-x * y, x * x + z * z, -y * z]);
  const sides: readonly (readonly [right: number, up: number, reachMm: number])[] =
    face.shape === 'rectangle'
      ? [
          [1, 0, face.widthMm / 2],
          [-1, 0, face.widthMm / 2],
          [0, 1, face.heightMm / 2],
          [0, -1, face.heightMm / 2],
        ]
      : Array.from({ length: SIDES }, (_, i) => {
          const turn = (2 * Math.PI * i) / SIDES;
          return [Math.cos(turn), Math.sin(turn), face.diameterMm / 2] as const;
        });
  return sides.reduce(
    (rest, [a, b, reach]) => cut(rest, (p) => reach - a * dot(p, right) - b * dot(p, up), between),
    polygon,
  );
}
