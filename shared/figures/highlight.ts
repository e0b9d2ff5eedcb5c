/** The image of the lights in a glossy subject: how far it lies over mid-grey, and over what clips. */
import { highlightOverGreyStops } from '../exposure/highlight.ts';
import { message } from '../words/message.ts';
import { highlightLatitudeOf, orAssumed } from './assumed.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, notKnown } from './figure.ts';
import type { Makers } from './lazily.ts';
import { errorBy } from './light.ts';
import { sourceOf, weightOn } from './light-source.ts';
import { isGloss, reflectanceOf } from './mirror-kind.ts';
import { isNo } from './not-applicable.ts';
import { lossOfCrossed } from './polariser.ts';
import type {
  Highlight,
  HighlightFigures,
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
  return {
    highlight: () => (isGloss(bench) ? brightest(bench, optical, time, light) : isNo('glossy')),
    highlightLatitudeStops: () => (isGloss(bench) ? latitudeOf(bench) : isNo('glossy')),
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
 * glossy subject shows each light that lights it.
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
  return derive(each, (...all) =>
    all.reduce((most, next) => (next.stops > most.stops ? next : most)),
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
