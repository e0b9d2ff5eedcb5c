/**
 * What a flat mirror-like subject reflects: the lens, the light, and the part of the frame that
 * neither fills.
 */

import { apertureFill } from '../mirror/aperture-fill.ts';
import { coverage } from '../mirror/coverage.ts';
import { coveredTiltsRad } from '../mirror/covered-tilts.ts';
import {
  bowCurvaturePerMm,
  type FilmSurface,
  filmSurface,
  type TiltAxis,
} from '../mirror/film-surface.ts';
import { leastTiltRad, type MirrorView } from '../mirror/least-tilt.ts';
import { type FrameView, type NeededLight, neededLight } from '../mirror/patch.ts';
import { shadeOf } from '../mirror/seen-lit.ts';
import type { Source } from '../mirror/source.ts';
import { greatestTiltByDepthRad } from '../mirror/tilt-window.ts';
import { message } from '../words/message.ts';
import { frontDiameter } from './assumed.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, unknownOf } from './figure.ts';
import { type Makers, once } from './lazily.ts';
import { sourceOf } from './light-source.ts';
import { isFlatMirror } from './mirror-kind.ts';
import { reliefMm } from './needed-depth.ts';
import { isNo } from './not-applicable.ts';
import { pupilDistanceMm } from './optical.ts';
import { remembered } from './remembered.ts';
import type {
  FlatMirrorFigures,
  LostLight,
  OpticalFigures,
  SharpnessFigures,
} from './shot-figures.ts';

const NO_MIRROR = isNo('flatMirror');

/**
 * Functions, since finding the right position of the light takes longer than everything else
 * together.
 */
export function flatMirrorFigures(
  bench: Bench,
  optical: OpticalFigures,
  sharpness: SharpnessFigures,
): Makers<FlatMirrorFigures> {
  const isMirror = isFlatMirror(bench);
  const where = <V>(make: () => Figure<V>) =>
    once((): Figure<V> => (isMirror ? make() : NO_MIRROR));
  const view = where(() => mirrorView(bench, optical));
  const frame = where(() => frameView(bench, optical));
  const least = where(() =>
    derive(
      [view()],
      (it) =>
        leastBy(bench.lens ?? NO_LENS, it) ??
        notKnown(message`the lens is reflected at every tilt under 60°`),
    ),
  );
  const byDepth = where(() => greatestByDepth(bench, optical, sharpness));
  const lit = where(() => litTilts(bench, frame()));
  const lost = where(() => lostByLight(bench, frame()));
  const dark = where(() => darkFrame(lost()));
  return {
    mirrorView: view,
    leastTiltRad: least,
    greatestTiltByDepthRad: byDepth,
    litTiltsRad: lit,
    tiltWindow: where(() => windowOf(least(), byDepth(), lit())),
    neededLight: where(() => nearestNeededLight(bench, frame())),
    lostByLight: lost,
    darkFrame: dark,
    shade: where(() => shadeIn(bench, frame(), dark())),
  };
}

const NO_LENS = {};

/** Traced once for each frame: over a hundred tilts, the minimum tilt is the same. */
function leastBy(lens: object, view: MirrorView): number | null {
  const { workingDistanceMm, rimMm, pupilMm, pupilBehindRimMm, fieldAlongMm } = view;
  const { bowMm = 0, bowOverMm = 0 } = view;
  return tracedLeast(
    lens,
    workingDistanceMm,
    rimMm,
    pupilMm,
    pupilBehindRimMm,
    fieldAlongMm,
    bowMm,
    bowOverMm,
  );
}

const tracedLeast = remembered(
  (
    _: object,
    workingDistanceMm: number,
    rimMm: number,
    pupilMm: number,
    pupilBehindRimMm: number,
    fieldAlongMm: number,
    bowMm: number,
    bowOverMm: number,
  ) =>
    leastTiltRad({
      workingDistanceMm,
      rimMm,
      pupilMm,
      pupilBehindRimMm,
      fieldAlongMm,
      ...(bowMm > 0 && { bowMm }),
      ...(bowMm > 0 && bowOverMm > 0 && { bowOverMm }),
    }),
);

function alongTilt<T>(bench: Bench, [width, height]: readonly [T, T]): T {
  return bench.tiltAxis === 'level' ? height : width;
}

/** Sag in mm and the extent that it is measured over; a film without one is flat. */
function bowOf({ subject }: Bench): Figure<number> {
  if (!subject || subject.fields.sag.state === 'missing') return known(0);
  return figureOf(subject.fields.sag, subject.name);
}

/** The subject's own size. If it isn't given, the subject is assumed to fill the frame. */
export function extentOf({
  subject,
}: Bench): Figure<{ width: number; height: number } | undefined> {
  if (!subject || subject.fields.size.state === 'missing') return known(undefined);
  return figureOf(subject.fields.size, subject.name);
}

function mirrorView(bench: Bench, optical: OpticalFigures): Figure<MirrorView> {
  const { lens } = bench;
  const { trace, workingDistanceMm, pupilDiameterMm, fieldMm } = optical;
  const pupilDistance = pupilDistanceMm(bench, optical);
  const rim = lens ? frontDiameter(lens) : unknownOf([trace]);
  return derive(
    [
      pupilDistance,
      workingDistanceMm,
      pupilDiameterMm,
      fieldMm,
      rim,
      bowOf(bench),
      extentOf(bench),
    ],
    (
      toPupil,
      distance,
      pupilMm,
      field,
      rimMm,
      bowMm,
      extent,
    ): MirrorView | ReturnType<typeof notKnown> => {
      if (!(distance > 0 && toPupil > 0))
        return notKnown(message`the subject would be inside the lens`);
      const fieldAlongMm = alongTilt(bench, field);
      if (!Number.isFinite(fieldAlongMm)) return notKnown(message`the field has no limit`);
      const size = extent && alongTilt(bench, [extent.width, extent.height]);
      if (bowMm > (size ?? fieldAlongMm) / 2) return tooDeep();
      return {
        workingDistanceMm: distance,
        rimMm,
        pupilMm,
        // From both distances, since a measured one needs no length of the lens for it.
        pupilBehindRimMm: toPupil - distance,
        fieldAlongMm,
        ...(bowMm > 0 && { bowMm, ...(size !== undefined && { bowOverMm: size }) }),
      };
    },
  );
}

/** The frame in the plane of focus, as the pupil sees it. */
export function frameView(bench: Bench, optical: OpticalFigures): Figure<FrameView> {
  const { fieldMm, pupilDiameterMm, workingDistanceMm } = optical;
  return derive(
    [fieldMm, pupilDistanceMm(bench, optical), pupilDiameterMm, workingDistanceMm],
    ([widthMm, heightMm], distance, pupilMm, room) =>
      room > 0 && Number.isFinite(widthMm)
        ? { widthMm, heightMm, pupilDistanceMm: distance, pupilMm }
        : notKnown(message`nothing in front of the lens is in focus`),
  );
}

function greatestByDepth(
  bench: Bench,
  { fieldMm }: OpticalFigures,
  { usableDepthMm }: SharpnessFigures,
): Figure<number> {
  // A stack takes the relief frame by frame.
  const relief = bench.subject && !bench.stack ? reliefMm(bench.subject) : known(0);
  return derive(
    [usableDepthMm, fieldMm, bowOf(bench), extentOf(bench), relief],
    (depth, field, bow, extent, reliefOf) => {
      const fieldAlongMm = alongTilt(bench, field);
      if (!Number.isFinite(fieldAlongMm)) return notKnown(message`the field has no limit`);
      const size = extent && alongTilt(bench, [extent.width, extent.height]);
      if (!Number.isFinite(depth)) return Math.PI / 2;
      // Relief needs its depth at any tilt, as a bow does.
      const bowMm = bow + reliefOf;
      return greatestTiltByDepthRad(
        { fieldAlongMm, subjectAlongMm: size ?? fieldAlongMm * 100, bowMm },
        depth,
      );
    },
  );
}

/**
 * The tilts that one light allows follow from its position and from the frame alone. A search that
 * tries a hundred tilts and shutter times needs the same few again and again.
 */
const coveredBy = remembered(
  (
    source: Source,
    about: number,
    widthMm: number,
    heightMm: number,
    pupilDistanceMm: number,
    pupilMm: number,
  ) =>
    coveredTiltsRad({ widthMm, heightMm, pupilDistanceMm, pupilMm }, source, TILT_AXES[about]!) ??
    NOWHERE,
);

const TILT_AXES: readonly TiltAxis[] = ['level', 'upright'];
const NOWHERE = { leastRad: 0, greatestRad: 0 };

/** The tilts at which the best light of the shot fills the frame. */
function litTilts(bench: Bench, frame: Figure<FrameView>): FlatMirrorFigures['litTiltsRad'] {
  const { lights } = bench;
  if (!lights.known) return lights;
  if (lights.value.length === 0) return notKnown(message`the shot has no light`);
  const axis = TILT_AXES.indexOf(bench.tiltAxis);
  const each = lights.value.map((light) =>
    derive([frame, sourceOf(light)], ({ widthMm, heightMm, pupilDistanceMm, pupilMm }, source) =>
      coveredBy(source, axis, widthMm, heightMm, pupilDistanceMm, pupilMm),
    ),
  );
  return derive(each, (...spans) =>
    spans.reduce((best, next) =>
      next.greatestRad - next.leastRad > best.greatestRad - best.leastRad ? next : best,
    ),
  );
}

/**
 * From the minimum tilt, which hides the lens, to the maximum tilt, which depth of field allows,
 * or the light if its position is known.
 */
function windowOf(
  least: Figure<number>,
  byDepth: Figure<number>,
  lit: FlatMirrorFigures['litTiltsRad'],
): FlatMirrorFigures['tiltWindow'] {
  const byLight = lit.known && lit.value.greatestRad > lit.value.leastRad ? lit : undefined;
  return derive([least, byDepth], (mirror, depth) => {
    const leastRad = mirror;
    const greatestRad = Math.min(depth, byLight?.value.greatestRad ?? Number.POSITIVE_INFINITY);
    return {
      leastRad,
      greatestRad,
      openRad: greatestRad - leastRad,
      byLight: byLight !== undefined,
    };
  });
}

/** Direction and size that the light nearest to its place needs to fill the frame. */
function nearestNeededLight(bench: Bench, frame: Figure<FrameView>): Figure<NeededLight> {
  const { lights, tiltRad, tiltAxis } = bench;
  const first = lights.known ? lights.value[0] : undefined;
  if (!first) return lights.known ? notKnown(message`the shot has no light`) : lights;
  return derive(
    [frame, tiltRad, sourceOf(first)],
    (view, tilt, { distanceMm }) =>
      neededLight(view, filmSurface(tilt, tiltAxis), distanceMm) ??
      notKnown(message`no flat light there could fill the frame`),
  );
}

/** More than half a sphere is no film on a frame. */
const tooDeep = () => notKnown(message`the sag is more than half of the film's extent`);

/** The film of the shot as it stands in the frame. */
export function surfaceOf(bench: Bench, frame: Figure<FrameView>): Figure<FilmSurface> {
  const { tiltRad, tiltAxis } = bench;
  return derive(
    [frame, tiltRad, bowOf(bench), extentOf(bench)],
    ({ widthMm, heightMm }, tilt, bowMm, extent) => {
      const along = alongTilt(bench, [extent?.width ?? widthMm, extent?.height ?? heightMm]);
      if (bowMm > along / 2) return tooDeep();
      return filmSurface(tilt, tiltAxis, bowMm > 0 ? bowCurvaturePerMm(bowMm, along) : 0);
    },
  );
}

/** The part of the frame that each light of the shot leaves dark by itself. */
function lostByLight(bench: Bench, frame: Figure<FrameView>): FlatMirrorFigures['lostByLight'] {
  const { lights } = bench;
  if (!lights.known) return lights;
  if (lights.value.length === 0) return notKnown(message`the shot has no light`);
  const film = surfaceOf(bench, frame);
  return known(
    lights.value.map((light) =>
      derive([frame, film, sourceOf(light)], (view, surface, source): LostLight => {
        const { lostShare, side } = coverage(view, surface, source);
        return { light: light.name, share: lostShare, side };
      }),
    ),
  );
}

/** Searched once for each place of a light: exposure and search ask for the same again and again. */
const fillBy = remembered(
  (
    source: Source,
    x: number,
    y: number,
    z: number,
    curvaturePerMm: number,
    widthMm: number,
    heightMm: number,
    pupilDistanceMm: number,
    pupilMm: number,
  ) =>
    apertureFill(
      { widthMm, heightMm, pupilDistanceMm, pupilMm },
      { normal: [x, y, z], curvaturePerMm },
      source,
    ),
);

/** The share of the aperture that a light fills where in the frame it fills most. */
export function apertureFilled(
  light: LightInUse,
  bench: Bench,
  optical: OpticalFigures,
): Figure<number> {
  const frame = frameView(bench, optical);
  return derive(
    [frame, surfaceOf(bench, frame), sourceOf(light)],
    ({ widthMm, heightMm, pupilDistanceMm: u, pupilMm }, { normal, curvaturePerMm }, source) =>
      fillBy(source, ...normal, curvaturePerMm, widthMm, heightMm, u, pupilMm),
  );
}

/** The share of the frame's light that is missing with the best light of the shot. */
function darkFrame(lost: FlatMirrorFigures['lostByLight']): FlatMirrorFigures['darkFrame'] {
  if (!lost.known) return lost;
  return derive(lost.value, (...shares) =>
    shares.reduce((best, next) => (next.share < best.share ? next : best)),
  );
}

/** The part of the frame that the same light leaves black, and the part that is only dimmed. */
function shadeIn(
  bench: Bench,
  frame: Figure<FrameView>,
  dark: FlatMirrorFigures['darkFrame'],
): FlatMirrorFigures['shade'] {
  const light =
    dark.known && bench.lights.known
      ? bench.lights.value.find(({ name }) => name === dark.value.light)
      : undefined;
  if (!light) return unknownOf([dark]);
  return derive([frame, surfaceOf(bench, frame), sourceOf(light)], shadeOf);
}
