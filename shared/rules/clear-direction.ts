/** Where a light may stand that a mirror is to show, without standing in the picture itself. */
import { type Bench, type LightInUse, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { sourceOf } from '../figures/light-source.ts';
import type { NeededLight } from '../mirror/patch.ts';
import type { Rad } from '../quantity/brands.ts';
import { HIDDEN } from './no-room.ts';

export interface Direction {
  readonly upRad: number;
  readonly acrossRad: number;
}

/** How much of what the light is larger than the patch is given to standing aside. */
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

function serves(bench: Bench, mayStayBlack: number): boolean {
  const { darkFrame, lightInTheWay } = figuresOf(bench);
  if (!darkFrame.known || darkFrame.value.share > mayStayBlack) return false;
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
  const placement = { ...at.value, up: known(upRad), across: known(acrossRad) };
  const there = { ...light, fields: { ...light.fields, at: { ...at, value: placement } } };
  const lights = bench.lights.value.map((each) => (each === light ? there : each));
  return substitute(bench, { lights: { ...bench.lights, value: lights } });
}
