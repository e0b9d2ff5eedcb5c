/**
 * The CIE 1931 2° colour matching functions, as sums of lobes.
 *
 * Source: C. Wyman, P.-P. Sloan and P. Shirley, Simple Analytic Approximations to the CIE XYZ
 * Color Matching Functions, Journal of Computer Graphics Techniques 2(2), 2013, the multi-lobe
 * fit. A lobe is a Gaussian with a slope of its own on each side. Single wavelengths are off by up
 * to 2 % of the peak; colours of films, which mix many, by less than 1 %.
 */
export interface Tristimulus {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Height, centre in nm, 1/width below and above it in 1/nm. */
type Lobe = readonly [height: number, centre: number, below: number, above: number];

const X: readonly Lobe[] = [
  [0.362, 442.0, 0.0624, 0.0374],
  [1.056, 599.8, 0.0264, 0.0323],
  [-0.065, 501.1, 0.049, 0.0382],
];
const Y: readonly Lobe[] = [
  [0.821, 568.8, 0.0213, 0.0247],
  [0.286, 530.9, 0.0613, 0.0322],
];
const Z: readonly Lobe[] = [
  [1.217, 437.0, 0.0845, 0.0278],
  [0.681, 459.0, 0.0385, 0.0725],
];

const sum = (lobes: readonly Lobe[], wavelengthNm: number): number =>
  lobes.reduce((total, [height, centre, below, above]) => {
    const off = (wavelengthNm - centre) * (wavelengthNm < centre ? below : above);
    return total + height * Math.exp(-0.5 * off * off);
  }, 0);

/** x̄, ȳ, z̄ at a wavelength in nm; fades to 0 outside the visible. */
export const colourMatching = (wavelengthNm: number): Tristimulus => ({
  x: sum(X, wavelengthNm),
  y: sum(Y, wavelengthNm),
  z: sum(Z, wavelengthNm),
});
