/** What people think in: how much of the subject a pixel and the blur cover. */
import type { ShotFigures } from '../figures/shot-figures.ts';
import type { Say } from '../say/say.ts';
import { message } from '../words/message.ts';

/** "1 pixel covers 6.2 µm; sharp is a blur up to 24 µm"; false where nothing near is in focus. */
export function atSubject(
  { pixelUm, circleOfConfusionMm, airyUm, magnification }: ShotFigures,
  say: Say,
): string | false {
  if (!pixelUm.known || !magnification.known || !(magnification.value > 0)) return false;
  const pixel = say.micrometres(pixelUm.value / magnification.value);
  if (!circleOfConfusionMm.known || !airyUm.known) return message`1 pixel covers ${pixel}`;
  const blur = Math.max(1000 * circleOfConfusionMm.value, airyUm.value) / magnification.value;
  return message`1 pixel covers ${pixel}; sharp is a blur up to ${say.micrometres(blur)}`;
}
