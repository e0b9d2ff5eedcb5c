/** What goes wrong in a shot, and when: the margins that the operator has. */
import { message } from '../../words/message.ts';
import { around, type SaidShot } from './said.ts';

export function limitsOf(shot: SaidShot): readonly string[] {
  return [life, tilt, depth, speed, flicker, room].flatMap((limit) => limit(shot) ?? []);
}

type Limit = (shot: SaidShot) => string | null;

const life: Limit = (shot) => {
  const { figures, say } = shot;
  const seconds = (value: number): string => say.seconds(value);
  const { lifeS, shareOfLife: share } = figures;
  if (!lifeS.known) return null;
  const bounds = around(shot, (of) => of.lifeS, seconds);
  const gone = message`The film lasts ${say.seconds(lifeS.value)}${bounds}`;
  if (!share.known) return `${gone}.`;
  const spare = lifeS.value * (1 - share.value);
  const rest =
    spare >= 0 ? message`${say.seconds(spare)} to spare` : message`${say.seconds(-spare)} too long`;
  return message`${gone}; wait and take need ${say.seconds(lifeS.value * share.value)}, ${rest}.`;
};

const tilt: Limit = ({ figures, say }) => {
  const { leastTiltRad: least, tiltWindow: window } = figures;
  if (window.known && window.value.openRad > 0) {
    const { leastRad, greatestRad } = window.value;
    return message`Keep the tilt above ${say.angle(leastRad)} (lens reflected) and below ${say.angle(greatestRad)} (depth of field or light runs out).`;
  }
  return least.known
    ? message`Below ${say.angle(least.value)} of tilt the lens is reflected.`
    : null;
};

const depth: Limit = (shot) => {
  const { figures, say } = shot;
  const length = (mm: number): string => say.length(mm);
  const { usableDepthMm: there } = figures;
  const { needed } = figures.depthMm;
  if (!there.known || !needed.known || !Number.isFinite(there.value)) return null;
  const margin = (there.value - needed.value) / 2;
  return margin > 0
    ? message`Focus may be off by ${length(margin)} either way.${depthWords(shot)}`
    : message`No margin for focus: ${length(there.value)}${around(shot, (of) => of.usableDepthMm, length)} depth of field, ${length(needed.value)}${around(shot, (of) => of.depthMm.needed, length)} needed.`;
};

const speed: Limit = ({ figures, say }) => {
  const { subjectSpeedMmPerS: moving, smearPx } = figures;
  if (!moving.known || !smearPx.known || !(smearPx.value > 0)) return null;
  const onePixel = moving.value / smearPx.value;
  return message`Motion faster than ${say.number(onePixel)} mm/s blurs over more than one pixel.`;
};

/** What the margin is taken from, where it is not known exactly. */
function depthWords(shot: SaidShot): string {
  const { figures, say } = shot;
  const { usableDepthMm: there } = figures;
  const length = (mm: number): string => say.length(mm);
  const bounds = around(shot, (of) => of.usableDepthMm, length);
  return there.known && bounds !== ''
    ? message` Depth of field is ${length(there.value)}${bounds}.`
    : '';
}

/** Swinging less than this nobody sees. */
const SEEN_FLICKER = 0.001;

const flicker: Limit = ({ figures, say }) => {
  const { worstFlicker: lamp, shutterSeconds: open } = figures;
  if (!lamp.known || lamp.value.lampHz === 0) return null;
  const { light, lampHz, residual, course } = lamp.value;
  // Of N cycles a sine leaves 1/(πN) at most and a pulse 1/(2N): so many go into an exposure that no
  // shutter near it shows one.
  const least = course === 'sine' ? Math.PI : 2;
  if (open.known && 1 / (least * lampHz * open.value) < SEEN_FLICKER) return null;
  const safe = message`shutter times in whole multiples of ${say.shutter(1 / lampHz)} avoid flicker from ${light}`;
  return residual < SEEN_FLICKER
    ? message`Don't change the shutter; ${safe}.`
    : course === 'unknown'
      ? message`${light} flickers by up to ${say.percent(residual)} at this shutter; ${safe}.`
      : message`${light} flickers by ${say.percent(residual)} at this shutter; ${safe}.`;
};

/** Nearer than this a light is in the way of hands and lens alike, mm. */
const NEAR_MM = 100;

const room: Limit = ({ figures, say }) => {
  const { lightInTheWay: light } = figures;
  if (!light.known || light.value.clearanceMm > NEAR_MM) return null;
  return message`Only ${say.length(Math.max(0, light.value.clearanceMm))} between ${light.value.light} and the lens.`;
};
