/**
 * Numbers as findings, hovers and hints say them: two or three significant digits, the trade's
 * units, lengths in millimetres or inches as the reader prefers. Plans themselves are written
 * with quantity/, never with this.
 */

import { nearestIso } from '../exposure/remedies.ts';
import { message } from '../words/message.ts';

export type LengthUnit = 'mm' | 'inches';

const MM_PER_INCH = 25.4;
const MM_PER_METRE = 1000;
/** A speed this near to a mark is said as that mark: 25 600, not 26 000. */
const MARKED = 0.03;

/** A number as texts for people say it, with the sign of typography; plans are written with a hyphen. */
export const signed = (text: string): string => text.replace('-', '\u2212');

/** `value` with at most `digits` significant digits and no exponent; trailing zeros dropped. */
export function significant(value: number, digits = 3): string {
  if (value === 0) return '0';
  if (!Number.isFinite(value)) return value > 0 ? message`endless` : message`none`;
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(12, Math.max(0, digits - 1 - magnitude));
  const text = value.toFixed(decimals);
  return signed(text.includes('.') ? text.replace(/\.?0+$/, '') : text);
}

/** Two digits below ten, three above: 0.88, 4.9, 24.6, 118. */
const short = (value: number): string => significant(value, Math.abs(value) < 10 ? 2 : 3);

export class Say {
  readonly #unit: () => LengthUnit;

  /** @param unit read at each use, so that a changed preference holds at once */
  constructor(unit: () => LengthUnit = () => 'mm') {
    this.#unit = unit;
  }

  get lengths(): LengthUnit {
    return this.#unit();
  }

  length(mm: number): string {
    if (!Number.isFinite(mm)) return message`endless`;
    if (this.lengths === 'inches') return `${short(mm / MM_PER_INCH)} in`;
    return Math.abs(mm) >= 10 * MM_PER_METRE ? `${short(mm / MM_PER_METRE)} m` : `${short(mm)} mm`;
  }

  /** Two lengths to be compared, with digits enough to tell them apart: ["1.69", "1.7"] mm. */
  lengths2(a: number, b: number): [string, string] {
    const scale = this.lengths === 'inches' ? MM_PER_INCH : 1;
    const unit = this.lengths === 'inches' ? 'in' : 'mm';
    const [left, right] = apart(a / scale, b / scale);
    const said = (length: number, text: string) =>
      Number.isFinite(length) ? `${text} ${unit}` : text;
    return [said(a, left), said(b, right)];
  }

  /** "works as f/62", and that it was measured where it was. */
  worksAs(effective: number, isMeasured = false): string {
    return message`works as ${this.fNumber(effective)}${isMeasured ? message` (measured)` : ''}`;
  }

  fNumber(value: number): string {
    return `f/${short(value)}`;
  }

  /** Signed: "+1.2 stops", "−0.4 stops". */
  stopsSigned(value: number): string {
    const text = significant(Math.abs(value), Math.abs(value) < 1 ? 1 : 2);
    return stopsOf(`${value < 0 ? '−' : '+'}${text}`);
  }

  stops(value: number): string {
    const text = significant(Math.abs(value), 2);
    return stopsOf(text);
  }

  angle(radians: number): string {
    return `${short((radians * 180) / Math.PI)}°`;
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
    if (seconds >= 0.3) return `${short(seconds)} s`;
    return `1/${significant(1 / seconds, 3)} s`;
  }

  seconds(value: number): string {
    if (!Number.isFinite(value)) return message`endless`;
    if (value >= 5400) return `${short(value / 3600)} h`;
    return value >= 180 ? `${short(value / 60)} min` : `${short(value)} s`;
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
    return `${short(value / scale)} ${unit}`;
  }

  percent(share: number): string {
    return `${significant(share * 100, 2)} %`;
  }

  micrometres(um: number): string {
    return `${short(um)} µm`;
  }

  kilograms(value: number): string {
    return `${short(value)} kg`;
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
