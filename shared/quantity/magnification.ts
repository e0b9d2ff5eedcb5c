/** Magnification: the image's size on the sensor over the subject's. `1:2` is 0.5x. */
import { later } from '../words/message.ts';
import type { Magnification } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, POSITIVE, readNumber, shortest } from './number.ts';

export const magnification: QuantityKind<Magnification> = compoundKind<Magnification>({
  id: 'magnification',
  title: later`magnification`,
  units: ['x'],
  unitSpellings: ['x', 'X', '\u00d7'],
  examples: ['0.5x', '1.5x'],
  body: `(${POSITIVE})${GAP}(?:x|X|\u00d7)|(${POSITIVE})${GAP}:${GAP}(${POSITIVE})`,
  read([times, image = '', subject = '']) {
    if (times !== undefined) {
      return { value: readNumber(times) as Magnification, usual: `${times}x` };
    }
    const value = (readNumber(image) / readNumber(subject)) as Magnification;
    return { value, usual: `${usualRatio(value)}x` };
  },
  likelyUnits: () => ['x'],
  print: (value) => `${shortest(value)}x`,
});

/** A ratio such as 1:3 has no end in decimals: five digits are more than any ring is marked to. */
const usualRatio = (value: number): string => {
  const exact = shortest(value);
  return exact.length <= 8 ? exact : shortest(Number(value.toPrecision(5)));
};
