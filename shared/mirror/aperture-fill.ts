/**
 * How much of the entrance pupil a light fills, at the place of the frame where it fills most.
 *
 * A point of a mirror sends the pupil light from where the light's image, seen through that point, lies
 * in the pupil. A light too small to fill it exposes that point by the share of the pupil's area that
 * it fills: illuminance on the sensor is luminance times the solid angle of the pupil that is lit
 * (camera equation; W. J. Smith, Modern Optical Engineering, ch. 8, from memory).
 */
import { type FilmSurface, filmPoint } from './film-surface.ts';
import { checkedFrame, type FrameView } from './patch.ts';
import { cut, inside, moments, type Point2 } from './polygon.ts';
import { type Source, sourceOutline } from './source.ts';
import { between, dot, scale, sub, type Vec } from './vector.ts';

/** Round lights and the pupil are drawn with so many sides; of equal area. */
const SIDES = 24;
/** Steps go down to this part of the frame. */
const FINEST = 1 / 512;
/** A pupil this full is full: its polygon is off by less. */
const FULL = 1 - 1e-6;

/**
 * The largest share of the pupil that the light fills for any point of the frame, 0 to 1.
 *
 * Seen over the frame it has one hill, as areas that two convex shapes share have. Where the light fills
 * nothing, the way leads to where its image comes nearer to the pupil. A bowed film is taken by its
 * tangent plane at each point, through which all rays of that point go.
 *
 * @throws RangeError where frame, distance or light have no extent
 */
export function apertureFill(view: FrameView, surface: FilmSurface, source: Source): number {
  checkedFrame(view);
  const outline = sourceOutline(source, SIDES);
  const pupil = pupilOutline(view);
  const fillAt = (at: Point2): Fill => filled(view, surface, outline, pupil, at);
  const { share } = climbed(view, fillAt);
  return share < FULL ? share : 1;
}

/** What a point of the frame gets of the light. */
interface Fill {
  /** Of the pupil, 0 to 1. */
  readonly share: number;
  /** How far the middle of the light's image lies from that of the pupil, mm. */
  readonly asideMm: number;
}

const isMore = (a: Fill, b: Fill): boolean =>
  a.share > b.share || (a.share === 0 && b.share === 0 && a.asideMm < b.asideMm);

function climbed({ widthMm, heightMm }: FrameView, fillAt: (at: Point2) => Fill): Fill {
  const within = (at: number, extent: number): number =>
    Math.max(-extent / 2, Math.min(extent / 2, at));
  let at: Point2 = [0, 0];
  let most = fillAt(at);
  for (let step = 1 / 4; step >= FINEST && most.share < FULL; ) {
    let [better, found] = [at, most];
    for (let turn = 0; turn < 8; turn += 1) {
      const next: Point2 = [
        within(at[0] + step * widthMm * Math.cos((turn * Math.PI) / 4), widthMm),
        within(at[1] + step * heightMm * Math.sin((turn * Math.PI) / 4), heightMm),
      ];
      const fill = fillAt(next);
      if (isMore(fill, found)) [better, found] = [next, fill];
    }
    if (isMore(found, most)) [at, most] = [better, found];
    else step /= 2;
  }
  return most;
}

const NOTHING_MM2 = 1e-12;

/** Counter-clockwise, its area that of the disc; a pinhole is drawn as a very small disc. */
function pupilOutline({ pupilMm }: FrameView): readonly Point2[] {
  const step = (2 * Math.PI) / SIDES;
  const radius = Math.max(pupilMm / 2, 1e-3) * Math.sqrt(step / Math.sin(step));
  return Array.from({ length: SIDES }, (_, i) => [
    radius * Math.cos(i * step),
    radius * Math.sin(i * step),
  ]);
}

function filled(
  { pupilDistanceMm: u }: FrameView,
  surface: FilmSurface,
  outline: readonly Vec[],
  pupil: readonly Point2[],
  [x, y]: Point2,
): Fill {
  const point = filmPoint(surface, [x, y, 0], [0, 0, u]);
  if (point === null) return NONE;
  const { at, normal } = point;
  const away = (p: Vec): number => dot(normal, sub(p, at));
  const images = cut(outline, away, between).map((p) => sub(p, scale(normal, 2 * away(p))));
  // What lies beside or before the point is thrown past the pupil.
  const behind = cut(images, (p) => at[2] - p[2] - 1e-6, between);
  if (behind.length < 3) return NONE;
  const thrown = behind.map((p): Point2 => {
    const t = (u - at[2]) / (at[2] - p[2]);
    return [at[0] + (at[0] - p[0]) * t, at[1] + (at[1] - p[1]) * t];
  });
  const { area } = moments(inside(thrown, pupil));
  const mean = (axis: 0 | 1): number => thrown.reduce((sum, p) => sum + p[axis], 0) / thrown.length;
  return {
    share: area > NOTHING_MM2 ? Math.min(1, area / moments(pupil).area) : 0,
    asideMm: Math.hypot(mean(0), mean(1)),
  };
}

const NONE: Fill = { share: 0, asideMm: Number.POSITIVE_INFINITY };
