/**
 * Numbers as plans write them: plain decimals. No exponent, no leading zero, no thousands mark,
 * at most nine digits on either side of the point, so that nothing overflows and 0800 is no 800.
 */

/** Regular-expression source of a number that isn't negative; no capture groups. */
export const NUMBER = '(?:0|[1-9][0-9]{0,8})(?:\\.[0-9]{1,9})?';
/** As NUMBER, but not zero. */
export const POSITIVE = `(?=[0-9.]*[1-9])${NUMBER}`;
/** As NUMBER, with a sign allowed. */
export const SIGNED = `[-\u2212+]?${NUMBER}`;
/** A whole number above zero. */
export const WHOLE = '[1-9][0-9]{0,8}';
/**
 * Blanks that people and word processors put between a number and its unit. Few, since two gaps
 * that meet would otherwise try every way to share a long run of blanks between them.
 */
export const GAP = '[ \\u00a0\\u2009\\u202f]{0,4}';

export const anchored = (source: string): string => `^(?:${source})$`;

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

const PLAIN = new RegExp(`^${NUMBER}$`);

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
