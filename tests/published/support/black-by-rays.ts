/** What a light leaves black in a flat film, by rays followed one by one: brute force, apart from the code. */
import type { TiltAxis } from '../../../shared/mirror/film-surface.ts';
import type { FrameView } from '../../../shared/mirror/patch.ts';
import type { Source } from '../../../shared/mirror/source.ts';

/** Share of rays, over frame and pupil, that end outside the light: flat film, law of reflection. */
export function blackByRays(
  view: FrameView,
  tilt: number,
  about: TiltAxis,
  source: Source,
  { rows = 45, overPupil = 30 } = {},
): number {
  const n =
    about === 'level' ? [0, Math.sin(tilt), Math.cos(tilt)] : [Math.sin(tilt), 0, Math.cos(tilt)];
  const [nx, ny, nz] = n as [number, number, number];
  const u = view.pupilDistanceMm;
  const { upRad: up, acrossRad: across, distanceMm: s, face } = source;
  let [black, all] = [0, 0];
  for (let i = 0; i < rows; i += 1)
    for (let j = 0; j < rows; j += 1)
      for (let k = 0; k < overPupil; k += 1) {
        const fx = view.widthMm * ((i + 0.5) / rows - 0.5);
        const fy = view.heightMm * ((j + 0.5) / rows - 0.5);
        // A sunflower spreads points over the disc evenly.
        const radius = (view.pupilMm / 2) * Math.sqrt((k + 0.5) / overPupil);
        const px = radius * Math.cos(k * 2.399963);
        const py = radius * Math.sin(k * 2.399963);
        const back = -(nx * fx + ny * fy);
        const t = back / (back + nz * u);
        const q = [fx * (1 - t), fy * (1 - t), u * t] as const;
        const d = [px - q[0], py - q[1], u - q[2]] as const;
        const twice = 2 * (nx * d[0] + ny * d[1] + nz * d[2]);
        let o = [twice * nx - d[0], twice * ny - d[1], twice * nz - d[2]] as [
          number,
          number,
          number,
        ];
        let at = [...q] as [number, number, number];
        // Turn the scene so that the light stands on the z axis, square to it.
        const unswing = ([x, y, z]: [number, number, number]): [number, number, number] => {
          const x1 = x * Math.cos(across) - z * Math.sin(across);
          const z1 = x * Math.sin(across) + z * Math.cos(across);
          return [x1, y * Math.cos(up) - z1 * Math.sin(up), y * Math.sin(up) + z1 * Math.cos(up)];
        };
        o = unswing(o);
        at = unswing(at);
        const reach = (s - at[2]) / o[2];
        const [hx, hy] = [at[0] + reach * o[0], at[1] + reach * o[1]];
        const lit =
          reach > 0 &&
          (face.shape === 'round'
            ? Math.hypot(hx, hy) <= face.diameterMm / 2
            : Math.abs(hx) <= face.widthMm / 2 && Math.abs(hy) <= face.heightMm / 2);
        all += 1;
        if (!lit) black += 1;
      }
  return black / all;
}
