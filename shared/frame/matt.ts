/** The light that a matt subject scatters over the frame: as even or uneven as its lights make it. */
import { illuminancePerLuminance } from '../exposure/rectangle-source.ts';
import { filmPoint } from '../mirror/film-surface.ts';
import type { Vec } from '../mirror/vector.ts';
import type { Body, Camera, LitBy } from './scene.ts';

/** Places across and down at which the light is calculated; between them it runs straight. */
const ACROSS = 17;
const DOWN = 13;

/** Linear light over the frame, by place from −1 to 1 across and up. */
interface Scattered {
  at(across: number, up: number): readonly [number, number, number];
}

export function scatteredOver(camera: Camera, body: Body, lit: readonly LitBy[]): Scattered {
  if (lit.length === 0 || body.shape !== 'flat') return { at: () => NONE };
  const { surface } = body;
  const pupil: Vec = [0, 0, camera.pupilAtMm];
  const middles = lit.map(({ outline }) =>
    outline ? illuminancePerLuminance(outline, surface.normal) : 1,
  );
  const grid = new Float64Array(ACROSS * DOWN * 3);
  for (let row = 0; row < DOWN; row += 1)
    for (let column = 0; column < ACROSS; column += 1) {
      const x = (column / (ACROSS - 1) - 0.5) * camera.widthMm;
      const y = (row / (DOWN - 1) - 0.5) * camera.heightMm;
      const place = filmPoint(surface, [x, y, camera.focusAtMm], pupil)?.at;
      if (!place) continue;
      lit.forEach(({ colour, outline }, i) => {
        const given = outline
          ? illuminancePerLuminance(
              outline.map((p): Vec => [p[0] - place[0], p[1] - place[1], p[2] - place[2]]),
              surface.normal,
            ) / middles[i]!
          : 1;
        for (let c = 0; c < 3; c += 1) grid[(row * ACROSS + column) * 3 + c]! += given * colour[c]!;
      });
    }
  const out: [number, number, number] = [0, 0, 0];
  return {
    at(across, up) {
      const x = ((across + 1) / 2) * (ACROSS - 1);
      const y = ((up + 1) / 2) * (DOWN - 1);
      const column = Math.max(0, Math.min(ACROSS - 2, Math.floor(x)));
      const row = Math.max(0, Math.min(DOWN - 2, Math.floor(y)));
      const [a, b] = [x - column, y - row];
      for (let c = 0; c < 3; c += 1) {
        const from = (row * ACROSS + column) * 3 + c;
        const below = grid[from]! * (1 - a) + grid[from + 3]! * a;
        const above = grid[from + ACROSS * 3]! * (1 - a) + grid[from + ACROSS * 3 + 3]! * a;
        out[c] = below * (1 - b) + above * b;
      }
      return out;
    },
  };
}

const NONE = [0, 0, 0] as const;
