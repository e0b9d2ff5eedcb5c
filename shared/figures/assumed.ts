/**
 * Values that nobody gave, taken from the table of assumptions: where a figure reads them, and what
 * they are for one entry. `shared/assumptions/` has the table.
 */
import type { Prior } from '../assumptions/assumption.ts';
import {
  type AssumptionId,
  CLOSE_UP_LOSS,
  CONVERTER_LOSS,
  closestDistancePrior,
  closestMagnificationPrior,
  flangePrior,
  frontDiameterPrior,
  GLOSS_REFLECTANCE,
  HIGHLIGHT_LATITUDE,
  LENS_LOSS,
  POLARISER_LOSS,
  pupilRatioPrior,
  VIBRATION_BOOM,
  VIBRATION_HAND,
  VIBRATION_STAND,
  VIBRATION_TABLE,
} from '../assumptions/table.ts';
import { type Field, ifKnown } from '../plan/field.ts';
import type { Body, Filter, Lens, Stand, Subject } from '../plan/generated/types.ts';
import { type Figure, figureOf, known } from './figure.ts';

/** What is assumed of one field of one entry. */
export interface Assumed {
  readonly id: AssumptionId;
  readonly prior: Prior;
}

/** The field as a figure; where it is missing, the middle of what is assumed of it. */
export const orAssumed = (
  field: Field<number>,
  of: string,
  assumed: Assumed | undefined,
): Figure<number> =>
  field.state === 'missing' && assumed ? known(assumed.prior.middle) : figureOf(field, of);

const CONVERTER: Assumed = { id: 'converter-loss', prior: CONVERTER_LOSS };
const CLOSE_UP: Assumed = { id: 'close-up-loss', prior: CLOSE_UP_LOSS };
const POLARISER: Assumed = { id: 'polariser-loss', prior: POLARISER_LOSS };
const LENS: Assumed = { id: 'lens-loss', prior: LENS_LOSS };

export const glassLoss = {
  lens: LENS,
  converter: CONVERTER,
  'close-up': CLOSE_UP,
} as const;

/** Only a polariser takes about as much whoever made it. */
export const filterLoss = (filter: Filter): Assumed | undefined =>
  ifKnown(filter.kind) === 'polariser' ? POLARISER : undefined;

export function flangeOf(body: Body): Assumed | undefined {
  const sensor = ifKnown(body.sensor);
  return sensor && { id: 'flange', prior: flangePrior(sensor.width) };
}

export function frontDiameterOf(lens: Lens): Assumed | undefined {
  const thread = ifKnown(lens['filter-thread']);
  return thread === undefined
    ? undefined
    : { id: 'front-diameter', prior: frontDiameterPrior(thread) };
}

const VIBRATIONS: Readonly<Record<string, Assumed>> = {
  table: { id: 'vibration-table', prior: VIBRATION_TABLE },
  column: { id: 'vibration-table', prior: VIBRATION_TABLE },
  tripod: { id: 'vibration-stand', prior: VIBRATION_STAND },
  stand: { id: 'vibration-stand', prior: VIBRATION_STAND },
  boom: { id: 'vibration-boom', prior: VIBRATION_BOOM },
  hand: { id: 'vibration-hand', prior: VIBRATION_HAND },
};

/** By what kind of support it is. */
export function vibrationOfStand(stand: Stand): Assumed | undefined {
  const kind = ifKnown(stand.kind);
  return kind === undefined ? undefined : VIBRATIONS[kind];
}

const LATITUDE: Assumed = { id: 'highlight-latitude', prior: HIGHLIGHT_LATITUDE };

/** Every body records some stops over mid-grey. */
export const highlightLatitudeOf = (): Assumed => LATITUDE;

const GLOSS: Assumed = { id: 'gloss-reflectance', prior: GLOSS_REFLECTANCE };

/** Of a glossy subject; its refractive index says more. */
export const glossReflectanceOf = (subject: Subject): Assumed | undefined =>
  ifKnown(subject.finish) === 'gloss' && subject['refractive-index'].state === 'missing'
    ? GLOSS
    : undefined;

/** The outer diameter of a lens's front, mm: given, or from its filter thread. */
export const frontDiameter = ({
  name,
  fields,
}: {
  readonly name: string;
  readonly fields: Lens;
}): Figure<number> => orAssumed(fields['front-diameter'], name, frontDiameterOf(fields));

export function pupilRatioOf(lens: Lens, body: Body | undefined): Assumed | undefined {
  const focal = ifKnown(lens['focal-length']);
  if (focal === undefined) return undefined;
  const sensor = body && ifKnown(body.sensor);
  const prior = pupilRatioPrior(focal, sensor && Math.hypot(sensor.width, sensor.height));
  return { id: prior.high > 1 ? 'pupil-ratio' : 'long-pupil-ratio', prior };
}

/** Of a lens whose closest focus is given by its magnification alone. */
export function closestDistanceOf(lens: Lens): Assumed | undefined {
  const focal = ifKnown(lens['focal-length']);
  const closest = ifKnown(lens.closest);
  const magnification = closest && ifKnown(closest.magnification);
  return focal === undefined || magnification === undefined
    ? undefined
    : { id: 'closest-distance', prior: closestDistancePrior(focal, magnification) };
}

/** Of a lens whose closest focus is given by its distance alone. */
export function closestMagnificationOf(lens: Lens): Assumed | undefined {
  const focal = ifKnown(lens['focal-length']);
  const closest = ifKnown(lens.closest);
  const distance = closest && ifKnown(closest['from-sensor']);
  if (focal === undefined || distance === undefined) return undefined;
  const prior = closestMagnificationPrior(focal, distance);
  return prior && { id: 'closest-magnification', prior };
}
