/**
 * Prints the rows under `bench` in moth-wings.shootplan.yaml, made up as honestly as a ruler is read:
 *
 *     node samples/moth-wings.mjs
 *
 * The lens is a telephoto f/5.6 as published (M. Laikin, Lens Design, 4th ed., p. 91), 40 times as large.
 * Rays are traced through its surfaces near the axis. Each reading is then off by chance, and rounded as
 * a person writes it down. The random numbers start from one seed, so that the rows are always the same.
 */

const SIZE = 40;
const SENSOR_WIDTH_MM = 36;
/** Magnification at the closest focus of the ring. */
const CLOSEST = 0.25;
const SEED = 41;

/** Radius, distance to the next surface, index behind it; from the subject toward the sensor. */
const SURFACES = [
  [0.8589, 0.2391, 1.5168],
  [-2.6902, 0.09, 1.66446],
  [3.0318, 0.0481, 1],
  [Infinity, 1.0347, 1], // the iris
  [-0.5715, 0.09, 1.50847],
  [-0.7423, 0.1005, 1.78582],
  [-1.1433, 0.0156, 1],
  [-17.0388, 0.0793, 1.71736],
  [-2.7695, 0, 1],
].map(([radius, distance, index]) => [radius * SIZE, distance * SIZE, index]);
const IRIS = 3;

/** Height and slope of a ray behind surfaces `from` up to but not with `to`: n′u′ = nu − y(n′ − n)/R. */
function traced([height, slope], from = 0, to = SURFACES.length) {
  for (let at = from; at < to; at++) {
    const [radius, distance, index] = SURFACES[at];
    const before = SURFACES[at - 1]?.[2] ?? 1;
    slope = (before * slope - (height * (index - before)) / radius) / index;
    height += distance * slope;
  }
  return [height, slope];
}

const [PARALLEL_HEIGHT, PARALLEL_SLOPE] = traced([1, 0]);
const FOCAL_MM = -1 / PARALLEL_SLOPE;
const BACK_MM = -PARALLEL_HEIGHT / PARALLEL_SLOPE;
const LENGTH_MM = SURFACES.reduce((sum, [, distance]) => sum + distance, 0);

/** What is true with tubes of this length, the ring turned to this magnification. */
function truth(tubesMm, ring) {
  const toSensor = BACK_MM + FOCAL_MM * ring + tubesMm;
  const atSensor = (ray) => {
    const [height, slope] = traced(ray);
    return height + toSensor * slope;
  };
  // Rays of any slope from one point of the subject meet again at the sensor.
  const workingMm = -atSensor([0, 1]) / atSensor([1, 0]);
  const magnification = -atSensor([1, 0]);
  // The exit pupil is where a ray from the middle of the iris seems to come from.
  const [middle, middleSlope] = traced([0, 1], IRIS);
  const exitMm = -middle / middleSlope;
  const [edge, edgeSlope] = traced([1, 0], IRIS);
  const [atIris] = traced([1, 0], 0, IRIS);
  const exitRatio = Math.abs((edge + exitMm * edgeSlope) * atIris);
  return {
    fieldMm: SENSOR_WIDTH_MM / magnification,
    workingMm,
    fromSensorMm: workingMm + LENGTH_MM + toSensor,
    /** Effective over marked f-number. */
    darker: (toSensor - exitMm) / (exitRatio * FOCAL_MM),
  };
}

/** Mulberry32 (T. Ettinger, public domain): from 0 up to 1. */
let state = SEED;
function random() {
  state = (state + 0x6d2b79f5) >>> 0;
  let t = state;
  t = Math.imul(t ^ (t >>> 15), t | 1);
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
}

/** Box and Muller. */
const chance = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** A ruler in the frame is read to half of 0.5 %, a distance to 1 mm, light to a twentieth of a stop. */
const field = (mm) => `field: ${(mm * (1 + 0.0025 * chance())).toFixed(1)} mm`;
const distance = (key, mm) => `${key}: ${(mm + chance()).toFixed(0)} mm`;
const light = (ratio, marked) =>
  `effective-f-number: ${(marked * ratio * 2 ** ((0.05 * chance()) / 2)).toFixed(1)}, marked: f/${marked}`;

const alone = truth(0, CLOSEST);
const near = truth(36, CLOSEST);
const far = truth(36, 0);

const rows = [
  `with: [body-a], ring: closest, ${field(alone.fieldMm)}, ${distance('from-sensor', alone.fromSensorMm)}`,
  `with: [body-a, tube-36], ring: closest, ${field(near.fieldMm)}, ${distance('working-distance', near.workingMm)}`,
  `with: [body-a, tube-36], ring: infinity, ${field(far.fieldMm)}, ${light(far.darker, 8)}`,
];

process.stdout.write(rows.reduce((text, row) => `${text}        - { ${row} }\n`, ''));
