/**
 * The size of a sensor, or the usual name of its format. A name is taken for a size only where every
 * maker's sensor of that name has it to about 1 %; of other names the usual sizes are offered. Names
 * and sizes: common practice, from memory, but for four-thirds, whose standard gives 17.3 x 13 mm.
 */
import { later } from '../words/message.ts';
import type { QuantityKind } from './kind.ts';
import { size } from './lengths-and-mass.ts';

type Size = typeof size extends QuantityKind<infer T> ? T : never;

/** Names as they are compared: small letters and digits. The first size is the most usual one. */
const FORMATS: readonly {
  readonly names: readonly string[];
  readonly sizes: readonly string[];
}[] = [
  {
    names: ['fullframe', '35mmfullframe', 'fullframe35mm', 'ff'],
    sizes: ['36 x 24 mm'],
  },
  {
    names: ['fourthirds', 'microfourthirds', 'mft', 'm43', 'm4/3', '4/3', '4/3"', '4/3inch'],
    sizes: ['17.3 x 13 mm'],
  },
  {
    names: ['oneinch', '1"', '1inch', '1in', '1.0"', '1inchtype', '1"type'],
    sizes: ['13.2 x 8.8 mm'],
  },
  { names: ['mediumformat44', '44x33', '44x33mediumformat'], sizes: ['43.8 x 32.9 mm'] },
  { names: ['mediumformat54', '54x40', '54x40mediumformat'], sizes: ['53.4 x 40 mm'] },
  { names: ['2/3"', '2/3inch', '2/3'], sizes: ['8.8 x 6.6 mm'] },
  { names: ['apsc'], sizes: ['23.5 x 15.6 mm', '22.3 x 14.9 mm'] },
  { names: ['apsh'], sizes: ['27.9 x 18.6 mm', '28.7 x 19.1 mm'] },
  { names: ['super35', 's35', 'super35mm'], sizes: ['24.9 x 18.7 mm', '24.6 x 13.8 mm'] },
];

/** Spellings that count as the size; each is of a name that has one size. */
const ACCEPTED = [
  'full-frame',
  'Full-frame',
  'full frame',
  'Full frame',
  'four-thirds',
  'Four Thirds',
  'micro four thirds',
  'Micro Four Thirds',
  'one-inch',
  'medium-format-44',
  'medium-format-54',
];

/** The usual sizes of the format of that name; undefined: it is no name of a format. */
function formatSizes(text: string): readonly string[] | undefined {
  if (text.length > 40) return undefined;
  const name = text
    .toLowerCase()
    .replace(/[\u201c\u201d\u2033]/g, '"')
    .replace(/\u00d7/g, 'x')
    .replace(/[\s_-]+|sensor|format$/g, '');
  return FORMATS.find(({ names }) => names.includes(name))?.sizes;
}

const sizeOf = (text: string): Size => {
  const parsed = size.parse(formatSizes(text)![0]!);
  if (!parsed.ok) throw new Error(`the size of ${text} can't be read`);
  return parsed.value;
};

const accepted = new Map(ACCEPTED.map((name) => [name, sizeOf(name)]));

export const sensorSize: QuantityKind<Size> = {
  ...size,
  id: 'sensor-size',
  title: later`size of a sensor`,
  pattern: `^(?:${ACCEPTED.join('|')}|${size.pattern.slice(1, -1)})$`,
  examples: ['36 x 24 mm', '23.5 x 15.6 mm'],
  parse(text) {
    const named = accepted.get(text);
    if (named) return { ok: true, value: named, usual: size.print(named) };
    const parsed = size.parse(text);
    if (parsed.ok) return parsed;
    const sizes = formatSizes(text);
    if (sizes)
      return {
        ok: false,
        code: 'form',
        likely: sizes,
        detail: sizes.length > 1 ? 'differs' : 'named',
      };
    // No sensor is measured in anything else.
    const inMm = parsed.likely.filter((likely) => likely.endsWith(' mm'));
    return inMm.length > 0 ? { ...parsed, likely: inMm } : parsed;
  },
};
