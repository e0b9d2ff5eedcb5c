/**
 * Numbers as plans write them: decimals, usually plain. The value counts: further decimals, an exponent
 * and a plus are read too, up to what is a number of something: below 1e9, and zero or at least 1e-9.
 * No leading zero and no thousands mark: 0800 is no 800, and nothing overflows.
 */

/** Few enough that the same number written out plainly has no more than `DECIMALS` takes. */
const FEW_DECIMALS = '(?:\\.[0-9]{1,20})?';
/** Behind a plain number. */
const DECIMALS = '(?:\\.[0-9]{1,40})?';
/** The first nine decimals hold something, or nothing does. */
const NOT_TINY = '(?!0\\.0{9}[0-9]{0,31}[1-9])';

/** Source of a number with an exponent, below 10^digits and zero or at least 1e-9. */
function withExponent(digits: number): string {
  const shifted = Array.from(
    { length: digits - 1 },
    (_, at) => `[1-9][0-9]{0,${digits - 2 - at}}${FEW_DECIMALS}[eE][+]?0{0,2}${at + 1}`,
  );
  // "180e-1": as far as that is no longer than any number's whole part.
  const longer = Array.from(
    { length: Math.min(3, 9 - digits) },
    (_, at) => `[1-9][0-9]{0,${digits + at}}${FEW_DECIMALS}[eE]-0{0,2}${at + 1}`,
  );
  return [
    `[1-9][0-9]{0,${digits - 1}}${FEW_DECIMALS}[eE](?:[+]?0{1,3}|-0{0,2}[0-9])`,
    ...shifted,
    ...longer,
    `0\\.[0-9]{1,20}[eE][+]?0{0,2}[0-${digits}]`,
    '0\\.[0-9]{0,4}[1-9][0-9]{0,15}[eE]-0{0,2}[1-4]',
    '0(?:\\.0{1,20})?[eE][-+]?[0-9]{1,3}',
  ].join('|');
}

/** Source of a number without a sign whose whole part is one of `whole`, or with an exponent. */
export const numberBelow = (digits: number, whole: string, ...others: readonly string[]): string =>
  `${NOT_TINY}(?:${[`(?:${whole})${DECIMALS}`, ...others, withExponent(digits)].join('|')})`;

/** What stands before a number that isn't zero. */
export const NOT_ZERO = '(?=[1-9]|0\\.[0-9]{0,8}[1-9])';

/** The same source for texts without an exponent: all but a few, and much sooner compiled and tried. */
export const withoutExponents = (source: string): string =>
  [withExponent(9), withExponent(2), WHOLE_SHIFTED.join('|')].reduce(
    (shorter, exponents) => shorter.replaceAll(`|${exponents}`, ''),
    source,
  );

const UNSIGNED = numberBelow(9, '0|[1-9][0-9]{0,8}');

/** Regular-expression source of a number that isn't negative; no capture groups. */
export const NUMBER = `[+]?${UNSIGNED}`;
/** As NUMBER, but not zero. */
export const POSITIVE = `[+]?${NOT_ZERO}${UNSIGNED}`;
/** As NUMBER, with a sign allowed. */
export const SIGNED = `[-\u2212+]?${UNSIGNED}`;

const WHOLE_SHIFTED = Array.from({ length: 8 }, (_, at) => {
  const exponent = at + 1;
  const decimals = `(?:\\.[0-9]{1,${exponent}}0{0,20})?`;
  return `[1-9][0-9]{0,${8 - exponent}}${decimals}[eE][+]?0{0,2}${exponent}`;
});

/** A whole number above zero. No decimals, not even zeros: 1.000 may be a thousand. */
export const WHOLE = `[+]?(?:[1-9][0-9]{0,8}|${WHOLE_SHIFTED.join('|')})`;
/**
 * Blanks that people and word processors put between a number and its unit. Few, since two gaps
 * that meet would otherwise try every way to share a long run of blanks between them.
 */
export const GAP = '[ \\u00a0\\u2009\\u202f]{0,4}';

export const anchored = (source: string): string => `^(?:${source})$`;

const WRITTEN = /^([-\u2212+]?)([0-9]+)(?:\.([0-9]+))?(?:[eE]([-+]?[0-9]+))?$/;
/** Decimals that a plan usually has no more of. */
const USUAL_DECIMALS = 9;

/** The same number without exponent, plus and zeros that say nothing; other texts as they are. */
export function plainNumber(text: string): string {
  const parts = WRITTEN.exec(text);
  if (!parts) return text;
  const [, sign = '', whole = '', decimals = '', exponent] = parts;
  if (sign !== '+' && exponent === undefined && decimals.length <= USUAL_DECIMALS) return text;
  const minus = sign === '+' ? '' : sign;
  if (exponent === undefined && decimals.length <= USUAL_DECIMALS)
    return decimals === '' ? whole : `${whole}.${decimals}`;
  const shift = Number(exponent ?? '0');
  const digits = `${'0'.repeat(Math.max(0, -shift))}${whole}${decimals}${'0'.repeat(Math.max(0, shift - decimals.length))}`;
  const point = digits.length - Math.max(0, decimals.length - shift);
  const front = digits.slice(0, point).replace(/^0+(?=.)/, '') || '0';
  const back = digits.slice(point).replace(/0+$/, '');
  return `${minus}${front}${back === '' ? '' : `.${back}`}`;
}

/** The value of a text that matches SIGNED. */
export const readNumber = (text: string): number => Number(text.replace('\u2212', '-'));

/** A signed number as plans usually write it: hyphen-minus, no plus. */
export const usualNumber = (text: string): string => text.replace('\u2212', '-').replace('+', '');

/** Shortest plain decimal, free of floating-point noise (12 significant digits, 9 decimals). */
export function shortest(value: number): string {
  const text = Number(value.toPrecision(12)).toFixed(9);
  return text.replace(/\.?0+$/, '').replace(/^-0$/, '0');
}

/** A run that looks as if a number was meant. */
const NUMBER_LIKE =
  /(?:[0-9]+(?:[.,_'\u2019][0-9]+)*[.,]?|[.,][0-9]+)(?:[eE][-+]?[0-9]+(?![0-9A-Za-z]))?/g;

export interface NumberRepair {
  readonly code: 'decimal-comma' | 'not-a-number' | undefined;
  /** The first number-like part that isn't a number. */
  readonly detail: string | undefined;
  /** The text with every number made one, best guess first; the text itself if all are. */
  readonly texts: readonly string[];
}

const PLAIN = new RegExp(`^(?:${NUMBER})$`);

/** What each part that should have been a number may have meant. */
export function repairNumbers(text: string): NumberRepair {
  let code: NumberRepair['code'];
  let detail: string | undefined;
  const repairedBy = (second: boolean): string =>
    text.replace(NUMBER_LIKE, (part) => {
      if (PLAIN.test(part)) return part;
      const meant = meanings(part);
      code ??= meant.code;
      detail ??= part;
      return (second ? meant.texts[1] : undefined) ?? meant.texts[0] ?? part;
    });
  const texts = [...new Set([repairedBy(false), repairedBy(true)])];
  return { code, detail, texts };
}

function meanings(part: string): { code: NumberRepair['code']; texts: string[] } {
  const plain = (value: string): string => {
    const trimmed = value.replace(/^0+(?=[0-9])/, '').replace(/\.$/, '');
    return trimmed.startsWith('.') ? `0${trimmed}` : trimmed;
  };
  if (/^[0-9]+,[0-9]+$/.test(part)) {
    const point = plain(part.replace(',', '.'));
    // Three digits behind the comma may be a thousands mark: then the comma decides nothing.
    return /^[1-9][0-9]{0,2},[0-9]{3}$/.test(part)
      ? { code: 'not-a-number', texts: [part.replace(',', ''), point] }
      : { code: 'decimal-comma', texts: [point] };
  }
  if (/[eE]/.test(part)) {
    const value = Number(part.replace(',', '.'));
    const fits =
      Number.isFinite(value) && Math.abs(value) < 1e9 && Number(shortest(value)) === value;
    return { code: 'not-a-number', texts: fits ? [shortest(value)] : [] };
  }
  // Points for the thousands and a comma for the decimals, as much of the world writes: 1.000,5.
  if (/^[1-9][0-9]{0,2}(?:\.[0-9]{3})+,[0-9]+$/.test(part))
    return { code: 'not-a-number', texts: [plain(part.replaceAll('.', '').replace(',', '.'))] };
  // 1.5,3: which of them parts the decimals can't be told.
  if (/\.[0-9]*,/.test(part)) return { code: 'not-a-number', texts: [] };
  const marks = part.match(/[,_'\u2019]/g)?.length ?? 0;
  const joined = part.replace(/[,_'\u2019]/g, '');
  if (marks > 0) return { code: 'not-a-number', texts: [plain(joined)] };
  const points = joined.split('.').length - 1;
  if (points > 1) return { code: 'not-a-number', texts: [plain(joined.replaceAll('.', ''))] };
  const meant = plain(joined);
  return { code: PLAIN.test(meant) && meant !== part ? 'not-a-number' : undefined, texts: [meant] };
}
