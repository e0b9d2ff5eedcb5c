/** A polariser on the lens, and its effect on the reflection. */

import { polarisationOfReflection, polariserStops } from '../exposure/polariser.ts';
import { waterIndex } from '../film/water.ts';
import { ifKnown } from '../plan/field.ts';
import type { Place } from '../plan/place.ts';
import { message } from '../words/message.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown } from './figure.ts';
import { indexOf } from './film-share.ts';
import { isFlatMirror, mirrorKind } from './mirror-kind.ts';
import { natureOf } from './subject-kinds.ts';

export interface PolariserInUse {
  readonly filter: string;
  /** The shot's filters without the polariser. */
  readonly others: readonly string[];
  readonly lossStops: number | undefined;
  /** A light of the shot with a polarising sheet, and the angle of the sheet to the polariser. */
  readonly polarised: { readonly light: string; readonly how: 'crossed' | 'parallel' } | undefined;
  /** Angle from the subject's normal at which it is seen, rad; undefined: many, or not known. */
  readonly angleRad: number | undefined;
  /** The largest loss of the reflection by turning the polariser, against the smallest, stops. */
  readonly swingStops: number | undefined;
  /** Where it is put on: the shot's own filters, else its rig. */
  readonly at: Place;
}

/** n is counted in the middle of the spectrum, nm. */
const MIDDLE_NM = 550;

/** The polariser of a shot on a subject that reflects as a mirror; undefined: it has none. */
export function polariserOn(bench: Bench): PolariserInUse | undefined {
  const { filters, lights, fields, tiltRad } = bench;
  if (!filters.known || !lights.known || mirrorKind(bench) === undefined) return undefined;
  const found = filters.value.findIndex((one) => ifKnown(one.fields.kind) === 'polariser');
  const polariser = filters.value[found];
  if (!polariser) return undefined;
  // A value that can't be read may be a sheet.
  if (lights.value.some((light) => light.fields.polarised.state === 'invalid')) return undefined;
  const sheets = lights.value.flatMap((light) => {
    const how = ifKnown(light.fields.polarised);
    return how === 'crossed' || how === 'parallel' ? [{ light: light.name, how }] : [];
  });
  const index = indexOf(bench);
  const angleRad = isFlatMirror(bench) && tiltRad.known ? Math.abs(tiltRad.value) : undefined;
  const isClear = natureOf(bench.subject)?.isClear !== false;
  // Metals are left out: their reflection is only slightly polarised, and by another law.
  const degree =
    angleRad !== undefined && index.known && isClear
      ? polarisationOfReflection(index.value ?? waterIndex(MIDDLE_NM), angleRad)
      : undefined;
  const stops = degree === undefined ? undefined : polariserStops(degree);
  const own = fields.filters.state === 'known' ? fields.filters.value[found] : undefined;
  return {
    filter: polariser.name,
    others: filters.value.flatMap(({ name }, at) => (at === found ? [] : [name])),
    lossStops: ifKnown(polariser.fields.loss),
    polarised: sheets.find(({ how }) => how === 'crossed') ?? sheets[0],
    angleRad,
    swingStops: stops && stops.reflectionMost - stops.reflectionLeast,
    at: own?.at ?? fields.rig.at,
  };
}

/** Two sheets in a set leave 1 to 3% of a reflection; common practice, from memory. */
const CROSSED_STOPS = 6;

/**
 * Stops by which crossed sheets on lens and light darken the light's image in a glossy subject,
 * against what the subject scatters: scattered light is no longer polarised and keeps its half.
 */
export function lossOfCrossed({ name, fields }: LightInUse, { filters }: Bench): Figure<number> {
  if (fields.polarised.state === 'missing') return known(0);
  return derive([filters, figureOf(fields.polarised, name)], (all, how) => {
    if (!all.some((one) => ifKnown(one.fields.kind) === 'polariser')) return 0;
    if (how === 'crossed') return CROSSED_STOPS;
    // In line with it, the reflection passes whole and the scattered light loses half.
    return how === 'parallel' ? -polariserStops(0).unpolarised : 0;
  });
}

/**
 * Stops by which a mirror-like subject shows a light brighter than the polariser's own loss tells,
 * where a polarising sheet is on that light: in line with it the filter has nothing to sort out,
 * and the half that it takes of unpolarised light stays (Malus's law). The light's luminance is
 * that of its face as it is, sheet and all.
 */
export function sheetStops({ name, fields }: LightInUse, { filters }: Bench): Figure<number> {
  if (fields.polarised.state === 'missing') return known(0);
  return derive([filters, figureOf(fields.polarised, name)], (all, how) => {
    const polariser = all.find((one) => ifKnown(one.fields.kind) === 'polariser');
    if (!polariser || how === 'none') return 0;
    if (how === 'parallel') return polariserStops(0).unpolarised;
    return notKnown(
      message`${polariser.name} is crossed with ${name}; the remaining light is unknown`,
    );
  });
}
