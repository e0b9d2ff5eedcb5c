/**
 * Everything that a shot could be set to: third stops of the lens, marked shutter times and those
 * that leave no flicker, marked ISO, tilts to a tenth of a degree, and the plan's lights. What the
 * plan doesn't say is not invented: a setting that is not known stays as it is.
 */
import { flickerFreeTimesS, lampFrequencyHz } from '../exposure/flicker.ts';
import { MARKED_ISO } from '../exposure/remedies.ts';
import { isLongerThanFrame } from '../exposure/shutter.ts';
import { MARKED_SHUTTER_RECIPROCALS } from '../exposure/shutter-marks.ts';
import type { Bench } from '../figures/bench.ts';
import { isFlatMirror } from '../figures/mirror-kind.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import type { Sec } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import type { Choice, Choices } from './choice.ts';
import { lightChoices, type Relit } from './lights.ts';

/** A mirror is hardly ever tilted further; past it the frame is all depth. */
const STEEPEST_DEG = 45;
/** Values nearer than this are one. */
const SAME = 1e-9;

export function choicesOf(bench: Bench, figures: ShotFigures, relit: Relit): Choices {
  return {
    aperture: apertures(bench),
    shutter: shutters(bench, figures),
    iso: isos(bench),
    tilt: tilts(bench, figures),
    light: lightChoices(bench, relit),
  };
}

const stopsApart = (a: number, b: number): number => Math.abs(Math.log2(a / b));

/** `present` first, then the others that are not it. */
function around<V extends number>(
  present: V,
  others: readonly V[],
  print: (value: V) => string,
  apart: (value: V, present: V) => number,
): readonly Choice<V>[] {
  const kept: V[] = [];
  for (const value of others)
    if (![present, ...kept].some((one) => Math.abs(one - value) <= SAME * Math.abs(one)))
      kept.push(value);
  return [present, ...kept].map((value, index) => ({
    value,
    text: print(value),
    moved: index === 0 ? 0 : apart(value, present),
  }));
}

const unset = <V>(value: V): readonly Choice<V>[] => [{ value, text: '', moved: 0 }];

function apertures({ marked, marksOnLens }: Bench): readonly Choice<number>[] {
  if (!marked.known) return unset(Number.NaN);
  return around(
    marked.value,
    marksOnLens,
    (mark) => `f/${mark}`,
    (a, b) => 2 * stopsApart(a, b),
  );
}

function shutters(
  { recordRate, mainsHz, shutter }: Bench,
  { shutterSeconds, worstFlicker }: ShotFigures,
): readonly Choice<number>[] {
  if (!shutterSeconds.known || !shutter.known) return unset(Number.NaN);
  const rate = recordRate.known ? recordRate.value : undefined;
  const lamps = [
    ...(mainsHz.known ? [lampFrequencyHz(mainsHz.value)] : []),
    ...(worstFlicker.known && worstFlicker.value.lampHz > 0 ? [worstFlicker.value.lampHz] : []),
  ];
  const slowest = 1 / MARKED_SHUTTER_RECIPROCALS[0]!;
  const times = [
    ...MARKED_SHUTTER_RECIPROCALS.map((reciprocal) => 1 / reciprocal),
    ...(rate === undefined ? [] : lamps.flatMap((hertz) => flickerFreeTimesS(hertz, rate))),
  ].filter(
    (time) =>
      time <= slowest &&
      !(rate !== undefined && isLongerThanFrame(time, rate)) &&
      // Where nobody can say how the lights pulse, whole cycles of the mains are what is safe.
      (worstFlicker.known || !mainsHz.known || isWholeCycles(time, mainsHz.value)),
  );
  const print = (seconds: number) => KINDS.shutter.print({ kind: 'time', seconds: seconds as Sec });
  const [present, ...others] = around(shutterSeconds.value, times, print, stopsApart);
  return [{ ...present!, text: KINDS.shutter.print(shutter.value) }, ...others];
}

function isWholeCycles(timeS: number, mainsHz: number): boolean {
  const cycles = timeS * lampFrequencyHz(mainsHz);
  return Math.round(cycles) > 0 && Math.abs(cycles - Math.round(cycles)) <= SAME * cycles;
}

/** `auto` stays: the body follows by itself. */
function isos({ iso, isoLimits }: Bench): readonly Choice<number | 'auto'>[] {
  if (!iso.known || iso.value === 'auto') return unset('auto');
  const { lowest, highest } = isoLimits;
  const from = lowest.known ? lowest.value : MARKED_ISO[0]!;
  const to = highest.known ? highest.value : MARKED_ISO.at(-1)!;
  return around<number>(
    iso.value,
    MARKED_ISO.filter((mark) => mark >= from && mark <= to),
    String,
    stopsApart,
  );
}

/** A mirror steeper or less; what is no mirror stands as it was decided, or nearer to square. */
function tilts(bench: Bench, { litTiltsRad: lit }: ShotFigures): readonly Choice<number>[] {
  const { tiltRad, subject } = bench;
  if (!tiltRad.known || !subject) return unset(Number.NaN);
  const present = tiltRad.value;
  const presentDeg = (present * 180) / Math.PI;
  const steepest = isFlatMirror(bench) ? STEEPEST_DEG : Math.abs(presentDeg);
  // To the side from which the light fills the frame, where one does.
  const isLit = lit.known && lit.value.greatestRad > lit.value.leastRad;
  const side = present < 0 && !isLit ? -1 : 1;
  const grid = Array.from(
    { length: Math.floor(steepest * 10 + SAME) + 1 },
    (_, tenths) => (side * tenths * Math.PI) / 1800,
  );
  const print = (radians: number) => `${Number(((radians * 180) / Math.PI).toFixed(1))} deg`;
  const apart = (a: number, b: number) => Math.abs(((a - b) * 180) / Math.PI);
  const others = grid.filter((tilt) => Math.abs(tilt - present) > SAME);
  return around(present, others, print, apart);
}
