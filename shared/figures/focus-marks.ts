/** Marks of the focus ring whose planes of focus follow each other along the lens axis. */
import type { Chain } from '../optics/arrangement.ts';
import { judgedBlur } from '../optics/best-aperture.ts';
import { type ChainTrace, traceChain } from '../optics/chain.ts';
import { type Depth, depthByFNumber } from '../optics/depth.ts';
import { bisected } from '../optics/solve.ts';
import { message } from '../words/message.ts';
import { notKnown, type UnknownFigure } from './figure.ts';
import type { FocusMark } from './shot-figures.ts';

/** What the marks follow from besides the ring. */
interface Focused {
  readonly chain: Chain;
  readonly circleMm: number;
  /** Marked f-number. */
  readonly marked: number;
}

/** Where marks end before the end of the ring's way: at a distance from the start, or after so many. */
interface Until {
  readonly awayMm?: number;
  readonly most?: number;
}

/** More marks than this are no scale that anybody turns to. */
const MOST_MARKS = 1000;
/** Where a way of the ring is looked at for a turning point. */
const LOOKS = 32;

/** Depth of field of the rig at this setting; undefined if nothing real is in focus. */
export function depthAt(trace: ChainTrace, circleMm: number, marked: number): Depth | undefined {
  const { magnification, pupilDistanceMm, fNumberRatio } = trace;
  if (magnification === undefined || pupilDistanceMm === undefined || magnification <= 0)
    return undefined;
  const effectiveFNumber = marked * fNumberRatio;
  const { blurMm } = judgedBlur(circleMm, effectiveFNumber);
  return depthByFNumber({ blurMm, magnification, effectiveFNumber, pupilDistanceMm });
}

/**
 * Marks from one setting of the ring toward another, each `share` of the usable depth from the one
 * before. The first is `fromRing`, the last `toRing`, or the first that is `awayMm` or more from
 * the start, or the one after which there are `most`.
 *
 * @param share of the depth of field at the mark before; > 0
 */
export function marksOnWay(
  focused: Focused,
  [fromRing, toRing]: readonly [number, number],
  share: number,
  { awayMm = Number.POSITIVE_INFINITY, most = MOST_MARKS + 1 }: Until = {},
): readonly FocusMark[] | UnknownFigure {
  const { chain } = focused;
  const placeAt = (ring: number): number => {
    const { focus, subjectToSensorMm } = traceChain(chain, ring);
    return focus === 'infinity' ? Number.POSITIVE_INFINITY : (subjectToSensorMm ?? Number.NaN);
  };
  const [start, end] = [markAt(focused, fromRing), placeAt(toRing)];
  if (!start || Number.isNaN(end)) return notKnown(message`nothing comes into focus`);
  const away = Math.sign(end - start.fromSensorMm);
  if (turnsBack(placeAt, fromRing, toRing, away))
    return notKnown(message`turning the ring moves the plane of focus to and fro here`);
  const marks = [start];
  while (marks.length <= MOST_MARKS) {
    if (marks.length >= most) return marks;
    const last = marks.at(-1)!;
    const gone = Math.abs(last.fromSensorMm - start.fromSensorMm);
    if (gone >= awayMm || last.ringMagnification === toRing) return marks;
    const next = last.fromSensorMm + away * share * last.depthMm;
    const isEnd = !((end - next) * away > 0);
    const ring = isEnd ? toRing : settingFor(placeAt, next, last, toRing);
    const mark = markAt(focused, ring);
    if (!mark) return marks;
    marks.push(mark);
  }
  return notKnown(message`there would be more than ${MOST_MARKS} marks`);
}

/** The setting between the last mark and the end whose plane of focus is at `placeMm`. */
const settingFor = (
  placeAt: (ring: number) => number,
  placeMm: number,
  { ringMagnification, fromSensorMm }: FocusMark,
  toRing: number,
): number =>
  bisected((ring) => placeAt(ring) - placeMm, ringMagnification, toRing, fromSensorMm - placeMm);

function turnsBack(
  placeAt: (ring: number) => number,
  fromRing: number,
  toRing: number,
  away: number,
): boolean {
  let before = placeAt(fromRing);
  for (let look = 1; look <= LOOKS; look++) {
    const place = placeAt(fromRing + ((toRing - fromRing) * look) / LOOKS);
    if (!((place - before) * away >= 0)) return true;
    before = place;
  }
  return false;
}

/** undefined: at infinity, or nothing is in focus there. */
function markAt({ chain, circleMm, marked }: Focused, ring: number): FocusMark | undefined {
  const trace = traceChain(chain, ring);
  const depth = depthAt(trace, circleMm, marked);
  const { magnification, subjectToSensorMm } = trace;
  if (!depth || magnification === undefined || subjectToSensorMm === undefined) return undefined;
  return {
    fromSensorMm: subjectToSensorMm,
    ringMagnification: ring,
    magnification,
    depthMm: depth.totalMm,
  };
}
