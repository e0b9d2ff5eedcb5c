/**
 * How the body was set, from the tags that a file carries. Every maker names them otherwise; what
 * is not clearly one of these is left, and a value that can't be read is not known.
 */
import { KINDS } from '../quantity/index.ts';

interface CarriedSettings {
  readonly shutterS: number | null;
  readonly iso: number | null;
  readonly whiteBalance: number | 'auto' | null;
  /** ISO 8601. */
  readonly created: string | null;
}

/** Names in small letters and digits, by the last part of a dotted one. */
const SHUTTER = /^(?:exposuretime|shutter|shutterspeed|shuttertime|shutterspeedtime|shutterangle)$/;
const ISO = /^(?:iso|isospeed|isosensitivity|isospeedratings|photographicsensitivity)$/;
const WHITE = /^(?:whitebalance|whitebalancetemperature|colou?rtemperature|whitebalancekelvin)$/;
const CREATED = /^(?:creationdate|creationtime|datetimeoriginal)$/;

/** @param rateFps for a shutter that is carried as an angle; null: not known */
export function settingsFrom(
  tags: Readonly<Record<string, unknown>>,
  rateFps: number | null,
): CarriedSettings {
  const find = <T>(named: RegExp, read: (text: string) => T | null): T | null => {
    for (const [name, value] of Object.entries(tags)) {
      const plain = name.toLowerCase().replace(/[^a-z0-9.]/g, '');
      if (!named.test(plain.slice(plain.lastIndexOf('.') + 1))) continue;
      const text = typeof value === 'number' ? String(value) : value;
      const read1 = typeof text === 'string' ? read(text.trim()) : null;
      if (read1 !== null) return read1;
    }
    return null;
  };
  return {
    shutterS: find(SHUTTER, (text) => shutterOf(text, rateFps)),
    iso: find(ISO, isoOf),
    whiteBalance: find(WHITE, whiteOf),
    created: find(CREATED, dateOf),
  };
}

/** "1/50", "1/50 s", "0.02", "180 deg": a bare number is seconds, as in Exif. */
function shutterOf(text: string, rateFps: number | null): number | null {
  const written = /^(?:1\/)?[0-9.]+$/.test(text) ? `${text} s` : text.replace('°', ' deg');
  const parsed = KINDS.shutter.parse(written);
  if (!parsed.ok) return null;
  if (parsed.value.kind === 'time') return parsed.value.seconds;
  return rateFps === null ? null : parsed.value.angle / (2 * Math.PI) / rateFps;
}

function isoOf(text: string): number | null {
  const found = /^(?:ISO ?)?([1-9][0-9]{0,7})$/i.exec(text);
  return found ? Number(found[1]) : null;
}

/** Under this a number is a code for a kind of light, not a temperature. K. */
const LEAST_KELVIN = 1000;

function whiteOf(text: string): number | 'auto' | null {
  if (/^auto(?:matic)?$/i.test(text)) return 'auto';
  const found = /^([1-9][0-9]{3,4}) ?K?$/i.exec(text);
  const kelvin = Number(found?.[1]);
  return kelvin >= LEAST_KELVIN ? kelvin : null;
}

function dateOf(text: string): string | null {
  return /^\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d(?:\.\d+)?)?(?:Z|[+-]\d\d:?\d\d)?$/.test(text)
    ? text
    : null;
}
