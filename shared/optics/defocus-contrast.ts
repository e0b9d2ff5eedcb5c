import { diffractionContrast, WAVELENGTH_UM } from './diffraction.ts';

/** A fine pattern as the sensor sees it through a defocused lens. */
interface DefocusedPattern {
  /** v, cycles/mm on the sensor; ≥ 0. */
  readonly cyclesPerMm: number;
  /** N_eff; > 0. */
  readonly effectiveFNumber: number;
  /** b, diameter of the geometric blur on the sensor, mm; ≥ 0. */
  readonly blurMm: number;
}

/**
 * Contrast left by defocus and diffraction together: the optical transfer function of a defocused,
 * otherwise perfect round pupil in incoherent light. Negative: light and dark change places (spurious
 * resolution). 0 at and beyond the cut-off x = v·λ·N_eff = 1; with b = 0 the contrast of diffraction alone.
 *
 * T = (4/π)·∫ √(1 − (ξ + x)²)·cos(α·ξ) dξ over half the overlap of two pupils sheared by 2x, in radii; with
 * w20 = b/(8·N_eff) the phase between them is α·ξ, α = π·v·b. Substituting ξ + x = sin t takes the root's end
 * away: T = (4/π)·∫ cos²t·cos(α·(sin t − x)) dt, t from asin x to π/2, by Gauss and Legendre.
 * As x → 0 it becomes 2·J1(α)/α, the geometric blur disk's own contrast.
 *
 * Source: H. H. Hopkins, The frequency response of a defocused optical system, Proc. Roy. Soc. A 231
 * (1955); P. A. Stokseth, Properties of a defocused optical system, J. Opt. Soc. Am. 59 (1969), whose
 * exact form is this integral.
 */
export function defocusedContrast(pattern: DefocusedPattern): number {
  const { cyclesPerMm, effectiveFNumber, blurMm } = pattern;
  const x = (cyclesPerMm * WAVELENGTH_UM * effectiveFNumber) / 1000;
  if (x >= 1) return 0;
  const alpha = Math.PI * cyclesPerMm * blurMm;
  if (alpha === 0) return diffractionContrast(cyclesPerMm, effectiveFNumber);
  // Past this many turns of phase the contrast is far under 1e-4 whatever the f-number.
  if (alpha > MOST_PHASE) return 0;
  const from = Math.asin(x);
  // One panel of eight points a half turn of phase keeps the error under 1e-12.
  const panels = Math.ceil((alpha * (1 - x)) / Math.PI) + 1;
  const width = (Math.PI / 2 - from) / panels;
  let sum = 0;
  for (let panel = 0; panel < panels; panel++) {
    const middle = from + (panel + 0.5) * width;
    for (const [node, weight] of GAUSS_8) {
      sum += weight * (along(middle - (node * width) / 2) + along(middle + (node * width) / 2));
    }
  }
  return ((4 / Math.PI) * sum * width) / 2;

  function along(t: number): number {
    return Math.cos(t) ** 2 * Math.cos(alpha * (Math.sin(t) - x));
  }
}

const MOST_PHASE = 2000;

/** Nodes and weights of eight-point Gauss-Legendre quadrature (Abramowitz and Stegun, table 25.4). */
const GAUSS_8: readonly (readonly [node: number, weight: number])[] = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
];

/**
 * Geometric blur at both ends of a depth T that is shared by focusing between them, mm on the sensor:
 * T·m²/(2·N_eff). T mm, m magnification. Close-up form: exactly it is that times the distance in focus over
 * the mean distance of both ends, from the pupil. Source: similar triangles at the pupil.
 */
function endBlurMm(depthMm: number, magnification: number, effectiveFNumber: number): number {
  return (depthMm * magnification ** 2) / (2 * effectiveFNumber);
}

/** Contrast at the middle and at the ends of a depth, at one effective f-number. */
export interface DepthContrast {
  readonly effectiveFNumber: number;
  readonly middle: number;
  readonly ends: number;
}

/**
 * Contrast at the middle and at the ends of a depth against effective f-number: where the two curves meet
 * is as narrow as is of any use. Depth T (mm), m magnification, v cycles/mm on the sensor.
 * Source: `defocusedContrast` with the blur of `endBlurMm`.
 */
export function contrastOverDepth(
  { depthMm, magnification, cyclesPerMm }: DepthPattern,
  effectiveFNumbers: readonly number[],
): readonly DepthContrast[] {
  return effectiveFNumbers.map((effectiveFNumber) => ({
    effectiveFNumber,
    middle: diffractionContrast(cyclesPerMm, effectiveFNumber),
    ends: defocusedContrast({
      cyclesPerMm,
      effectiveFNumber,
      blurMm: endBlurMm(depthMm, magnification, effectiveFNumber),
    }),
  }));
}

/** A depth that is wanted sharp and the fineness that it is judged at. */
interface DepthPattern {
  readonly depthMm: number;
  readonly magnification: number;
  readonly cyclesPerMm: number;
}
