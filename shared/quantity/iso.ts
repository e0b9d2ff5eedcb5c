/** Arithmetic ISO speed: a plain number, or automatic. */
import { later } from '../words/message.ts';
import type { Iso } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, WHOLE } from './number.ts';
import { wordOr } from './word-or.ts';

export const iso: QuantityKind<Iso> = compoundKind<Iso>({
  id: 'iso',
  title: later`ISO speed`,
  units: [],
  examples: ['1600', '400'],
  bare: 'integer',
  body: `(?:(?:ISO|iso|Iso)${GAP})?(${WHOLE})`,
  read: ([number = '']) => ({ value: Number(number) as Iso, usual: number }),
  likelyUnits: () => [],
  repairs: (text) => [text.replace(/[^0-9.]/g, '').replace(/\.0*$/, '')],
  print: (value) => String(Math.round(value)),
});

export const isoOrAuto: QuantityKind<Iso | 'auto'> = wordOr(
  {
    id: 'iso-or-auto',
    title: later`ISO speed or auto`,
    words: { auto: ['AUTO', 'automatic'] },
    examples: ['1600', 'auto'],
  },
  iso,
);
