/** Where the focus ring stands: an end of its travel, or the distance it is set to. */
import { later } from '../words/message.ts';
import type { Mm } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { length } from './length.ts';
import { wordOr } from './word-or.ts';

export const ring: QuantityKind<Mm | 'closest' | 'infinity'> = wordOr(
  {
    id: 'ring',
    title: later`setting of the focus ring`,
    words: { closest: ['nearest'], infinity: ['\u221e', 'endless'] },
    examples: ['closest', 'infinity', '0.85 m'],
  },
  length,
);
