/** What goes wrong in a shot, and when: the margins that the operator has. */
import { derive } from '../../figures/figure.ts';
import { message } from '../../words/message.ts';
import { around, endsOf, type SaidShot, settable, sureTilts } from './said.ts';

export function limitsOf(shot: SaidShot): readonly string[] {
  return [life, tilt, depth, speed, flicker, room].flatMap((limit) => limit(shot) ?? []);
}

type Limit = (shot: SaidShot) => string | null;

/** By the shortest life that is likely: a take that outlasts the film is lost. */
const life: Limit = (shot) => {
  const { figures, say } = shot;
  const { lifeS, shareOfLife: share } = figures;
  const ends = endsOf(shot, (of) => of.lifeS);
  if (!lifeS.known || !ends) return null;
  const bounds = around(
    shot,
    (of) => of.lifeS,
    (value) => say.seconds(value),
  );
  const lasts = message`The film usually lasts ${say.seconds(lifeS.value)}${bounds}`;
  if (!share.known) return `${lasts}.`;
  const spare = ends.low - lifeS.value * share.value;
  const isSure = bounds === '';
  // Nothing is left of the spare time once it is rounded.
  if (say.seconds(Math.abs(spare)) === say.seconds(0))
    return isSure
      ? message`${lasts}. The take ends just as it usually bursts.`
      : message`${lasts}. At its shortest it bursts just as the take ends.`;
  if (spare < 0)
    return isSure
      ? message`${lasts}. The take ends ${say.seconds(-spare)} after it usually bursts.`
      : message`${lasts}. At its shortest it bursts ${say.seconds(-spare)} before the take ends.`;
  return isSure
    ? message`${lasts}. The take ends ${say.seconds(spare)} before it usually bursts.`
    : message`${lasts}. The take ends ${say.seconds(spare)} before it bursts at its shortest.`;
};

/** Inside by both ends: where the tilt is right whatever the bounds are. */
const tilt: Limit = (shot) => {
  const { figures, say } = shot;
  const { leastTiltRad: least, tiltWindow: window } = figures;
  if (window.known && window.value.openRad > 0) {
    const sure = sureTilts(shot);
    return sure
      ? message`Keep the tilt at ${sure.words[0]} to ${sure.words[1]}: less reflects the lens, more runs out of depth of field or light.`
      : message`No tilt is sure: ${say.angle(window.value.leastRad)} to ${say.angle(window.value.greatestRad)} should work, with no margin.`;
  }
  return least.known
    ? message`Below ${say.angle(least.value)} of tilt the lens is reflected.`
    : null;
};

const depth: Limit = (shot) => {
  const { figures } = shot;
  const length = (mm: number): string => settable(mm, shot);
  const { usableDepthMm: there } = figures;
  if (shot.bench.stack) return stackWords(shot);
  const { needed } = figures.depthMm;
  if (!there.known || !needed.known || !Number.isFinite(there.value)) return null;
  const margin = endsOf(shot, ({ usableDepthMm, depthMm }) =>
    derive([usableDepthMm, depthMm.needed], (has, needs) => (has - needs) / 2),
  );
  if (there.value <= needed.value || !margin)
    return message`No margin for focus: ${length(there.value)}${around(shot, (of) => of.usableDepthMm, length)} depth of field, ${length(needed.value)}${around(shot, (of) => of.depthMm.needed, length)} needed.`;
  const allowed =
    margin.low > 0
      ? message`Focus may be off by ${length(toldMargin(margin.low))} either way.`
      : message`Focus may have no margin.`;
  return `${allowed} ${sharpWords(shot)}`;
};

/** Between frames: how far apart they may be at most, by the shallow end of the depth. */
function stackWords(shot: SaidShot): string | null {
  const { say, figures } = shot;
  const { stackStepMm: step } = figures;
  const ends = endsOf(shot, (of) => of.usableDepthMm);
  if (!ends || !step.known) return null;
  return message`Soft bands remain where frames are more than ${say.length(ends.low)} apart; they are ${say.length(step.value)} apart.`;
}

/** To a tenth of a millimetre where that leaves any, on the safe side. */
const toldMargin = (mm: number): number => (mm >= 0.1 ? Math.floor(mm * 10 + 1e-9) / 10 : mm);

/** The depth at its shallow end, which is what can be counted on. */
function sharpWords(shot: SaidShot): string {
  const { say } = shot;
  const length = (mm: number): string => say.length(mm);
  const there = endsOf(shot, (of) => of.usableDepthMm);
  const sharp = endsOf(shot, (of) => of.depthMm.total);
  if (!there) return '';
  const isWidened = sharp !== null && there.low > sharp.low * (1 + 1e-9);
  if (!isWidened) return message`Depth of field is at least ${length(there.low)}.`;
  const words = message`${length(sharp.low)} is sharp by focus; over ${length(there.low)} the blur stays below what diffraction softens anyway.`;
  const { needed } = shot.figures.depthMm;
  return needed.known && needed.value > sharp.low
    ? message`${words} The shot needs ${length(needed.value)}, so its ends are softer.`
    : words;
}

const speed: Limit = ({ figures, say }) => {
  const { subjectSpeedMmPerS: moving, smearPx } = figures;
  if (!moving.known || !smearPx.known || !(smearPx.value > 0)) return null;
  const onePixel = moving.value / smearPx.value;
  return message`Motion faster than ${say.number(onePixel)} mm/s blurs over more than one pixel.`;
};

/** Swinging less than this nobody sees. */
const SEEN_FLICKER = 0.001;

const flicker: Limit = ({ figures, say }) => {
  const { worstFlicker: lamp, shutterSeconds: open } = figures;
  if (!lamp.known || lamp.value.lampHz === 0) return null;
  const { light, lampHz, residual, course } = lamp.value;
  // Of N cycles a sine leaves 1/(πN) at most and a pulse 1/(2N): so many go into an exposure that no
  // shutter near it shows one.
  const least = course === 'sine' ? Math.PI : 2;
  if (open.known && 1 / (least * lampHz * open.value) <= SEEN_FLICKER * (1 + 1e-9)) return null;
  const safe = message`shutter times in whole multiples of ${say.shutter(1 / lampHz)} avoid flicker from \`${light}\``;
  return residual < SEEN_FLICKER
    ? message`Don't change the shutter; ${safe}.`
    : course === 'unknown'
      ? message`\`${light}\` flickers by up to ${say.percent(residual)} at this shutter; ${safe}.`
      : message`\`${light}\` flickers by ${say.percent(residual)} at this shutter; ${safe}.`;
};

/** Nearer than this a light is in the way of hands and lens alike, mm. */
const NEAR_MM = 100;

const room: Limit = (shot) => {
  const { lightInTheWay: light } = shot.figures;
  if (!light.known || light.value.clearanceMm > NEAR_MM) return null;
  return message`Only ${settable(Math.max(0, light.value.clearanceMm), shot, Math.floor)} between \`${light.value.light}\` and the lens.`;
};
