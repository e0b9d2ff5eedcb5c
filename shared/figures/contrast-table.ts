/** Contrast in the middle and at the ends of the depth needed, over the apertures of the lens. */
import { contrastOverDepth, type DepthContrast } from '../optics/defocus-contrast.ts';
import { nyquistPerMm } from '../optics/diffraction.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, notKnown } from './figure.ts';
import type { ShotFigures } from './shot-figures.ts';

interface ContrastAt extends DepthContrast {
  readonly marked: number;
}

/** Full stops as they are engraved; common practice. */
const FULL_STOPS: ReadonlySet<number> = new Set([
  1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64,
]);

/**
 * At half of the coarser pixel's Nyquist frequency, for the full stops on the lens and the aperture
 * that is set, widest first.
 */
export function contrastTable(bench: Bench, figures: ShotFigures): Figure<readonly ContrastAt[]> {
  const { pixelUm, magnification, effectiveFNumber, depthMm } = figures;
  return derive(
    [depthMm.needed, magnification, pixelUm, effectiveFNumber, bench.marked],
    (needed, m, pixel, effective, set) => {
      if (!(needed > 0)) return notKnown(message`no depth is needed`);
      const stops = bench.marksOnLens.filter((mark) => FULL_STOPS.has(mark));
      const marks = [...new Set([...stops, set])].sort((a, b) => a - b);
      const pattern = {
        depthMm: needed,
        magnification: m,
        cyclesPerMm: nyquistPerMm(pixel) / 2,
      };
      const ratio = effective / set;
      return marks.map((marked) => ({
        marked,
        ...contrastOverDepth(pattern, [marked * ratio])[0]!,
      }));
    },
  );
}
