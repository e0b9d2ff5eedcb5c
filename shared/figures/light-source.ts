/** A light of the shot as a face in space, and its luminance. */
import { illuminanceOfEv } from '../exposure/ev.ts';
import { facingRectangle, illuminancePerLuminance } from '../exposure/rectangle-source.ts';
import type { Face, Source } from '../mirror/source.ts';
import { ifKnown } from '../plan/field.ts';
import { message } from '../words/message.ts';
import type { LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown } from './figure.ts';

/** Worked out once for all shots that use the light as it is: its fields are one object. */
const sources = new WeakMap<LightInUse['fields'], Figure<Source>>();

/** Where a light stands and how large its face is; up and across left out: 0. */
export function sourceOf(light: LightInUse): Figure<Source> {
  let source = sources.get(light.fields);
  if (!source) {
    source = placed(light);
    sources.set(light.fields, source);
  }
  return source;
}

function placed({ name, fields }: LightInUse): Figure<Source> {
  const { at, source, diameter } = fields;
  const face: Figure<Face> =
    diameter.state !== 'missing'
      ? derive([figureOf(diameter, name)], (diameterMm) => ({ shape: 'round', diameterMm }))
      : derive([figureOf(source, name)], ({ width, height }) => ({
          shape: 'rectangle',
          widthMm: width,
          heightMm: height,
        }));
  const placement = figureOf(at, name);
  if (!placement.known) return placement;
  const angle = (key: 'up' | 'across'): Figure<number> =>
    placement.value[key].state === 'missing' ? known(0) : figureOf(placement.value[key], name);
  return derive(
    [face, figureOf(placement.value.distance, name), angle('up'), angle('across')],
    (shape, distanceMm, upRad, acrossRad) => ({ face: shape, distanceMm, upRad, acrossRad }),
  );
}

/** Solid angle that a face weighs on a surface turned to it, sr. */
function facingFactor({ face, distanceMm }: Source): number {
  if (face.shape === 'round') {
    const half = Math.atan2(face.diameterMm / 2, distanceMm);
    return Math.PI * Math.sin(half) ** 2;
  }
  const corners = facingRectangle(face.widthMm, face.heightMm, distanceMm);
  return illuminancePerLuminance(corners, [0, 0, 1]);
}

/**
 * Luminance of a light's face, cd/m², as it is dimmed in this shot: as given, else from the
 * illuminance that it gives a surface turned to it, E = L·(its projected solid angle), which a
 * hand-held incident meter reads too.
 */
export function luminanceOf(light: LightInUse, meterEv: Figure<number>): Figure<number> {
  const { name, fields } = light;
  const full = (): Figure<number> => {
    if (fields.luminance.state !== 'missing') return figureOf(fields.luminance, name);
    const source = sourceOf(light);
    if (fields.illuminance.state !== 'missing')
      return derive(
        [figureOf(fields.illuminance, name), source],
        (lux, it) => lux / facingFactor(it),
      );
    const reading = ifKnown(fields.reading);
    if (reading && ifKnown(reading.through) === 'meter')
      return derive([meterEv, source], (ev, it) => illuminanceOfEv(ev) / facingFactor(it));
    return notKnown(message`the luminance of ${name} is not given`);
  };
  return derive([full(), light.dimmedStops], (luminance, stops) => luminance * 2 ** -stops);
}
