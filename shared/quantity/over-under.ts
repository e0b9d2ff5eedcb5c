/** How far a picture is over- or underexposed: `0.3 stops under`. Inside in stops, over positive. */
import { later } from '../words/message.ts';
import type { Stops } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, NUMBER, readNumber, shortest } from './number.ts';
import { type RoughForm, roughForm } from './rough.ts';

const UNITS = [{ usual: 'stops', one: 'stop', also: ['stop', 'Stops', 'EV', 'ev'] }];
const SPELLINGS = ['stops', ...UNITS[0]!.also];
const SIDES = ['over', 'under'] as const;
type Side = (typeof SIDES)[number];
const SPELLED: Readonly<Record<Side, readonly string[]>> = {
  over: ['over', 'overexposed', 'brighter', 'too bright'],
  under: ['under', 'underexposed', 'darker', 'too dark'],
};
const WORDS = SIDES.flatMap((side) => SPELLED[side]);
/** Source of a pattern for a side, longest spelling first. */
const SIDE = [...WORDS].sort((a, b) => b.length - a.length).join('|');

const sideOf = (word: string): Side => (SPELLED.over.includes(word) ? 'over' : 'under');
const signed = (stops: number, side: Side): Stops => (side === 'over' ? stops : 0 - stops) as Stops;
const written = (stops: string, side: Side): string =>
  `${stops} ${stops === '1' ? 'stop' : 'stops'} ${side}`;

const plain = roughForm<Stops>({ sign: 'any', units: UNITS });
/** Behind the range, the side that both of its ends are on. */
const BEHIND = new RegExp(`^(.*[^ \\u00a0\\u2009\\u202f])${GAP}(${SIDE})$`, 'u');

const rough: RoughForm<Stops> = {
  pattern: `^(?:(?:${plain.pattern.slice(1, -1)})${GAP}(?:${SIDE}))$`,
  examples: ['0.2 to 0.4 stops under'],
  parse(text) {
    const [, inner, word] = BEHIND.exec(text) ?? [];
    if (inner === undefined || word === undefined) return undefined;
    const found = plain.parse(inner);
    if (!found?.ok) return found;
    const side = sideOf(word);
    const ends = [signed(found.range.low, side), signed(found.range.high, side)] as const;
    const usual = `${found.usual ?? inner} ${side}`;
    return {
      ok: true,
      value: signed(found.value, side),
      range: { low: Math.min(...ends) as Stops, high: Math.max(...ends) as Stops },
      ...(usual !== text && { usual }),
    };
  },
  print({ low, high }) {
    const side: Side = high > 0 ? 'over' : 'under';
    return side === 'over'
      ? `${plain.print({ low, high })} over`
      : `${plain.print({ low: signed(high, side), high: signed(low, side) })} under`;
  },
};

/** 0 is neither; it is written `0 stops over`. */
export const overUnder: QuantityKind<Stops> = compoundKind<Stops>({
  id: 'over-under',
  title: later`stops over or under`,
  units: ['stops over', 'stops under'],
  unitSpellings: SPELLINGS.flatMap((unit) => WORDS.map((word) => `${unit} ${word}`)),
  examples: ['0.3 stops under', '1 stop over'],
  body: `(${NUMBER})${GAP}(?:${[...SPELLINGS].sort((a, b) => b.length - a.length).join('|')})${GAP}(${SIDE})`,
  rough,
  read([number = '', word = '']) {
    const side = sideOf(word);
    return { value: signed(readNumber(number), side), usual: written(number, side) };
  },
  print: (value) => written(shortest(Math.abs(value)), value < 0 ? 'under' : 'over'),
});
