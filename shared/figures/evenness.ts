/** How evenly the lights cover the frame. A lamp close to the subject lights it less evenly. */
import { unevenStops } from '../exposure/unevenness.ts';
import { filmPoint, filmSurface } from '../mirror/film-surface.ts';
import { type Source, sourceOutline } from '../mirror/source.ts';
import type { Vec } from '../mirror/vector.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, type UnknownFigure } from './figure.ts';
import { extentOf } from './flat-mirror.ts';
import { type Makers, once } from './lazily.ts';
import { errorBy } from './light.ts';
import { sourceOf, weightOn } from './light-source.ts';
import { mirrorKind } from './mirror-kind.ts';
import { scatters } from './moved-light.ts';
import { pupilDistanceMm } from './optical.ts';
import { remembered } from './remembered.ts';
import type { EvennessFigures, OpticalFigures, TimeFigures } from './shot-figures.ts';
import { shinesThrough } from './through.ts';

/** Places across the frame and down it, its edges among them. */
const PLACES = 13;

export function evennessFigures(
  bench: Bench,
  optical: OpticalFigures,
  time: TimeFigures,
): Makers<EvennessFigures> {
  return { unevennessStops: once(() => unevennessOf(bench, optical, time)) };
}

/**
 * Over what the frame shows of a tilted subject that scatters light. A mirror-like subject shows the
 * luminance of the light's face, which is the same from everywhere. It is even as far as the face
 * glows evenly and fills the frame.
 */
function unevennessOf(
  bench: Bench,
  optical: OpticalFigures,
  { shutterSeconds }: TimeFigures,
): Figure<number> {
  const { lights, tiltRad } = bench;
  if (mirrorKind(bench) !== undefined) return derive([scatters(bench)], () => 0);
  if (!lights.known) return lights;
  // Through a clear subject a face is as bright from everywhere, as in a mirror.
  if (lights.value.length > 0 && lights.value.every((light) => shinesThrough(light, bench)))
    return derive([scatters(bench)], () => 0);
  if (lights.value.length === 0) return notKnown(message`the shot has no light`);
  const faces = derive(lights.value.map(sourceOf), (...all): readonly Source[] => all);
  // The brightness of a single light doesn't matter; that of several weights them against each
  // other.
  const errors: Figure<readonly number[]> =
    lights.value.length === 1
      ? known([0])
      : derive(
          lights.value.map((light) => errorBy(light, bench, optical, shutterSeconds)),
          (...all): readonly number[] => all,
        );
  // If the subject faces the lens, the frame lies in the plane of the subject from every viewpoint.
  const isSquare = tiltRad.known && tiltRad.value === 0;
  const distance = isSquare ? known(Number.POSITIVE_INFINITY) : pupilDistanceMm(bench, optical);
  const over = (frame: Frame): number | UnknownFigure => unevenOver(frame, bench);
  return derive(
    [optical.fieldMm, distance, tiltRad, faces, errors, scatters(bench), outlineOf(bench)],
    (fieldMm, pupilMm, tilt, sources, stops, _finish, outline) => {
      const seen = seenOf(fieldMm, outline, tilt, bench);
      return likeTheMiddle(bench, { sizes: [...seen, pupilMm, tilt, ...stops], sources }, over);
    },
  );
}

/** Width and height of the subject, mm; infinite without a size: then it fills the frame. */
interface Outline {
  readonly width: number;
  readonly height: number;
  readonly isRound: boolean;
}

function outlineOf(bench: Bench): Figure<Outline> {
  const { subject } = bench;
  if (subject && subject.fields.diameter.state !== 'missing')
    return derive([figureOf(subject.fields.diameter, subject.name)], (diameter) => ({
      width: diameter,
      height: diameter,
      isRound: true,
    }));
  return derive([extentOf(bench)], (size) => ({
    width: size?.width ?? Number.POSITIVE_INFINITY,
    height: size?.height ?? Number.POSITIVE_INFINITY,
    isRound: false,
  }));
}

/**
 * The part of the frame that the subject fills, mm wide and high, then both diameters of a round one,
 * infinite of others. It is shortened along its tilt as from afar.
 */
function seenOf(
  [width, height]: readonly [number, number],
  { isRound, ...outline }: Outline,
  tiltRad: number,
  { tiltAxis }: Bench,
): readonly [number, number, number, number] {
  const shortened = Math.cos(tiltRad);
  const across = outline.width * (tiltAxis === 'level' ? 1 : shortened);
  const down = outline.height * (tiltAxis === 'level' ? shortened : 1);
  const endless = Number.POSITIVE_INFINITY;
  return [
    Math.min(width, across),
    Math.min(height, down),
    isRound ? across : endless,
    isRound ? down : endless,
  ];
}

/** What the unevenness depends on beside the subject. */
interface Frame {
  /**
   * Width and height, both diameters of a round subject, distance of the entrance pupil (mm), tilt (rad),
   * then the stops of each light.
   */
  readonly sizes: readonly number[];
  readonly sources: readonly Source[];
}

interface Evened {
  readonly frame: Frame;
  readonly stops: number | UnknownFigure;
}

/** Of shots as the plan has them, by their lights. */
const middles = new WeakMap<Bench['lights'], Evened>();

/** Less than this share of a size is rounding, as where bounds are looked for. */
const ROUNDING = 1e-9;

/**
 * The unevenness takes long. Where only the lens stands otherwise, the ring is set for the same field
 * again and the frame is the same but for rounding: then so is its light.
 */
function likeTheMiddle(
  { lights, constants }: Bench,
  frame: Frame,
  work: (frame: Frame) => number | UnknownFigure,
): number | UnknownFigure {
  const isMiddle = constants.lensStands === null;
  const middle = middles.get(lights);
  if (!isMiddle && middle && isSameFrame(middle.frame, frame)) return middle.stops;
  const stops = work(frame);
  if (isMiddle) middles.set(lights, { frame, stops });
  return stops;
}

const isSameFrame = (a: Frame, b: Frame): boolean =>
  a.sources.length === b.sources.length &&
  a.sources.every((source, index) => source === b.sources[index]) &&
  a.sizes.every((size, index) => isNear(size, b.sizes[index]!));

const isNear = (a: number, b: number): boolean =>
  a === b || Math.abs(a - b) <= ROUNDING * Math.abs(a);

function unevenOver(
  { sizes, sources }: Frame,
  { lights, tiltAxis }: Bench,
): number | UnknownFigure {
  const [width, height, across, down, pupilMm, tilt, ...stops] = sizes as readonly [
    number,
    number,
    number,
    number,
    number,
    number,
    ...number[],
  ];
  const dark = sources.findIndex((source) => weightOn(source, tilt, tiltAxis) === 0);
  if (dark >= 0 && lights.known)
    return notKnown(message`${lights.value[dark]!.name} shines on the back of the subject`);
  const isLevel = tiltAxis === 'level' ? 1 : 0;
  const seen: Seen = [width, height, across, down, pupilMm, tilt, isLevel];
  const over =
    sources.length === 1 ? ofOneLight(sources[0]!, ...seen) : stopsOver(sources, stops, seen);
  return over ?? notKnown(message`the frame looks past the subject`);
}

/**
 * Width and height, both diameters of a round subject, distance of the entrance pupil (mm), tilt (rad),
 * and 1 where its axis is level.
 */
type Seen = readonly [number, number, number, number, number, number, number];

/** Shots that frame alike under one light are as even as each other: their light is one object. */
const ofOneLight = remembered((source: Source, ...seen: Seen) => stopsOver([source], [0], seen));

/** undefined: the frame looks past the subject. */
function stopsOver(
  sources: readonly Source[],
  stops: readonly number[],
  [width, height, across, down, pupilMm, tilt, isLevel]: Seen,
): number | undefined {
  const surface = filmSurface(tilt, isLevel === 1 ? 'level' : 'upright');
  const places = placesOf([width, height], [across, down]).map((at) =>
    tilt === 0 ? at : filmPoint(surface, at, [0, 0, pupilMm])?.at,
  );
  const seen = places.filter((place): place is Vec => place !== undefined);
  if (seen.length < places.length) return undefined;
  return unevenStops(
    sources.map((source, index) => ({
      outline: sourceOutline(source),
      atMiddle: 2 ** stops[index]!,
    })),
    seen,
    surface.normal,
  );
}

/** Places in the plane of focus, from edge to edge, and none outside a round subject. */
function placesOf(
  [width, height]: readonly [width: number, height: number],
  [across, down]: readonly [across: number, down: number],
): readonly Vec[] {
  const steps = Array.from({ length: PLACES }, (_, step) => step / (PLACES - 1) - 0.5);
  return steps
    .flatMap((x) => steps.map((y): Vec => [x * width, y * height, 0]))
    .filter(([x, y]) => Math.hypot((2 * x) / across, (2 * y) / down) <= 1 + ROUNDING);
}
