/**
 * Numbers as findings, hovers and hints say them: two or three significant digits, the trade's
 * units, lengths by the metre or the foot as the reader prefers. Plans themselves are written
 * with quantity/, never with this.
 */

import { nearestIso } from '../exposure/remedies.ts';
import { message } from '../words/message.ts';

export type LengthUnit = 'mm' | 'inches';

const MM_PER_INCH = 25.4;
const MM_PER_METRE = 1000;
/** Slower than this, a speed is growth: 10 mm/h. */
const GROWTH_MM_PER_S = 10 / 3600;
/** A speed this near to a mark is said as that mark: 25 600, not 26 000. */
const MARKED = 0.03;

/** A number as texts for people say it, with the sign of typography; plans are written with a hyphen. */
export const signed = (text: string): string => text.replace('-', '\u2212');

/** The shift of a gel, with its sign: "+81 mired". */
export const miredWords = (shift: number): string =>
  message`${shift > 0 ? '+' : ''}${signed(String(Math.round(shift)))} mired`;
/** What calculation leaves in the last digits: 33.75 mm by two ways is said as one number. */
const NOISE = 1e-12;

/** `value` with at most `digits` significant digits and no exponent; trailing zeros dropped. */
export function significant(value: number, digits = 3): string {
  if (value === 0) return '0';
  if (!Number.isFinite(value)) return value > 0 ? message`endless` : message`none`;
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(12, Math.max(0, digits - 1 - magnitude));
  const text = (value * (1 + NOISE)).toFixed(decimals);
  return signed(text.includes('.') ? text.replace(/\.?0+$/, '') : text);
}

/** Two digits below ten, three above: 0.88, 4.9, 24.6, 118. */
const short = (value: number): string => significant(value, Math.abs(value) < 10 ? 2 : 3);

interface Scale {
  readonly unit: string;
  /** Of the unit that the core counts in. */
  readonly size: number;
  /** Large units carry the digits that the small one would have shown: 1.24 m, not 1.2 m. */
  readonly digits?: 3;
}

const MILLIMETRES: Scale = { unit: 'mm', size: 1 };
const MICROMETRES: Scale = { unit: 'µm', size: 1 / MM_PER_METRE };
const METRES: Scale = { unit: 'm', size: MM_PER_METRE, digits: 3 };
const INCHES: Scale = { unit: 'in', size: MM_PER_INCH };
const FEET: Scale = { unit: 'ft', size: 12 * MM_PER_INCH, digits: 3 };

/** Millimetres, metres from 1 m, micrometres under 0.01 mm; inches, feet from 3 ft. */
function lengthScale(mm: number, unit: LengthUnit): Scale {
  const size = Math.abs(mm);
  if (unit === 'inches') return size < 3 * FEET.size ? INCHES : FEET;
  if (size > 0 && size < 0.01) return MICROMETRES;
  return size < MM_PER_METRE ? MILLIMETRES : METRES;
}

export class Say {
  readonly #unit: () => LengthUnit;
  /** What somebody wrote keeps a third digit below ten: 5.25 mm is not said as 5.3 mm. */
  readonly #isWritten: boolean;

  /** @param unit read at each use, so that a changed preference holds at once */
  constructor(unit: () => LengthUnit = () => 'mm', isWritten = false) {
    this.#unit = unit;
    this.#isWritten = isWritten;
  }

  get lengths(): LengthUnit {
    return this.#unit();
  }

  /** The same for values as a plan gives them. */
  get written(): Say {
    return this.#isWritten ? this : new Say(this.#unit, true);
  }

  #digits(value: number, digits?: number): string {
    return this.#isWritten
      ? significant(value)
      : digits
        ? significant(value, digits)
        : short(value);
  }

  #scaled(mm: number, { size, digits }: Scale): string {
    return this.#digits(mm / size, digits);
  }

  length(mm: number): string {
    if (!Number.isFinite(mm)) return message`endless`;
    const scale = lengthScale(mm, this.lengths);
    return `${this.#scaled(mm, scale)} ${scale.unit}`;
  }

  /** What grows over hours is said by the hour. */
  speed(mmPerS: number): string {
    return mmPerS > 0 && mmPerS < GROWTH_MM_PER_S
      ? `${this.length(mmPerS * 3600)}/h`
      : `${this.length(mmPerS)}/s`;
  }

  /** Width and height in one unit: "24 × 13.5 mm". A plan is written with an x. */
  size(widthMm: number, heightMm: number): string {
    const scale = lengthScale(Math.max(widthMm, heightMm), this.lengths);
    return `${this.#scaled(widthMm, scale)} × ${this.#scaled(heightMm, scale)} ${scale.unit}`;
  }

  /** A picture's size in pixels: "1920 × 1080". */
  resolution({ width, height }: { readonly width: number; readonly height: number }): string {
    return `${width} × ${height}`;
  }

  /** Two lengths to be compared, with digits enough to tell them apart: ["1.69", "1.7"] mm. */
  lengths2(a: number, b: number): [string, string] {
    const finite = [a, b].filter(Number.isFinite).map(Math.abs);
    const { unit, size } = lengthScale(Math.max(0, ...finite), this.lengths);
    const [left, right] = apart(a / size, b / size);
    const said = (length: number, text: string) =>
      Number.isFinite(length) ? `${text} ${unit}` : text;
    return [said(a, left), said(b, right)];
  }

  /** "f/62 effective", and that it was measured where it was. */
  effective(n: number, isMeasured = false): string {
    return message`${this.fNumber(n)} effective${isMeasured ? message` (measured)` : ''}`;
  }

  /** Two digits, as lenses are marked, three from f/100: f/5.6, f/62. */
  fNumber(value: number): string {
    return `f/${significant(value, Math.abs(value) < 100 ? 2 : 3)}`;
  }

  /** Signed: "+1.2 stops", "−0.4 stops". */
  stopsSigned(value: number): string {
    const text = significant(Math.abs(value), Math.abs(value) < 1 ? 1 : 2);
    return stopsOf(`${value < 0 ? '−' : '+'}${text}`);
  }

  stops(value: number): string {
    const text = this.#digits(Math.abs(value), 2);
    return stopsOf(text);
  }

  angle(radians: number): string {
    return `${this.#digits((radians * 180) / Math.PI)}°`;
  }

  angles2(a: number, b: number): [string, string] {
    const [left, right] = apart((a * 180) / Math.PI, (b * 180) / Math.PI);
    return [`${left}°`, `${right}°`];
  }

  magnification(value: number): string {
    return `${significant(value, 3)}x`;
  }

  /** A shutter time: "1/50 s", "0.5 s", "2 s". */
  shutter(seconds: number): string {
    if (seconds >= 0.3) return `${this.#digits(seconds)} s`;
    return `1/${significant(1 / seconds, 3)} s`;
  }

  /** Milliseconds under 0.1 s, minutes from 3 min, hours from 2 h. */
  seconds(value: number): string {
    if (!Number.isFinite(value)) return message`endless`;
    if (value >= 7200) return `${this.#digits(value / 3600)} h`;
    if (value >= 180) return `${this.#digits(value / 60)} min`;
    return value > 0 && value < 0.1
      ? `${this.#digits(value * 1000)} ms`
      : `${this.#digits(value)} s`;
  }

  /** Decimal prefixes, as cards are labelled: "1.2 GB". */
  bytes(value: number): string {
    const [scale, unit] =
      value >= 1e12
        ? [1e12, 'TB']
        : value >= 1e9
          ? [1e9, 'GB']
          : value >= 1e6
            ? [1e6, 'MB']
            : [1e3, 'kB'];
    return `${this.#digits(value / scale)} ${unit}`;
  }

  percent(share: number): string {
    return `${this.#digits(share * 100, 2)}%`;
  }

  micrometres(um: number): string {
    return `${short(um)} µm`;
  }

  /** Grams under 1 kg. */
  kilograms(value: number): string {
    return value > 0 && value < 1 ? `${this.#digits(value * 1000)} g` : `${this.#digits(value)} kg`;
  }

  pixels(value: number): string {
    const text = short(value);
    return text === '1' ? message`${text} pixel` : message`${text} pixels`;
  }

  iso(value: number): string {
    const mark = nearestIso(value);
    const isMarked = Math.abs(value / mark - 1) < MARKED;
    return String(isMarked ? mark : Number(value.toPrecision(2)));
  }

  number(value: number): string {
    return short(value);
  }

  /** A number with digits enough to tell it from a limit. */
  numberBeside(value: number, limit: number): string {
    return apart(value, limit)[0];
  }
}

const stopsOf = (text: string): string =>
  /^[+−]?1$/.test(text) ? message`${text} stop` : message`${text} stops`;

/** Two numbers with as few digits as tell them apart, at least two and at most five. */
function apart(a: number, b: number): [string, string] {
  for (let digits = 2; digits < 5; digits++) {
    const pair: [string, string] = [significant(a, digits), significant(b, digits)];
    if (pair[0] !== pair[1]) return pair;
  }
  return [significant(a, 5), significant(b, 5)];
}
