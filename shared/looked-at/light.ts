/** From codes to light, by ITU-R BT.709-6: table 1 (1.2), and its coefficients of brightness. */

const BLACK = 16;
export const WHITE = 235;
export const LOWEST = BLACK;

/** Light of a signal of 0 to 1, and above: 1 is reference white. */
function lightOf(signal: number): number {
  if (signal <= 0) return 0;
  return signal < 0.081 ? signal / 4.5 : ((signal + 0.099) / 1.099) ** (1 / 0.45);
}

/** By code. */
export const LIGHT: Float64Array = Float64Array.from({ length: 256 }, (_, code) =>
  lightOf((code - BLACK) / (WHITE - BLACK)),
);

/** Light of the three colours, from mean codes of brightness and the two differences. */
export function colourLight(
  luma: number,
  blue: number,
  red: number,
): readonly [number, number, number] {
  const y = (luma - BLACK) / (WHITE - BLACK);
  const [b, r] = [(blue - 128) / 224, (red - 128) / 224];
  return [lightOf(y + 1.5748 * r), lightOf(y - 0.1873 * b - 0.4681 * r), lightOf(y + 1.8556 * b)];
}
