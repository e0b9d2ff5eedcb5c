/** Which subjects reflect light as a mirror does, and how much of it. */

import { surfaceReflectances } from '../exposure/polariser.ts';
import { ifKnown } from '../plan/field.ts';
import type { Subject } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import { glossReflectanceOf, orAssumed } from './assumed.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, notKnown, silent, unknownOf } from './figure.ts';
import {
  averageShare,
  indexOf,
  layerOf,
  reflectanceByThickness,
  unknownThickness,
} from './film-share.ts';
import { isNo } from './not-applicable.ts';
import { natureOf } from './subject-kinds.ts';

type MirrorKind = 'film' | 'bubble' | 'surface';

/** Some subjects are mirrors by nature, flat or round ones, others where their finish says so. */
export function mirrorKind({ subject }: Bench): MirrorKind | undefined {
  const nature = natureOf(subject);
  if (nature?.mirrors === 'always') return nature.shape === 'ball' ? 'bubble' : 'film';
  return subject && ifKnown(subject.fields.finish) === 'mirror' ? 'surface' : undefined;
}

/** Partly a mirror: it shows lens and lights over its own colour. */
export const isGloss = (bench: Bench): boolean =>
  mirrorKind(bench) === undefined &&
  bench.subject !== undefined &&
  ifKnown(bench.subject.fields.finish) === 'gloss';

export const isFlatMirror = (bench: Bench): boolean => {
  const kind = mirrorKind(bench);
  return kind === 'film' || kind === 'surface';
};

/**
 * R, the share of one light that is reflected: as given, else calculated for films and bubbles,
 * from their `thickness` if it is given and on average over every thickness if not. Any other
 * mirror needs the value.
 */
export function reflectanceOf(bench: Bench, light = firstLight(bench)): Figure<number> {
  const { subject, tiltRad } = bench;
  if (!subject) return unknownOf([figureOf(bench.fields.subject, bench.shot)]);
  const given = subject.fields.reflectance;
  if (given.state !== 'missing')
    return derive([figureOf(given, subject.name)], (share) => somethingOf(share, subject.name));
  const kind = mirrorKind(bench);
  if (isGloss(bench)) return glossReflectance(subject.fields, subject.name);
  if (kind === undefined) return isNo('mirror');
  if (kind === 'surface') return ofSurface(bench, subject, light);
  if (subject.fields.thickness.state === 'missing')
    return derive([indexOf(bench), tiltRad], averageShare);
  return derive([reflectanceByThickness(bench, light)], (share) =>
    somethingOf(share, subject.name),
  );
}

/** A liquid returns what its film does, or by Fresnel's law what its index says. */
function ofSurface(
  bench: Bench,
  { name, fields }: NonNullable<Bench['subject']>,
  light: LightInUse | undefined,
): Figure<number> {
  const layer = layerOf(bench);
  if (layer?.thickness.state === 'missing')
    return derive([unknownThickness(layer, bench.tiltRad)], ({ middle }) => middle);
  if (layer) return reflectanceByThickness(bench, light);
  if (fields.film.state === 'invalid') return silent;
  return natureOf({ fields })?.isLiquid && fields['refractive-index'].state !== 'missing'
    ? derive([indexOf(bench), bench.tiltRad], (index, tilt) => clearShare(index, tilt))
    : (figureOf(fields.reflectance, name) as Figure<never>);
}

/** R of one face of a clear thing for unpolarised light. */
function clearShare(index: number | undefined, tiltRad: number) {
  if (index === undefined || !(index > 1))
    return notKnown(message`a refractive index of 1 reflects nothing`);
  const { s, p } = surfaceReflectances(index, Math.abs(tiltRad));
  return (s + p) / 2;
}

/** Seen from near its normal, up to 45°, a clear surface reflects within 1/3 stop of this. */
const glossReflectance = (fields: Subject, name: string): Figure<number> =>
  fields['refractive-index'].state === 'missing'
    ? orAssumed(fields.reflectance, name, glossReflectanceOf(fields))
    : derive([figureOf(fields['refractive-index'], name)], (index) =>
        index > 1
          ? surfaceReflectances(index, 0).s
          : notKnown(message`a refractive index of 1 reflects nothing`),
      );

const firstLight = ({ lights }: Bench): LightInUse | undefined =>
  lights.known ? lights.value[0] : undefined;

/** A mirror that returns nothing shows no light, and no exposure balances it. */
const somethingOf = (share: number, subject: string) =>
  share > 0 ? share : notKnown(message`${subject} reflects nothing`);
