/** A light on a subject that scatters: what it gives where it stands now, by its face's integral. */

import { pointSizePrior } from '../assumptions/table.ts';
import { evOfIlluminance } from '../exposure/ev.ts';
import { message } from '../words/message.ts';
import type { Assumed } from './assumed.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, silent } from './figure.ts';
import { isOnAxis, lightThen, pointWeightOn, sourceOf, spotOf, weightOn } from './light-source.ts';
import { mirrorKind } from './mirror-kind.ts';
import { natureOf } from './subject-kinds.ts';
import { shinesThrough } from './through.ts';

/** EV of a light whose face's luminance is given: E = L times the face's weight as the subject sees it. */
export function litEv({ name, fields, ...light }: LightInUse, bench: Bench): Figure<number> {
  const source = sourceOf({ name, fields, ...light });
  return derive(
    [figureOf(fields.luminance, name), source, bench.tiltRad, scatters(bench)],
    (luminance, face, tilt) => {
      const weight = weightOn(face, tilt, bench.tiltAxis);
      return weight > 0
        ? evOfIlluminance(luminance * weight, bench.constants.incident)
        : notKnown(message`${name} shines on the back of the subject`);
    },
  );
}

/** That the subject is lit instead of showing the light: a liquid's surface has to say its finish. */
export function scatters({ subject, fields, shot }: Bench): Figure<unknown> {
  if (!subject) return fields.subject.state === 'missing' ? figureOf(fields.subject, shot) : silent;
  const { kind, finish } = subject.fields;
  return natureOf(subject)?.asksFinish
    ? figureOf(finish, subject.name)
    : figureOf(kind, subject.name);
}

/** What has to be known before light on the subject says how bright it looks: nothing of most kinds. */
export const finishAsked = (bench: Bench): readonly Figure<unknown>[] =>
  natureOf(bench.subject)?.asksFinish ? [scatters(bench)] : [];

/**
 * The light where it was read or measured; undefined: nothing says that it was moved, or it doesn't
 * matter to the subject.
 */
function beforeItMoved(light: LightInUse, bench: Bench): LightInUse | undefined {
  // A mirror shows the same face from anywhere, and so does a clear subject before it.
  if (mirrorKind(bench) !== undefined || shinesThrough(light, bench)) return undefined;
  const way = measuredBy(light);
  // What its face's luminance gives is worked out from where it stands now anyway.
  return way && lightThen(light, way);
}

const measuredBy = ({ fields }: LightInUse): 'reading' | 'illuminance' | undefined =>
  fields.reading.state !== 'missing'
    ? 'reading'
    : fields.illuminance.state !== 'missing'
      ? 'illuminance'
      : undefined;

const hasNoSize = ({ fields }: LightInUse): boolean =>
  fields['emitting-size'].state === 'missing' && fields.diameter.state === 'missing';

/**
 * What is assumed of the size of a light that was moved since it was read or measured: that it is a
 * point. A face as wide as its nearest distance changes less over the same way.
 */
export function pointSizeOf(light: LightInUse, bench: Bench): Assumed | undefined {
  const then = hasNoSize(light) ? beforeItMoved(light, bench) : undefined;
  if (!then) return undefined;
  const [here, there] = [spotOf(light), spotOf(then)];
  if (!here.known || !there.known) return undefined;
  // Without a step nearer or farther, the angle alone is the same for a point and a small face.
  if (here.value.distanceMm === there.value.distanceMm) return undefined;
  const nearest = Math.min(here.value.distanceMm, there.value.distanceMm);
  return { id: 'point-light', prior: pointSizePrior(nearest) };
}

/**
 * Stops that a light gives more than when it was read or measured, since it stands elsewhere now; 0
 * where nothing says that it was moved. Without a size it is taken as a point.
 */
export function movedStops(light: LightInUse, bench: Bench): Figure<number> {
  const then = beforeItMoved(light, bench);
  if (!then) return known(0);
  const { fields, name } = light;
  if (fields.at.state === 'missing') return figureOf(fields.at, name) as Figure<never>;
  const weight = (of: LightInUse, lies: Figure<number>): Figure<number> =>
    hasNoSize(of)
      ? derive([spotOf(of), lies], (spot, tilt) => pointWeightOn(spot, tilt, bench.tiltAxis))
      : derive([sourceOf(of), lies], (face, tilt) => weightOn(face, tilt, bench.tiltAxis));
  const { tiltRad } = bench;
  const lay = isOnAxis(light, measuredBy(light)!) ? known(0) : tiltRad;
  return derive([weight(light, tiltRad), weight(then, lay)], (here, there) => {
    const ratio = here / there;
    return ratio > 0 && Number.isFinite(ratio)
      ? Math.log2(ratio)
      : notKnown(message`${name} shines on the back of the subject`);
  });
}
