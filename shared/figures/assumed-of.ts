/** What is assumed of one entry for as long as nobody gives it. */

import { INCIDENT, REFLECTED, stillSizePrior } from '../assumptions/table.ts';
import type { Field } from '../plan/field.ts';
import { ifKnown } from '../plan/field.ts';
import type { DefName } from '../plan/generated/names.ts';
import type {
  Body,
  CloseUp,
  Converter,
  Filter,
  Lens,
  Light,
  Recording,
  Stand,
  Subject,
} from '../plan/generated/types.ts';
import {
  type Assumed,
  closestDistanceOf,
  closestMagnificationOf,
  filterLoss,
  flangeOf,
  frontDiameterOf,
  glassLoss,
  glossReflectanceOf,
  highlightLatitudeOf,
  pupilRatioOf,
  vibrationOfStand,
} from './assumed.ts';
import type { AssumedOf } from './assumed-words.ts';
import { hasBench } from './fitted-lens.ts';

type Found = readonly AssumedOf[];

/**
 * @param def what the entry is; kinds of which nothing is assumed give nothing
 * @param before the body that a lens is likely to be put on
 */
export function assumedOf(def: DefName, name: string, fields: object, before?: Body): Found {
  switch (def) {
    case 'lens':
      return ofLens(name, fields as Lens, before);
    case 'body':
      return ofBody(name, fields as Body);
    case 'converter':
      return missing(name, (fields as Converter).loss, glassLoss.converter);
    case 'close-up':
      return missing(name, (fields as CloseUp).loss, glassLoss['close-up']);
    case 'filter':
      return missing(name, (fields as Filter).loss, filterLoss(fields as Filter));
    case 'subject':
      return missing(name, (fields as Subject).reflectance, glossReflectanceOf(fields as Subject));
    case 'stand':
      return missing(name, (fields as Stand).vibration, vibrationOfStand(fields as Stand));
    case 'light':
      return ofLight(name, fields as Light);
    default:
      return [];
  }
}

const missing = (of: string, field: Field<unknown>, assumed: Assumed | undefined): Found =>
  field.state === 'missing' && assumed ? [{ ...assumed, of }] : [];

function ofLens(name: string, lens: Lens, body: Body | undefined): Found {
  // What its bench speaks of is not only assumed any more.
  const isFitted = hasBench(lens);
  const closest = isFitted ? undefined : ifKnown(lens.closest);
  return [
    ...(lens['t-stop'].state === 'missing' ? missing(name, lens.loss, glassLoss.lens) : []),
    ...(isFitted ? [] : missing(name, lens['pupil-ratio'], pupilRatioOf(lens, body))),
    ...missing(name, lens['front-diameter'], frontDiameterOf(lens)),
    ...(closest ? missing(name, closest['from-sensor'], closestDistanceOf(lens)) : []),
    ...(closest ? missing(name, closest.magnification, closestMagnificationOf(lens)) : []),
    ...(closest ? [{ id: 'iris', of: name } as const] : []),
  ];
}

function ofBody(name: string, body: Body): Found {
  const modes = ifKnown(body['recording-modes']) ?? new Map();
  return [
    ...missing(name, body['flange-distance'], flangeOf(body)),
    ...missing(name, body['highlight-latitude'], highlightLatitudeOf()),
    ...ofStills(name, body),
    ...[...modes].flatMap(([mode, field]: [string, Field<Recording>]) => {
      const recording = ifKnown(field);
      return recording ? assumedOfRecording(mode, recording) : [];
    }),
  ];
}

function ofStills(name: string, { stills, pixels }: Body): Found {
  const own = ifKnown(stills);
  const size = own && (ifKnown(own.resolution) ?? ifKnown(pixels));
  return own && size
    ? missing(name, own.size, {
        id: 'still-size',
        prior: stillSizePrior(size.width * size.height),
      })
    : [];
}

export const assumedOfRecording = (name: string, { area, crop }: Recording): Found =>
  area.state === 'missing' && crop.state === 'missing' ? [{ id: 'area', of: name }] : [];

/** Exposures cancel the constant that lux need. */
const hasLuxRows = ({ bench }: Light): boolean =>
  (ifKnown(bench) ?? []).some(
    (row) => row.state === 'known' && row.value.illuminance.state === 'known',
  );

/** Of a light that was read nothing but its flicker is. */
function ofLight(name: string, light: Light): Found {
  const { kind, supply, modulation, reading, illuminance, luminance } = light;
  const isRead = reading.state !== 'missing';
  const flickers = ifKnown(kind) === 'led' && ifKnown(supply) === 'mains';
  return [
    ...(flickers && modulation.state === 'missing'
      ? [{ id: 'modulation', of: name } as const]
      : []),
    ...(!isRead && (illuminance.state === 'known' || hasLuxRows(light))
      ? [{ id: 'incident-constant', of: null, prior: INCIDENT } as const]
      : !isRead && luminance.state === 'known'
        ? [{ id: 'reflected-constant', of: null, prior: REFLECTED } as const]
        : []),
  ];
}
