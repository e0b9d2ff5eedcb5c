/** A light on a subject that scatters: what it gives where it stands now, by its face's integral. */

import { evOfIlluminance } from '../exposure/ev.ts';
import { message } from '../words/message.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, silent } from './figure.ts';
import { sourceOf, sourceThen, weightOn } from './light-source.ts';
import { mirrorKind } from './mirror-kind.ts';
import { natureOf } from './subject-kinds.ts';

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

/**
 * Stops that a light gives more than when it was read or measured, since it stands elsewhere now; 0
 * where nothing says that it was moved, and on a mirror, which shows the same face from anywhere.
 */
export function movedStops(light: LightInUse, bench: Bench): Figure<number> {
  if (mirrorKind(bench) !== undefined) return known(0);
  const { fields, name } = light;
  const isRead = fields.reading.state !== 'missing';
  // What its face's luminance gives is worked out from where it stands now anyway.
  if (!isRead && fields.illuminance.state === 'missing') return known(0);
  const then = sourceThen(light, isRead ? 'reading' : 'illuminance');
  if (then === undefined) return known(0);
  if (fields.at.state === 'missing') return figureOf(fields.at, name) as Figure<never>;
  return derive([sourceOf(light), then, bench.tiltRad], (here, there, tilt) => {
    const ratio = weightOn(here, tilt, bench.tiltAxis) / weightOn(there, tilt, bench.tiltAxis);
    return ratio > 0 && Number.isFinite(ratio)
      ? Math.log2(ratio)
      : notKnown(message`${name} shines on the back of the subject`);
  });
}
