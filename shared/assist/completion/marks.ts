/** Values that a shot's settings are usually set to, as far as this shot's kit has them. */
import { flickerFreeTimesS } from '../../exposure/flicker.ts';
import { MARKED_ISO } from '../../exposure/remedies.ts';
import { isLongerThanFrame } from '../../exposure/shutter.ts';
import { MARKED_SHUTTER_RECIPROCALS } from '../../exposure/shutter-marks.ts';
import { MARKED_APERTURES } from '../../optics/apertures.ts';
import type { Sec } from '../../quantity/brands.ts';
import { KINDS } from '../../quantity/index.ts';
import { significant } from '../../say/say.ts';
import type { TrialShot } from './trial-shot.ts';

type Marks = (shot: TrialShot) => readonly string[];

/** Common practice where nothing else is known: what most lenses have. */
const USUAL_APERTURES = MARKED_APERTURES.filter((mark) => mark >= 2.8 && mark <= 32);

export const apertures: Marks = ({ now: { bench } }) => {
  const marks = bench.marksOnLens.length > 0 ? bench.marksOnLens : USUAL_APERTURES;
  return marks.map((mark) => `f/${mark}`);
};

/** Angles that shutters are marked with; common practice. */
const ANGLES = [45, 90, 144, 172.8, 180, 270, 360];

export const shutters: Marks = ({ now: { bench, figures } }) => {
  const rate = bench.recordRate;
  const fits = (reciprocal: number) =>
    reciprocal >= 8 &&
    reciprocal <= 2000 &&
    !(rate.known && isLongerThanFrame(1 / reciprocal, rate.value));
  // The whole frame, half and a quarter of it: 360, 180 and 90 degrees.
  const ofFrame = rate.known ? [1, 2, 4].map((share) => Math.round(share * rate.value)) : [];
  const marked = [...ofFrame, ...MARKED_SHUTTER_RECIPROCALS]
    .filter(fits)
    .sort((a, b) => a - b)
    .map((reciprocal) => `1/${reciprocal} s`);
  const { worstFlicker } = figures;
  const lampHz = worstFlicker.known ? worstFlicker.value.lampHz : 0;
  const safe =
    lampHz > 0
      ? flickerFreeTimesS(lampHz, rate.known ? rate.value : lampHz / 4, 6).map((seconds) =>
          KINDS.shutter.print({ kind: 'time', seconds: seconds as Sec }),
        )
      : [];
  return [...new Set([...safe, ...marked, ...ANGLES.map((degrees) => `${degrees} deg`)])];
};

export const speeds: Marks = ({ now: { bench } }) => {
  const { lowest, highest } = bench.isoLimits;
  const from = lowest.known ? lowest.value : 100;
  const to = highest.known ? highest.value : 25600;
  const marks = MARKED_ISO.filter((iso) => iso >= from * 0.97 && iso <= to * 1.03);
  return [...marks.map(String), 'auto'];
};

/** Widths and heights as people name them. */
const ROUND = [
  1, 1.2, 1.5, 1.6, 1.8, 2, 2.2, 2.4, 2.5, 2.8, 3, 3.2, 3.4, 3.5, 3.6, 4, 4.4, 4.5, 4.8, 5, 5.5, 6,
  6.5, 7, 7.2, 7.5, 8, 9,
];

/** Round numbers from `least` to `most`, both above 0. */
function roundNumbers(least: number, most: number): number[] {
  const found: number[] = [];
  for (let decade = 10 ** Math.floor(Math.log10(least)); decade <= most; decade *= 10)
    for (const round of ROUND) {
      const value = Number((round * decade).toPrecision(2));
      if (value >= least && value <= most) found.push(value);
    }
  return found;
}

/** Fields of less than this are not filmed through lenses, of more not close. */
const LEAST_FIELD_MM = 0.5;
const MOST_FIELD_MM = 300;

export const fields: Marks = ({ now: { bench } }) => {
  const { reach, recordedAreaMm: area } = bench;
  const width = area.known ? area.value.width : 36;
  const least = reach.known ? width / reach.value[1] : 2;
  const most = reach.known ? width / Math.max(reach.value[0], 1e-9) : MOST_FIELD_MM;
  return roundNumbers(Math.max(least, LEAST_FIELD_MM), Math.min(most, MOST_FIELD_MM)).map(
    (mm) => `${mm} mm`,
  );
};

export const magnifications: Marks = ({ now: { bench } }) => {
  const { reach } = bench;
  const [least, most] = reach.known ? reach.value : [0.1, 5];
  return roundNumbers(Math.max(least, 0.05), Math.min(most, 20)).map((m) => `${m}x`);
};

export const rings: Marks = () => ['closest', 'infinity'];

export const tilts: Marks = ({ now: { figures } }) => {
  const { tiltWindow } = figures;
  if (!tiltWindow.known)
    return ['0 deg', '5 deg', '10 deg', '15 deg', '20 deg', '30 deg', '45 deg'];
  const { leastRad, greatestRad } = tiltWindow.value;
  const least = Math.ceil(((leastRad * 180) / Math.PI) * 10) / 10;
  const most = Math.min((greatestRad * 180) / Math.PI, 60);
  const round = Array.from({ length: 121 }, (_, half) => half / 2);
  const inside = round.filter(
    (degrees) => degrees >= least && degrees <= Math.max(most, least + 3),
  );
  return [...new Set([least, ...inside.slice(0, 24)])].map(
    (degrees) => `${significant(degrees)} deg`,
  );
};

/** Of the lights that are on, then those that lamps and daylight are named by (common practice). */
export const whiteBalances: Marks = ({ now: { bench } }) => {
  const lights = bench.lights.known ? bench.lights.value : [];
  const own = lights.flatMap(({ fields: { 'colour-temperature': colour } }) =>
    colour.state === 'known' ? [KINDS['colour-temperature'].print(colour.value)] : [],
  );
  return [...new Set([...own, '5600 K', '3200 K', '4000 K', 'auto'])];
};
