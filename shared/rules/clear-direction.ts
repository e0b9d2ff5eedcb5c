/** Finds a direction in which a mirror shows a light and the light stays out of the picture. */
import { type Bench, type LightInUse, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { sourceOf } from '../figures/light-source.ts';
import type { NeededLight } from '../mirror/patch.ts';
import { ifKnown } from '../plan/field.ts';
import type { PlanEdit, PlanFix } from '../plan/problem.ts';
import type { Rad } from '../quantity/brands.ts';
import { signed } from '../say/say.ts';
import { message } from '../words/message.ts';
import { unevenPrice } from './uneven-price.ts';

/** Share of the frame that a light may hide unseen: the frame's very edge. */
export const HIDDEN = 0.005;

interface Direction {
  readonly upRad: number;
  readonly acrossRad: number;
}

/** Share of the light's spare size that may be used to move it aside. */
const SHARES = [0, 0.5, 0.8, 0.95];

/**
 * The direction nearest to the middle of what the mirror shows in which the light fills the frame but
 * for `mayStayBlack` of it, and stands neither before the lens nor in it. A light larger than it has
 * to be may stand aside from the lens by its spare size.
 *
 * @returns undefined where there is none at the light's distance
 */
export function clearDirection(
  bench: Bench,
  light: string,
  needed: NeededLight,
  mayStayBlack: number,
): Direction | undefined {
  const inUse = bench.lights.known && bench.lights.value.find(({ name }) => name === light);
  const source = inUse ? sourceOf(inUse) : undefined;
  if (!inUse || !source?.known) return undefined;
  const { face, distanceMm } = source.value;
  const [width, height] =
    face.shape === 'round' ? [face.diameterMm, face.diameterMm] : [face.widthMm, face.heightMm];
  const isUp = Math.abs(needed.upRad) >= Math.abs(needed.acrossRad);
  const spareMm = isUp ? height - needed.heightMm : width - needed.widthMm;
  return SHARES.map((share): Direction => {
    const aside = Math.atan((share * Math.max(0, spareMm)) / 2 / distanceMm);
    return isUp
      ? { ...needed, upRad: needed.upRad + Math.sign(needed.upRad) * aside }
      : { ...needed, acrossRad: needed.acrossRad + Math.sign(needed.acrossRad) * aside };
  }).find((direction) => serves(moved(bench, inUse, direction), mayStayBlack));
}

/** A light is moved aside in steps of this size, and no further than this in all. */
const STEP_RAD = Math.PI / 180;
const MOST_STEPS = 60;

/**
 * The direction nearest to a light's own, further out on the side where it stands, in which it is
 * neither before the lens nor in it; a mirror it fills now it still fills but for `mayStayBlack`.
 *
 * @returns undefined where there is none at the light's distance
 */
export function directionAside(
  bench: Bench,
  light: string,
  mayStayBlack: number,
): Direction | undefined {
  const inUse = bench.lights.known && bench.lights.value.find(({ name }) => name === light);
  const at = inUse ? ifKnown(inUse.fields.at) : undefined;
  if (!inUse || !at) return undefined;
  const now = { upRad: ifKnown(at.elevation) ?? 0, acrossRad: ifKnown(at.azimuth) ?? 0 };
  const isUp = Math.abs(now.upRad) >= Math.abs(now.acrossRad);
  const step = STEP_RAD * (isUp ? sideOf(now.upRad) : sideOf(now.acrossRad));
  const { darkFrame } = figuresOf(bench);
  const black = Math.max(mayStayBlack, darkFrame.known ? darkFrame.value.share : 1);
  for (let count = 1; count <= MOST_STEPS; count++) {
    const direction = isUp
      ? { ...now, upRad: wholeDegrees(now.upRad + count * step) }
      : { ...now, acrossRad: wholeDegrees(now.acrossRad + count * step) };
    const there = moved(bench, inUse, direction);
    if (darkFrame.known ? serves(there, black) : isClear(there)) return direction;
  }
  return undefined;
}

/** The side of the lens axis on which a light is; above, if it is on the axis. */
const sideOf = (radians: number): number => (radians < 0 ? -1 : 1);

const wholeDegrees = (radians: number): number => Math.round(radians / STEP_RAD) * STEP_RAD;

/** The light at another position, in this shot only. */
export function standAt(bench: Bench, light: string, { upRad, acrossRad }: Direction): PlanFix {
  const degrees = (radians: number) => Number(((radians * 180) / Math.PI).toFixed(1));
  const [up, across] = [degrees(upRad), degrees(acrossRad)];
  const [upward, aside] = [up, across].map((angle) => signed(String(angle)));
  const title = message`Move ${light} for this shot to elevation ${upward!}°, azimuth ${aside!}°`;
  const inUse = bench.lights.known && bench.lights.value.find(({ name }) => name === light);
  const sideEffects = inUse ? unevenPrice(bench, moved(bench, inUse, { upRad, acrossRad })) : {};
  const { relight } = bench.fields;
  if (relight.state === 'missing') {
    const text = `${light}:\n  at: { elevation: ${up} deg, azimuth: ${across} deg }`;
    return { title, ...sideEffects, edits: [{ op: 'set', at: relight.at, text }] };
  }
  const place = (key: string, text: string): PlanEdit => ({
    op: 'set',
    at: { ...bench.at, path: ['relight', light, 'at', key] },
    text,
  });
  return {
    title,
    ...sideEffects,
    edits: [place('elevation', `${up} deg`), place('azimuth', `${across} deg`)],
  };
}

function serves(bench: Bench, mayStayBlack: number): boolean {
  const { darkFrame } = figuresOf(bench);
  return darkFrame.known && darkFrame.value.share <= mayStayBlack && isClear(bench);
}

function isClear(bench: Bench): boolean {
  const { lightInTheWay } = figuresOf(bench);
  if (!lightInTheWay.known) return true;
  return lightInTheWay.value.hiddenShare <= HIDDEN && lightInTheWay.value.clearanceMm > 0;
}

/** The bench with one of its lights in another direction, as far away as before. */
function moved(bench: Bench, light: LightInUse, { upRad, acrossRad }: Direction): Bench {
  const { at } = light.fields;
  if (at.state !== 'known' || !bench.lights.known) return bench;
  const known = (value: number) => ({
    state: 'known' as const,
    value: value as Rad,
    at: at.at,
  });
  const placement = { ...at.value, elevation: known(upRad), azimuth: known(acrossRad) };
  const there = { ...light, fields: { ...light.fields, at: { ...at, value: placement } } };
  const lights = bench.lights.value.map((each) => (each === light ? there : each));
  return substitute(bench, { lights: { ...bench.lights, value: lights } });
}
