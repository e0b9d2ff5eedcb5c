/**
 * A light as its bench shows it to be: readings at several distances give its output and the size of
 * its face. From far away the light falls by inverse square; near a large face by less, and by how
 * much tells how large the face is.
 */
import { FACE_SHARES, LIGHT_AS_GIVEN, LIGHT_METER } from '../assumptions/bench-beliefs.ts';
import { INCIDENT } from '../assumptions/table.ts';
import { evOfSettings, illuminanceOfEv } from '../exposure/ev.ts';
import { faceOnWeight } from '../exposure/face-on.ts';
import type { Vector } from '../lens-fit/cholesky.ts';
import { believed } from '../lens-fit/lens-beliefs.ts';
import type { Belief } from '../lens-fit/most-likely.ts';
import type { Face } from '../mirror/source.ts';
import { ifKnown, type Known } from '../plan/field.ts';
import type { Light, LightBenchRow } from '../plan/generated/types.ts';
import { later } from '../words/message.ts';
import {
  type EntryBench,
  type EntryRows,
  type EntryValue,
  freeBelief,
  gapOf,
  NOTHING,
  rowsOf,
  sigmaIn,
  sigmaStops,
} from './entry-bench.ts';
import { remembered } from './remembered.ts';

interface LightBench extends EntryBench {
  /** The light with these values of its unknowns: its face, and the luminance of it, cd/m². */
  at(unknowns: Vector): { readonly face: Face; readonly luminance: number };
}

/** One reading before it is known what it says of the light. */
interface Read {
  readonly row: number;
  readonly key: 'illuminance' | 'aperture';
  readonly at: EntryValue['at'];
  readonly distanceMm: number;
  readonly distanceSigmaMm: number;
  /** Of the meter alone, stops. */
  readonly sigma: number;
  /** log2 of lux; of an exposure by the meter constant. */
  readonly value: number;
  written(value: number): number;
}

/**
 * What the rows say; undefined: it has none. Without values where nothing can be made of them.
 *
 * @param incident meter constant C that exposures are turned into lux by
 */
export const lightBench = remembered((light: Light, incident: number): LightBench | undefined => {
  const rows = ifKnown(light.bench) ?? [];
  if (rows.length === 0) return undefined;
  const reads: Read[] = [];
  const { gaps } = rowsOf(rows, (row, number) => {
    const { found, gap } = readRow(row, number, incident);
    reads.push(...found);
    return gap ?? NOTHING;
  });
  const nothing = { beliefs: [], values: [], gaps, at: () => unfit() };
  if (light['emitting-size'].state === 'invalid' || light.diameter.state === 'invalid')
    return nothing;
  const face = faceOf(light, reads);
  if (!face) {
    const because = later`it needs \`emitting-size\`, or a second distance`;
    return { ...nothing, gaps: [...gaps, ...reads.map(({ row, at }) => ({ row, at, because }))] };
  }
  return reads.length === 0 ? nothing : fitted(light, face, reads, gaps, incident);
});

const unfit = (): never => {
  throw new Error('a bench without values has no light');
};

/** A shape and how large it is by one number, with what is believed of that. */
interface Sized {
  readonly belief: Belief;
  face(size: number): Face;
}

/** Nearer together than this share, two distances tell nothing of a face. */
const APART = 1.05;

/** undefined: nothing is said of it, and the rows can't tell. */
function faceOf(light: Light, reads: readonly Read[]): Sized | undefined {
  const { faceShare } = LIGHT_AS_GIVEN;
  const { diameter, 'emitting-size': size } = light;
  if (diameter.state === 'known')
    return {
      belief: {
        middle: Math.log(diameter.value),
        sigma: sigmaIn(diameter, faceShare * diameter.value) / diameter.value,
      },
      face: (log) => ({ shape: 'round', diameterMm: Math.exp(log) }),
    };
  if (size.state === 'known') {
    const { width, height } = size.value;
    return {
      belief: { middle: 0, sigma: faceShare / 2 },
      face: (log) => ({
        shape: 'rectangle',
        widthMm: width * Math.exp(log),
        heightMm: height * Math.exp(log),
      }),
    };
  }
  const distances = reads.map(({ distanceMm }) => distanceMm);
  const nearest = Math.min(...distances);
  if (!(Math.max(...distances) > APART * nearest)) return undefined;
  return {
    belief: believed(Math.log(FACE_SHARES.low * nearest), Math.log(FACE_SHARES.high * nearest)),
    face: (log) => ({ shape: 'round', diameterMm: Math.exp(log) }),
  };
}

/** Beyond what anybody believes of a light, stops. */
const ANY_OUTPUT = 10;
/**
 * By how many stops lux are more than what exposures are turned into by this meter constant: nobody
 * knows which constant a meter has.
 */
const luxOver = (incident: number): Belief => ({
  middle: Math.log2(INCIDENT.middle / incident),
  sigma: Math.log2(INCIDENT.high / INCIDENT.middle) / 2,
});
/** Where nothing is turned into lux. */
const SAME: Belief = { middle: 0, sigma: 0 };

/**
 * Its unknowns: log2 of the lux at a distance amid the readings, log of the size of the face, and
 * where some readings are lux and some exposures, by how many stops lux are more.
 */
function fitted(
  light: Light,
  { belief, face }: Sized,
  reads: readonly Read[],
  gaps: LightBench['gaps'],
  incident: number,
): LightBench {
  const logs = reads.map(({ distanceMm }) => Math.log(distanceMm));
  const amidMm = Math.exp(logs.reduce((sum, log) => sum + log, 0) / logs.length);
  const exposure = reads.find(({ key }) => key === 'aperture');
  const over = exposure ? luxOver(incident) : SAME;
  const isMixed = new Set(reads.map(({ key }) => key)).size > 1;
  const luminanceBy = ([lux, size]: Vector): number =>
    2 ** lux! / faceOnWeight(face(size!), amidMm);
  const luxAt = (unknowns: Vector, distanceMm: number): number =>
    Math.log2(luminanceBy(unknowns) * faceOnWeight(face(unknowns[1]!), distanceMm));
  const output =
    outputOf(light, face(belief.middle), amidMm, over) ??
    freeBelief((exposure ?? reads[0]!).value, ANY_OUTPUT);
  const middles = [output.middle, belief.middle];
  const values = reads.map((read): EntryValue => {
    const { row, key, at, distanceMm, distanceSigmaMm: by, sigma, value, written } = read;
    const steep = (luxAt(middles, distanceMm + by) - luxAt(middles, distanceMm - by)) / 2;
    const more = (unknowns: Vector): number =>
      isMixed && key === 'illuminance' ? unknowns[2]! : 0;
    return {
      row,
      key,
      at,
      datum: {
        value,
        sigma: Math.hypot(sigma, steep),
        predict: (unknowns) => luxAt(unknowns, distanceMm) + more(unknowns),
      },
      written,
    };
  });
  return {
    beliefs: [output, belief, ...(isMixed ? [over] : [])],
    values,
    gaps,
    at: (unknowns) => ({ face: face(unknowns[1]!), luminance: luminanceBy(unknowns) }),
  };
}

/**
 * log2 of the lux that a light should give there by its data sheet; undefined: it has none.
 *
 * @param over by how much lux are more than what the readings are
 */
function outputOf(light: Light, face: Face, distanceMm: number, over: Belief): Belief | undefined {
  const { luminance, illuminance, 'illuminance-distance': distance } = light;
  const { outputStops } = LIGHT_AS_GIVEN;
  const weight = faceOnWeight(face, distanceMm);
  if (luminance.state === 'known')
    return {
      middle: Math.log2(luminance.value * weight) - over.middle,
      sigma: Math.hypot(sigmaStops(luminance, outputStops), over.sigma),
    };
  if (illuminance.state !== 'known' || distance.state !== 'known') return undefined;
  return {
    middle:
      Math.log2((illuminance.value * weight) / faceOnWeight(face, distance.value)) - over.middle,
    sigma: Math.hypot(sigmaStops(illuminance, outputStops), over.sigma),
  };
}

function readRow(
  { value: row, at }: Known<LightBenchRow>,
  number: number,
  incident: number,
): { readonly found: readonly Read[]; readonly gap?: EntryRows } {
  const { distance, illuminance, aperture, shutter, iso } = row;
  if (distance.state !== 'known') return { found: [] };
  const { distanceMm: usualMm, distanceShare } = LIGHT_METER;
  const common = {
    row: number,
    distanceMm: distance.value,
    distanceSigmaMm: sigmaIn(distance, Math.max(usualMm, distanceShare * distance.value)),
  };
  const found: Read[] = [];
  if (illuminance.state === 'known')
    found.push({
      ...common,
      key: 'illuminance',
      at: illuminance.at,
      sigma: sigmaStops(illuminance, LIGHT_METER.stops),
      value: Math.log2(illuminance.value),
      written: (value) => 2 ** value,
    });
  const exposure = [aperture, shutter, iso];
  const isExposed = exposure.some(({ state }) => state !== 'missing');
  if (isExposed && exposure.some(({ state }) => state === 'missing'))
    return {
      found,
      gap: gapOf(number, at, later`an exposure needs \`aperture\`, \`shutter\` and \`iso\``),
    };
  if (shutter.state === 'known' && shutter.value.kind === 'angle')
    return { found, gap: gapOf(number, shutter.at, later`it needs \`shutter\` as a time`) };
  if (
    aperture.state === 'known' &&
    iso.state === 'known' &&
    shutter.state === 'known' &&
    shutter.value.kind === 'time'
  ) {
    const timeS = shutter.value.seconds;
    const luxBy = (fNumber: number): number =>
      Math.log2(illuminanceOfEv(evOfSettings({ fNumber, timeS, iso: iso.value }), incident));
    const value = luxBy(aperture.value);
    found.push({
      ...common,
      key: 'aperture',
      at: aperture.at,
      sigma: LIGHT_METER.stops / 2,
      value,
      written: (other) => aperture.value * 2 ** ((other - value) / 2),
    });
  }
  if (!isExposed && illuminance.state === 'missing')
    return { found, gap: gapOf(number, at, later`nothing was measured in it`) };
  return { found };
}
