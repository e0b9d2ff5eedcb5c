/** A picture's size in pixels, width first: `1920 x 1080`. */
import { later } from '../words/message.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP } from './number.ts';
import { BY } from './size.ts';

export interface Pixels {
  readonly width: number;
  readonly height: number;
}

const SIDE = '[1-9][0-9]{0,5}';
const print = (value: Pixels): string => `${value.width} x ${value.height}`;

export const pixels: QuantityKind<Pixels> = compoundKind<Pixels>({
  id: 'pixels',
  title: later`size in pixels`,
  units: [],
  unitSpellings: [],
  examples: ['1920 x 1080', '3840 x 2160'],
  body: `(${SIDE})${BY}(${SIDE})(?:${GAP}(?:px|pixels))?`,
  read([width, height]) {
    const value = { width: Number(width), height: Number(height) };
    return { value, usual: print(value) };
  },
  likelyUnits: () => [],
  print,
});
