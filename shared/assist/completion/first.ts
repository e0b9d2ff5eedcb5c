/** What a setting of a shot begins with, told from a figure or two: a list tries all of them. */
import { flickerFreeTimeS } from '../../exposure/flicker.ts';
import { nearestMark } from '../../exposure/remedies.ts';
import { MARKED_SHUTTER_RECIPROCALS } from '../../exposure/shutter-marks.ts';
import type { Sec } from '../../quantity/brands.ts';
import { KINDS } from '../../quantity/index.ts';
import { apertures, fields, magnifications, speeds, tilts } from './marks.ts';
import type { TrialShot } from './trial-shot.ts';

type First = (shot: TrialShot) => string | undefined;

/** The text whose number is nearest to `wanted`, in ratio. */
function nearestText(texts: readonly string[], wanted: number): string | undefined {
  const numbers = texts
    .map((text) => Number.parseFloat(text.replace('f/', '')))
    .filter((n) => n > 0);
  if (numbers.length === 0 || !(wanted > 0)) return texts[0];
  const near = nearestMark(numbers, wanted);
  return texts.find((text) => Number.parseFloat(text.replace('f/', '')) === near);
}

export const firstAperture: First = (shot) => nearestText(apertures(shot), 8);

/** Half of the frame (180°), in whole cycles of the lamps. */
export const firstShutter: First = ({ now: { bench, figures } }) => {
  const rate = bench.recordRate.known ? bench.recordRate.value : 25;
  const half = 1 / (2 * rate);
  const lampHz = figures.worstFlicker.known ? figures.worstFlicker.value.lampHz : 0;
  const seconds = lampHz > 0 ? flickerFreeTimeS(lampHz, rate, half) : undefined;
  if (seconds === undefined) return `1/${nearestMark(MARKED_SHUTTER_RECIPROCALS, 1 / half)} s`;
  return KINDS.shutter.print({ kind: 'time', seconds: seconds as Sec });
};

export const firstSpeed: First = (shot) => {
  const { isoNeeded } = shot.now.figures;
  return nearestText(speeds(shot), isoNeeded.known ? isoNeeded.value : 400);
};

/** The subject's own width, else three quarters of what the rig can enlarge. */
export const firstField: First = (shot) => {
  const { reach, recordedAreaMm, subject } = shot.now.bench;
  const area = recordedAreaMm.known ? recordedAreaMm.value.width : 36;
  const size = subject?.fields.size.state === 'known' ? subject.fields.size.value.width : undefined;
  const most = reach.known ? reach.value[1] : 0.75;
  return nearestText(fields(shot), Math.max(size ?? 0, area / (0.75 * most)));
};

/** The width nearest to `mm` that the rig can frame. */
export const nearestField = (shot: TrialShot, mm: number): string | undefined =>
  nearestText(fields(shot), mm);

export const firstMagnification: First = (shot) => {
  const { reach } = shot.now.bench;
  return nearestText(magnifications(shot), reach.known ? 0.75 * reach.value[1] : 0.5);
};

/** A little past the lens where that holds, else just past it. */
export const firstTilt: First = (shot) => {
  const [least, next] = tilts(shot);
  const { tiltWindow } = shot.now.figures;
  if (!tiltWindow.known) return next;
  const most = (tiltWindow.value.greatestRad * 180) / Math.PI;
  return next !== undefined && Number.parseFloat(next) < most ? next : least;
};
