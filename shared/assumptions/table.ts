/**
 * The table of assumptions. Ends are wide enough that a thing outside them would be unusual;
 * numbers that no standard gives are common practice, from memory.
 */
import { later } from '../words/message.ts';
import type { Assumption, Prior } from './assumption.ts';

const COMMON = later`common practice`;

const prior = (middle: number, low: number, high: number): Prior => ({ middle, low, high });

export const LENS_LOSS = prior(0.3, 0.1, 0.5);
export const CONVERTER_LOSS = prior(0.2, 0.1, 0.4);
export const CLOSE_UP_LOSS = prior(0.05, 0, 0.1);
export const POLARISER_LOSS = prior(1.6, 1.2, 2);
/** From a light cloth to a dense one, or a lamp that lights more than its diffuser, stops. */
export const DIFFUSER_LOSS = prior(1.5, 0.5, 3);
/** Between mid-grey and the brightest tone that is recorded, stops. */
export const HIGHLIGHT_LATITUDE = prior(3.5, 2.5, 6);
/** What glass, crystal, varnish, plastic or wet things reflect: n 1.33 to 1.9, square on. */
export const GLOSS_REFLECTANCE = prior(0.04, 0.02, 0.1);
/** Amplitude of a rig against its subject after settling, mm, by what carries it. */
export const VIBRATION_TABLE = prior(0.001, 0.0002, 0.005);
export const VIBRATION_STAND = prior(0.003, 0.001, 0.02);
export const VIBRATION_BOOM = prior(0.02, 0.005, 0.1);
export const VIBRATION_HAND = prior(1, 0.3, 3);
/** Reflected-light constant K, cd·s/m². */
export const REFLECTED = prior(12.5, 12.5, 14);
/** Incident-light constant C, lx·s. */
export const INCIDENT = prior(250, 250, 340);
/** 0: the iris keeps its f-number as the focal length shortens; 1: it keeps its size. */
export const IRIS_KEEPS_SIZE = prior(0, 0, 1);

/**
 * Bytes of a still for each pixel: JPEG of high quality, compressed raw, raw of 14 or 16 bits in two
 * bytes.
 */
export const STILL_BYTES_PER_PIXEL = prior(1.2, 0.3, 2);

/** Times of rebuilding between two shots of a day, s. */
export const RIG_CHANGE = prior(900, 300, 1800);
export const LIGHT_CHANGE = prior(300, 120, 600);
export const SUBJECT_CHANGE = prior(300, 120, 900);
export const NEW_FILM = prior(60, 30, 180);

const PUPIL_RATIO = prior(1, 0.6, 1.4);
const LONG_PUPIL_RATIO = prior(1, 0.4, 1);
/** A lens this many times as long as the sensor's diagonal is built as a long lens. */
const LONG_IN_DIAGONALS = 3;

/** Exit over entrance pupil of a lens of this focal length before a sensor of this diagonal, mm. */
export const pupilRatioPrior = (focalMm: number, diagonalMm: number | undefined): Prior =>
  diagonalMm !== undefined && focalMm >= LONG_IN_DIAGONALS * diagonalMm
    ? LONG_PUPIL_RATIO
    : PUPIL_RATIO;

/** Outer diameter of a lens's front from its filter thread, mm. */
export const frontDiameterPrior = (threadMm: number): Prior =>
  prior(threadMm + 4, threadMm + 2, threadMm + 8);

/** Sensors narrower than this have mounts of their own, mm. */
const SMALL_SENSOR_MM = 20;

/** Mount face to sensor of a body whose sensor is so wide, mm. */
export const flangePrior = (sensorWidthMm: number): Prior =>
  sensorWidthMm < SMALL_SENSOR_MM ? prior(19, 17, 20) : prior(20, 16, 47);

/** A lens that focuses inside shortens its focal length, and so its closest distance, to this share. */
const CLOSEST_SHARE = prior(0.8, 0.6, 1);

/** Sensor to subject at the closest focus of a lens of focal length f (mm) that reaches m there, mm. */
export function closestDistancePrior(focalMm: number, magnification: number): Prior {
  const whole = focalMm * (2 + magnification + 1 / magnification);
  return prior(CLOSEST_SHARE.middle * whole, CLOSEST_SHARE.low * whole, CLOSEST_SHARE.high * whole);
}

/**
 * Magnification at the closest focus of a lens of focal length f that focuses down to D from the
 * sensor (mm): D = s·f·(2 + m + 1/m) solved for the lesser m, s its share of the focal length there.
 * Undefined where D is nearer than any lens of that focal length focuses: then m is to be given.
 */
export function closestMagnificationPrior(
  focalMm: number,
  fromSensorMm: number,
): Prior | undefined {
  const at = (share: number): number | undefined => {
    const sum = fromSensorMm / (share * focalMm) - 2;
    return sum >= 2 ? (sum - Math.sqrt(sum * sum - 4)) / 2 : undefined;
  };
  const [low, middle, high] = [at(CLOSEST_SHARE.low), at(CLOSEST_SHARE.middle), at(1)];
  return low === undefined || middle === undefined ? undefined : prior(middle, low, high ?? middle);
}

/** Size of a still of so many pixels, bytes. */
export const stillSizePrior = (pixels: number): Prior => {
  const { middle, low, high } = STILL_BYTES_PER_PIXEL;
  return prior(middle * pixels, low * pixels, high * pixels);
};

/** Width of the face of a light that came no nearer than this to the subject, mm: a point. */
export const pointSizePrior = (nearestMm: number): Prior => prior(0, 0, nearestMm);

export const ASSUMPTIONS = {
  'lens-loss': {
    key: 'loss',
    of: later`a lens`,
    quantity: 'stops',
    value: LENS_LOSS,
    source: COMMON,
    note: later`Light lost in the glass. It cancels where the light was read through the same lens. A \`t-stop\` gives it.`,
  },
  'converter-loss': {
    key: 'loss',
    of: later`a converter`,
    quantity: 'stops',
    value: CONVERTER_LOSS,
    source: COMMON,
    note: later`Light lost in the glass, beside what the factor costs. It cancels in a reading through this rig.`,
  },
  'close-up-loss': {
    key: 'loss',
    of: later`a close-up lens`,
    quantity: 'stops',
    value: CLOSE_UP_LOSS,
    source: COMMON,
    note: later`One or two coated elements.`,
  },
  'polariser-loss': {
    key: 'loss',
    of: later`a polariser`,
    quantity: 'stops',
    value: POLARISER_LOSS,
    source: COMMON,
    note: later`For unpolarised light. Other filters have their loss printed on them.`,
  },
  'sheet-loss': {
    key: 'polarised',
    of: later`a light that gets its polarising sheet in a shot`,
    quantity: 'stops',
    value: POLARISER_LOSS,
    source: COMMON,
    note: later`The sheet takes it from the light's own brightness. A brightness that the shot gives under \`relight\` is that behind the sheet.`,
  },
  'diffuser-loss': {
    key: 'emitting-size',
    of: later`a light that gets its diffuser in a shot`,
    quantity: 'stops',
    value: DIFFUSER_LOSS,
    source: COMMON,
    note: later`The diffuser takes it from the light's own brightness, and spreads a \`luminance\` over its larger face. What falls beside a smaller one is lost. A brightness that the shot gives under \`relight\` is that behind the diffuser.`,
  },
  'highlight-latitude': {
    key: 'highlight-latitude',
    of: later`a body`,
    quantity: 'stops',
    value: HIGHLIGHT_LATITUDE,
    source: COMMON,
    note: later`Between mid-grey and the brightest tone with detail. Usual picture profiles hold 2.5 to 3.5 stops, logarithmic ones up to 6. A test clip of a lit white wall settles it.`,
  },
  'gloss-reflectance': {
    key: 'reflectance',
    of: later`a glossy subject`,
    quantity: 'percent',
    value: GLOSS_REFLECTANCE,
    source: later`Fresnel's equations, refractive index 1.33 to 1.9`,
    note: later`Glass, crystal, varnish, plastic and wet things. Polished metal reflects half of the light and more, and has to say so.`,
  },
  'floating-film': {
    key: 'film.thickness',
    of: later`a film on a liquid`,
    quantity: null,
    value: {
      middle: later`the mean reflectance over all thicknesses`,
      ends: later`from the darkest to the brightest band`,
    },
    source: later`Airy's sum (Born and Wolf, Principles of Optics)`,
    note: later`Oil of 1.47 on water reflects 2% to 5.6%.`,
  },
  'vibration-table': {
    key: 'vibration',
    of: later`a table or column`,
    quantity: 'length',
    value: VIBRATION_TABLE,
    source: COMMON,
    note: later`Camera and subject stand on the same base, after the settling time.`,
  },
  'vibration-stand': {
    key: 'vibration',
    of: later`a tripod or stand`,
    quantity: 'length',
    value: VIBRATION_STAND,
    source: COMMON,
    note: later`On a firm floor, after the settling time. Steps and traffic add to it.`,
  },
  'vibration-boom': {
    key: 'vibration',
    of: later`a boom`,
    quantity: 'length',
    value: VIBRATION_BOOM,
    source: COMMON,
    note: later`The long arm swings after every touch. A longer settling time helps.`,
  },
  'vibration-hand': {
    key: 'vibration',
    of: later`a rig held by hand`,
    quantity: 'length',
    value: VIBRATION_HAND,
    source: COMMON,
    note: later`Sway of somebody who holds still and leans on something.`,
  },
  'pupil-ratio': {
    key: 'pupil-ratio',
    of: later`a lens`,
    quantity: 'ratio',
    value: PUPIL_RATIO,
    source: COMMON,
    note: later`Exit pupil over entrance pupil. It sets how much light extension costs.`,
  },
  'long-pupil-ratio': {
    key: 'pupil-ratio',
    of: later`a long lens`,
    quantity: 'ratio',
    value: LONG_PUPIL_RATIO,
    source: COMMON,
    note: later`From three times the sensor's diagonal on: telephoto designs have a small exit pupil.`,
  },
  iris: {
    key: null,
    of: later`a lens at close focus`,
    quantity: null,
    value: {
      middle: later`the f-number holds up close`,
      ends: later`some lenses keep the size of their iris and let in more light there`,
    },
    source: COMMON,
    note: later`Lenses that focus inside do one, the other or something between. A measured \`effective-f-number\` settles it.`,
  },
  area: {
    key: 'area',
    of: later`a recording mode`,
    quantity: null,
    value: {
      middle: later`the sensor's full width, or full height, in the shape of the frame`,
      ends: null,
    },
    source: COMMON,
    note: later`Some modes record less of the sensor: \`crop: 1.2x\` or \`area\` says so.`,
  },
  'closest-distance': {
    key: 'closest.from-sensor',
    of: later`a lens`,
    quantity: null,
    value: {
      middle: later`80% of f·(2 + m + 1/m), by the magnification m at the closest focus`,
      ends: later`60% to 100%`,
    },
    source: COMMON,
    note: later`Lenses that focus inside shorten their focal length up close.`,
  },
  'closest-magnification': {
    key: 'closest.magnification',
    of: later`a lens`,
    quantity: null,
    value: {
      middle: later`the lesser m of distance = 80% of f·(2 + m + 1/m)`,
      ends: later`60% to 100%`,
    },
    source: COMMON,
    note: later`Not for macro lenses, which focus nearer than this allows: theirs is printed on the barrel.`,
  },
  flange: {
    key: 'flange-distance',
    of: later`a body`,
    quantity: null,
    value: {
      middle: later`20 mm; 19 mm for a sensor under 20 mm wide`,
      ends: later`16 to 47 mm; 17 to 20 mm`,
    },
    source: COMMON,
    note: later`Bodies without a mirror have 16 to 20 mm, those with one 44 to 47 mm. Only distances from the front of the lens depend on it.`,
  },
  'front-diameter': {
    key: 'front-diameter',
    of: later`a lens`,
    quantity: null,
    value: { middle: later`\`filter-thread\` + 4 mm`, ends: later`+ 2 to 8 mm` },
    source: COMMON,
    note: later`The front ring around the filter thread.`,
  },
  'reflected-constant': {
    key: null,
    of: later`light from a luminance`,
    quantity: null,
    value: { middle: 'K = 12.5', ends: later`12.5 to 14` },
    source: later`ISO 2720, from memory; the constants that makers of meters use`,
    note: later`Which brightness counts as exposed right. A reading through the rig settles it.`,
  },
  'incident-constant': {
    key: null,
    of: later`light from an illuminance`,
    quantity: null,
    value: { middle: 'C = 250', ends: later`250 to 340` },
    source: later`ISO 2720, from memory; the constants that makers of meters use`,
    note: later`Which illuminance counts as exposed right. A reading with the meter settles it.`,
  },
  'point-light': {
    key: 'emitting-size',
    of: later`a light that was moved`,
    quantity: null,
    value: {
      middle: later`a light without a size is taken as a point`,
      ends: later`or as a face as wide as its nearest distance`,
    },
    source: later`inverse-square law (Lambert, Photometria); the wide end is common practice`,
    note: later`Only where its lux or its reading is from another distance. From five times its width on, a face is a point to 1%; as near as it is wide, it is 0.3 stops off.`,
  },
  modulation: {
    key: 'modulation',
    of: later`a lamp on the mains`,
    quantity: null,
    value: {
      middle: later`its light swings at twice the mains frequency`,
      ends: later`or not at all`,
    },
    source: COMMON,
    note: later`Flicker is at most 1/(2·f·t), and none over whole cycles: 1/50 s and 1/100 s are safe at 50 Hz.`,
  },
  'still-size': {
    key: 'stills.size',
    of: later`a body`,
    quantity: null,
    value: {
      middle: later`1.2 bytes for each pixel of a still`,
      ends: later`0.3 to 2 bytes`,
    },
    source: COMMON,
    note: later`JPEG needs about 0.3 bytes, compressed raw about 1.2, raw of 14 or 16 bits without compression 2. One still on a card tells its size.`,
  },
  'rig-change': {
    key: 'rig-change',
    of: later`the day`,
    quantity: 'time',
    value: RIG_CHANGE,
    source: COMMON,
    note: later`Building another rig, from the last take to focus. One person, everything at hand.`,
  },
  'light-change': {
    key: 'light-change',
    of: later`the day`,
    quantity: 'time',
    value: LIGHT_CHANGE,
    source: COMMON,
    note: later`Putting up, moving, dimming or taking down one light.`,
  },
  'subject-change': {
    key: 'subject-change',
    of: later`the day`,
    quantity: 'time',
    value: SUBJECT_CHANGE,
    source: COMMON,
    note: later`Putting another subject before the lens, cleaning up included.`,
  },
  'new-film': {
    key: 'new-film',
    of: later`the day`,
    quantity: 'time',
    value: NEW_FILM,
    source: COMMON,
    note: later`Making a film or bubble anew, before each take that the last one doesn't outlive.`,
  },
} as const satisfies Readonly<Record<string, Assumption>>;

export type AssumptionId = keyof typeof ASSUMPTIONS;
