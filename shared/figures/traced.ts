/** The picture by calculation: the rig traced at the setting that the shot needs. */

import type { Chain } from '../optics/arrangement.ts';
import { type ChainTrace, traceChain, type UnknownFigure as Untraced } from '../optics/chain.ts';
import { lossByPart } from '../optics/light-loss.ts';
import type { LensPart } from '../optics/parts.ts';
import { closestRing, ringFor, ringForDistance } from '../optics/reach.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, notKnown, silent, type UnknownFigure, withValue } from './figure.ts';
import type { NamedPart } from './parts.ts';
import { remembered } from './remembered.ts';
import { needOf } from './rig-layout.ts';
import type { OpticalFigures } from './shot-figures.ts';

/** A field this close to the end of the reach counts as reached: the chain is no more accurate. */
export const REACH_TOLERANCE = 0.005;

const traceOf = remembered(traceChain);
const lossesOf = remembered(lossByPart);
/** m0 for a magnification between the ends of the reach; undefined where nothing comes into focus. */
const ringAt = remembered(
  (chain: Chain, wanted: number, least: number, most: number) =>
    ringFor(chain, wanted, [least, most])?.ringMagnification,
);

export function tracedOptics(bench: Bench): OpticalFigures {
  const { parts, marked, recordedAreaMm, chain, reach: reached } = bench;
  const ring = ringOf(bench, chain, reached);
  const trace = derive([chain, ring], (it, setting) => traceOf(it, setting));
  const traced = (figure: Untraced): Figure<number> => {
    if (!trace.known) return trace;
    const value = trace.value[figure];
    if (value !== undefined) return withValue(trace, value);
    return untraced(trace.value, figure, parts);
  };
  const ratio = derive([trace], (it) => it.fNumberRatio);
  const magnification = traced('magnification');
  return {
    chain,
    trace,
    magnification,
    lensMagnification: derive([trace], (it) => it.lensMagnification),
    ringMagnification: derive([trace], (it) => it.ringMagnification),
    reach: reached,
    fieldMm: derive([recordedAreaMm, magnification], (area, m) =>
      m > 0
        ? ([area.width / m, area.height / m] as const)
        : ([Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY] as const),
    ),
    effectiveFNumber: derive([marked, ratio], (n, times) => n * times),
    lightLossStops: derive([trace], (it) => it.lightLossStops),
    lossByPart: derive([chain, ring, parts], (it, setting, named) =>
      lossesOf(it, setting)
        .map(({ part, stops }) => ({ part: named[part]!.name, stops }))
        .filter((_, index) => named[index]!.kind !== 'body'),
    ),
    workingDistanceMm: traced('workingDistanceMm'),
    subjectToSensorMm: traced('subjectToSensorMm'),
    pupilDiameterMm: derive([traced('pupilFocalMm'), marked], (focal, n) => focal / n),
  };
}

/** m0 at a setting of the ring: an end of its travel, or a distance on its scale, mm. */
export function ringSetting(lens: LensPart, setting: number | 'closest' | 'infinity'): number {
  if (setting === 'infinity') return 0;
  if (setting === 'closest') return closestRing(lens);
  return ringForDistance(lens, setting).ringMagnification;
}

/** The same, or the reason that the ring can't be set there. */
export function setRing(
  lens: LensPart,
  setting: number | 'closest' | 'infinity',
): number | UnknownFigure {
  const isBeyond =
    typeof setting === 'number' && ringForDistance(lens, setting).beyond !== undefined;
  return isBeyond
    ? notKnown(message`the focus ring can't be set that close`)
    : ringSetting(lens, setting);
}

/** m0 at which the shot's field, magnification or ring setting is met. */
function ringOf(
  bench: Bench,
  chain: OpticalFigures['chain'],
  reached: OpticalFigures['reach'],
): Figure<number> {
  const { wantedMagnification, wantedRing, wantedAt } = bench;
  if (wantedRing.known)
    return derive([chain, wantedRing], ({ lens }, wanted) => setRing(lens, wanted));
  if (wantedAt !== undefined && wantedAt.path[0] === 'ring') return wantedRing;
  return derive([chain, wantedMagnification, reached], (it, wanted, limits) => {
    const [least, most] = limits;
    const beyond = wanted < least * (1 - REACH_TOLERANCE) || wanted > most * (1 + REACH_TOLERANCE);
    if (beyond) return notKnown(message`the rig can't frame the field of the shot`);
    return ringAt(it, wanted, least, most) ?? notKnown(message`nothing comes into focus`);
  });
}

const OF_THE_RIM: ReadonlySet<Untraced> = new Set([
  'workingDistanceMm',
  'pupilDepthMm',
  'rimFromSensorMm',
]);

export function untraced(
  trace: ChainTrace,
  figure: Untraced,
  parts: Figure<readonly NamedPart[]>,
): UnknownFigure {
  if (trace.focus === 'nowhere')
    return notKnown(message`nothing in front of the rig comes into focus`);
  // A filter that can't be looked up has a finding of its own.
  if (trace.frontMm === undefined && OF_THE_RIM.has(figure)) return silent;
  const missing = trace.missing[figure] ?? [];
  const named = parts.known ? parts.value : [];
  return { known: false, needs: missing.map((input) => needOf(input, named)) };
}
