/** A light of the shot as a face in space, and its luminance. */
import { illuminanceOfEv } from '../exposure/ev.ts';
import { illuminancePerLuminance } from '../exposure/rectangle-source.ts';
import { filmSurface } from '../mirror/film-surface.ts';
import { type Face, planeAt, type Source, sourceOutline } from '../mirror/source.ts';
import { dot } from '../mirror/vector.ts';
import { type Field, ifKnown } from '../plan/field.ts';
import type { Light } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown } from './figure.ts';
import { hasWattsAlone, isShotsOwn, readEv, readThrough } from './light-reading.ts';

/** Worked out once for all shots that use the light as it is: its fields are one object. */
const sources = new WeakMap<LightInUse['fields'], Figure<Source>>();

/** Position and size of a light's face; elevation and azimuth default to 0. */
export function sourceOf(light: LightInUse): Figure<Source> {
  let source = sources.get(light.fields);
  if (!source) {
    source = placed(light);
    sources.set(light.fields, source);
  }
  return source;
}

function placed({ name, fields }: LightInUse): Figure<Source> {
  const { 'emitting-size': source, diameter } = fields;
  const face: Figure<Face> =
    diameter.state !== 'missing'
      ? derive([figureOf(diameter, name)], (diameterMm) => ({ shape: 'round', diameterMm }))
      : derive([figureOf(source, name)], ({ width, height }) => ({
          shape: 'rectangle',
          widthMm: width,
          heightMm: height,
        }));
  return derive([face, spotOf({ name, fields })], (shape, spot) => ({ face: shape, ...spot }));
}

/** Where a light stands, whatever its face. */
type Spot = Omit<Source, 'face'>;

/** Elevation and azimuth default to 0. */
export function spotOf({ name, fields }: Pick<LightInUse, 'name' | 'fields'>): Figure<Spot> {
  const placement = figureOf(fields.at, name);
  if (!placement.known) return placement;
  const angle = (key: 'elevation' | 'azimuth'): Figure<number> =>
    placement.value[key].state === 'missing' ? known(0) : figureOf(placement.value[key], name);
  return derive(
    [figureOf(placement.value.distance, name), angle('elevation'), angle('azimuth')],
    (distanceMm, upRad, acrossRad) => ({ distanceMm, upRad, acrossRad }),
  );
}

/**
 * Illuminance on the subject's middle over the luminance of the face that gives it, sr: on its
 * surface as it lies in the shot, which is what a receiver laid on it reads.
 */
export const weightOn = (source: Source, tiltRad: number, about: Bench['tiltAxis']): number =>
  illuminancePerLuminance(sourceOutline(source), filmSurface(tiltRad, about).normal);

/**
 * Illuminance on the subject's middle over the intensity of a point, 1/mm²: by the inverse-square and
 * cosine laws (Lambert, Photometria). 0 where it shines on the back.
 */
export function pointWeightOn(spot: Spot, tiltRad: number, about: Bench['tiltAxis']): number {
  const { normal } = planeAt(spot.distanceMm, spot.upRad, spot.acrossRad);
  const facing = -dot(filmSurface(tiltRad, about).normal, normal);
  return Math.max(0, facing) / spot.distanceMm ** 2;
}

/** How a light's brightness is given, if not by the luminance of its face. */
type Measured = 'reading' | 'illuminance';

/**
 * Whether it was measured on the light's axis by a meter that faced the light, as data sheets do,
 * and not on the subject.
 */
export const isOnAxis = ({ fields }: LightInUse, by: Measured): boolean =>
  by === 'illuminance' && fields['illuminance-distance'].state !== 'missing';

/** Position of a light when it was read or measured; a reading may give its own distance. */
function placeThen(light: LightInUse, by: Measured): Light['at'] {
  const { fields, readAt } = light;
  const distance =
    by === 'reading' ? ifKnown(fields.reading)?.distance : fields['illuminance-distance'];
  if (!distance || distance.state === 'missing') return readAt;
  const base = readAt.state === 'missing' ? fields.at : readAt;
  if (base.state !== 'known') return base;
  const { elevation, azimuth } = base.value;
  const ahead = isOnAxis(light, by) && {
    elevation: { state: 'missing', at: elevation.at } as const,
    azimuth: { state: 'missing', at: azimuth.at } as const,
  };
  return { ...base, value: { ...base.value, distance, ...ahead } };
}

/**
 * The light at its position when it was read or measured; undefined: it has not moved. What was
 * measured on its axis was measured square to it, whichever way the subject lies.
 */
export function lightThen(light: LightInUse, by: Measured): LightInUse | undefined {
  const { at } = light.fields;
  const then = placeThen(light, by);
  if (!isOnAxis(light, by) && (then === at || isSamePlace(then, at))) return undefined;
  return { ...light, fields: { ...light.fields, at: then } };
}

/** Its face there. */
function sourceThen(light: LightInUse, by: Measured): Figure<Source> | undefined {
  const then = lightThen(light, by);
  return then && sourceOf(then);
}

function isSamePlace(a: Light['at'], b: Light['at']): boolean {
  const [one, other] = [ifKnown(a), ifKnown(b)];
  if (!one || !other) return false;
  return (['distance', 'elevation', 'azimuth'] as const).every((key) => {
    const [here, there]: readonly Field<number>[] = [one[key], other[key]];
    if (here?.state === 'invalid' || there?.state === 'invalid') return false;
    return ((here && ifKnown(here)) ?? 0) === ((there && ifKnown(there)) ?? 0);
  });
}

/** The light as it stands, without what this shot takes of its light by dimming, gels and sheets. */
export const atItsBrightest = (light: LightInUse): LightInUse => ({
  ...light,
  dimmedStops: known(0),
  gelStops: known(0),
});

/**
 * Luminance of a light's face, cd/m², as it is dimmed in this shot: as given, else from what it
 * gave a diffuse subject where it stood then, E = L·`weightOn`. It is the same wherever the light
 * stands now.
 *
 * @param read EV of the light on a diffuse subject, where it was read on one
 */
export function luminanceOf(light: LightInUse, bench: Bench, read: Figure<number>): Figure<number> {
  const { name, fields } = light;
  const by = (way: Measured, lux: Figure<number>): Figure<number> =>
    derive([lux, sourceThen(light, way) ?? sourceOf(light), bench.tiltRad], (given, face, tilt) => {
      const weight = weightOn(face, isOnAxis(light, way) ? 0 : tilt, bench.tiltAxis);
      return weight > 0
        ? given / weight
        : notKnown(message`${name} shines on the back of the subject`);
    });
  const full = (): Figure<number> => {
    if (fields.luminance.state !== 'missing') return figureOf(fields.luminance, name);
    if (fields.illuminance.state !== 'missing')
      return by('illuminance', figureOf(fields.illuminance, name));
    const through = readThrough(light);
    if (through === 'meter' || (through === 'bare-lens' && !isShotsOwn(light, bench)))
      return by(
        'reading',
        derive([read], (ev) => illuminanceOfEv(ev, bench.constants.incident)),
      );
    // What a reading would need says what watts don't.
    if (hasWattsAlone(light)) return readEv(light, bench);
    return notKnown(message`the luminance of ${name} is not given`);
  };
  return derive(
    [full(), light.dimmedStops, light.gelStops],
    (luminance, dimmed, gels) => luminance * 2 ** -(dimmed + gels),
  );
}
