/** The image of the lights in a glossy subject: how far it lies over mid-grey, and over what clips. */
import { highlightOverGreyStops } from '../exposure/highlight.ts';
import { imagePlace } from '../mirror/image-place.ts';
import type { Face } from '../mirror/source.ts';
import { message } from '../words/message.ts';
import { highlightLatitudeOf, orAssumed } from './assumed.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, unknownOf } from './figure.ts';
import { frameView, surfaceOf } from './flat-mirror.ts';
import { type Makers, once } from './lazily.ts';
import { errorBy } from './light.ts';
import { sourceOf, weightOn } from './light-source.ts';
import { isGloss, reflectanceOf } from './mirror-kind.ts';
import { reliefMm } from './needed-depth.ts';
import { isNo } from './not-applicable.ts';
import { lossOfCrossed } from './polariser.ts';
import type {
  Highlight,
  HighlightFigures,
  HighlightPlace,
  LightFigures,
  OpticalFigures,
  TimeFigures,
} from './shot-figures.ts';
import { shinesThrough } from './through.ts';

export function highlightFigures(
  bench: Bench,
  optical: OpticalFigures,
  time: TimeFigures,
  light: Pick<LightFigures, 'isoNeeded'>,
): Makers<HighlightFigures> {
  const highlight = once(() =>
    isGloss(bench) ? brightest(bench, optical, time, light) : isNo('glossy'),
  );
  return {
    highlight,
    highlightPlace: once(() => placeOf(bench, optical, highlight())),
    highlightLatitudeStops: once(() => (isGloss(bench) ? latitudeOf(bench) : isNo('glossy'))),
  };
}

/** Stops over mid-grey that the body records. */
export function latitudeOf({ body }: Bench): Figure<number> {
  return body
    ? orAssumed(body.fields['highlight-latitude'], body.name, highlightLatitudeOf())
    : notKnown(message`the rig has no body`);
}

/**
 * The brightest of the lights' images. Relief and edges face every way, so that some place of a
 * glossy subject shows each light that lights it. A flat face shows those in the frame alone; if
 * it shows none, the brightest is still told.
 */
function brightest(
  bench: Bench,
  optical: OpticalFigures,
  { shutterSeconds }: TimeFigures,
  { isoNeeded }: Pick<LightFigures, 'isoNeeded'>,
): Figure<Highlight> {
  const { lights, iso } = bench;
  if (!lights.known) return lights;
  const facing = lights.value.filter((light) => !shinesThrough(light, bench));
  if (lights.value.length === 0) return notKnown(message`the shot has no light`);
  if (facing.length === 0) return isNo('glossy');
  const speed = iso.known && iso.value === 'auto' ? isoNeeded : (iso as Figure<number>);
  const each = facing.map((light) =>
    derive(
      [imageStops(light, bench, errorBy(light, bench, optical, shutterSeconds), speed)],
      (stops): Highlight => ({ light: light.name, stops }),
    ),
  );
  const isOutside = facing.map((light) => {
    const place = placeOfImage(light, bench, optical);
    return place.known && place.value.isFlat && place.value.share === 0;
  });
  const shown = each.filter((_, i) => !isOutside[i]);
  return derive(shown.length > 0 ? shown : each, (...all) =>
    all.reduce((most, next) => (next.stops > most.stops ? next : most)),
  );
}

function placeOf(
  bench: Bench,
  optical: OpticalFigures,
  highlight: Figure<Highlight>,
): Figure<HighlightPlace> {
  const { lights } = bench;
  if (!highlight.known) return highlight;
  const light = lights.known && lights.value.find(({ name }) => name === highlight.value.light);
  return light ? placeOfImage(light, bench, optical) : unknownOf([lights]);
}

/** Where the face that the tilt turns shows a light; a solid that states no relief may have any. */
export function placeOfImage(
  light: LightInUse,
  bench: Bench,
  optical: OpticalFigures,
): Figure<HighlightPlace> {
  const { subject } = bench;
  if (!subject) return unknownOf([figureOf(bench.fields.subject, bench.shot)]);
  const frame = frameView(bench, optical);
  return derive(
    [reliefMm(subject), frame, surfaceOf(bench, frame), sourceOf(light), faceOf(subject)],
    (reliefDepth, view, { normal, curvaturePerMm }, source, face) => {
      if (curvaturePerMm !== 0) return notKnown(message`the face of ${subject.name} is not flat`);
      const place = imagePlace(view, normal, source, face);
      return place
        ? { ...place, isFlat: reliefDepth === 0 }
        : notKnown(message`${light.name} shines on the back of the subject`);
    },
  );
}

/**
 * Stops that a light's image in a glossy subject lies over mid-grey.
 *
 * @param errorAt100 exposure error by this light alone at ISO 100, stops
 * @param speed ISO of the shot
 */
export const imageStops = (
  light: LightInUse,
  bench: Bench,
  errorAt100: Figure<number>,
  speed: Figure<number>,
): Figure<number> =>
  derive(
    [errorAt100, speed, overGrey(light, bench)],
    (error, set, over) => over + error + Math.log2(set / 100),
  );

/** Where the light alone is exposed right. */
const overGrey = (light: LightInUse, bench: Bench): Figure<number> =>
  derive(
    [reflectanceOf(bench, light), sourceOf(light), bench.tiltRad, lossOfCrossed(light, bench)],
    (reflectance, source, tilt, lost) => {
      const projected = weightOn(source, tilt, bench.tiltAxis);
      const { reflected, incident } = bench.constants;
      return projected > 0
        ? highlightOverGreyStops(reflectance, projected, reflected, incident) - lost
        : notKnown(message`${light.name} shines on the back of the subject`);
    },
  );

/** The subject's own outline; undefined: it fills the frame. */
function faceOf({ fields, name }: NonNullable<Bench['subject']>): Figure<Face | undefined> {
  const { size, diameter } = fields;
  if (size.state !== 'missing')
    return derive(
      [figureOf(size, name)],
      ({ width, height }): Face => ({ shape: 'rectangle', widthMm: width, heightMm: height }),
    );
  if (diameter.state === 'missing') return known(undefined);
  return derive([figureOf(diameter, name)], (diameterMm): Face => ({ shape: 'round', diameterMm }));
}
