/** How bright a mirror-like subject is: it shows the light's own face, at any distance. */
import { evOfLuminance, evOfSettings } from '../exposure/ev.ts';
import { mirrorLuminance, strayRatio } from '../mirror/exposure.ts';
import { ifKnown } from '../plan/field.ts';
import { message } from '../words/message.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, notKnown, unknownOf } from './figure.ts';
import { luminanceOf } from './light-source.ts';
import { mirrorKind, reflectanceOf } from './mirror-kind.ts';
import { isNo } from './not-applicable.ts';

/** EV that an incident meter read, where that is how the light was read. */
export function meterEv({ name, fields }: LightInUse): Figure<number> {
  const reading = ifKnown(fields.reading);
  if (!reading || ifKnown(reading.through) !== 'meter')
    return notKnown(message`${name} was not read with a meter`);
  const of = message`${name}’s reading`;
  const time = derive([figureOf(reading.shutter, of)], (it) =>
    it.kind === 'time' ? it.seconds : notKnown(message`a reading needs its shutter as a time`),
  );
  return derive(
    [figureOf(reading.aperture, of), time, figureOf(reading.iso, of)],
    (fNumber, timeS, iso) => evOfSettings({ fNumber, timeS, iso }),
  );
}

/**
 * EV of the light as the mirror shows it, before it is dimmed: R·L. Only where the light's own
 * luminance can be had; a reading of the subject through a lens holds as it is.
 */
export function shownEv(light: LightInUse, bench: Bench): Figure<number> {
  const undimmed = { ...light, dimmedStops: { known: true as const, value: 0, from: [] } };
  return derive(
    [reflectanceOf(bench, light), luminanceOf(undimmed, meterEv(light))],
    (share, luminance) => evOfLuminance(mirrorLuminance(share, luminance)),
  );
}

/** Whether the subject shows this light as a mirror, instead of being lit by it. */
export function showsLight(light: LightInUse, bench: Bench): boolean {
  if (mirrorKind(bench) === undefined) return false;
  const reading = ifKnown(light.fields.reading);
  return !reading || ifKnown(reading.through) === 'meter';
}

/** L_background/(R·L), of the light that the film shows brightest. */
export function strayRatioOf(bench: Bench): Figure<number> {
  const { fields, subject, lights } = bench;
  if (mirrorKind(bench) === undefined || !subject) return isNo('mirror');
  const background =
    fields.background.state === 'missing'
      ? figureOf(subject.fields.background, subject.name)
      : figureOf(fields.background, bench.shot);
  if (!lights.known) return lights;
  const each = lights.value.map((light) =>
    derive(
      [background, reflectanceOf(bench, light), luminanceOf(light, meterEv(light))],
      strayRatio,
    ),
  );
  if (each.length === 0) return notKnown(message`the shot has no light`);
  if (each.some((figure) => !figure.known)) return unknownOf(each);
  return derive(each, (...all) => Math.min(...all));
}
