/**
 * What is wrong with a text that isn't the quantity it should be, and what was likely meant. One
 * way for every kind: mend the numbers, supply or mend the unit, and keep what then reads.
 */
import { editDistance } from './edit-distance.ts';
import type { Failure, Parsed } from './kind.ts';
import { type NumberRepair, repairNumbers } from './number.ts';

interface DiagnosisSpec {
  /** The usual spelling of a text that is right; undefined for any other. */
  usual(text: string): string | undefined;
  /** Every spelling of a unit that is understood, the usual ones included; best first. */
  readonly units: readonly string[];
  /** Units likely meant by a bare number, best first. */
  likelyUnits(value: number): readonly string[];
  readonly words: readonly string[];
  /** false: the digits aren't numbers of their own (a date). */
  readonly numbers?: boolean;
  /** Further texts to try for a text that isn't right. */
  repairs?(text: string): readonly string[];
}

/** What a reader makes of a text: the value, with its usual spelling where the text isn't it; or why not. */
export function readOrDiagnose<T>(
  text: string,
  read: (text: string) => { readonly value: T; readonly usual: string } | undefined,
  spec: Omit<DiagnosisSpec, 'usual'>,
): Parsed<T> {
  const found = read(text);
  if (!found) return diagnose(text, { usual: (candidate) => read(candidate)?.usual, ...spec });
  const { value, usual } = found;
  return usual === text ? { ok: true, value } : { ok: true, value, usual };
}

const MOST = 4;
/** What other notations put round a value or behind it, and quotes that a word processor made. */
const AROUND = /^[\s\u2018-\u201f]+|[\s,;\u2018-\u201f]+$/g;
const TRAILING_UNIT =
  /^(.*[0-9])[ \u00a0\u2009\u202f]*([\p{L}%\u00b0\u00d7\u2033"][^0-9]*(?:m2)?)$/u;

/** The letter that a tired hand types for a zero. */
const FOR_ZERO = /(?<=[0-9][oO]{0,6})[oO](?=[oO0-9]{0,9}(?:$|\s))/g;

const SHARE_UNIT = /^(?:%|percent|per cent)$/i;

function diagnose(text: string, spec: DiagnosisSpec): Failure {
  const trimmed = text.trim();
  // A long text is no quantity, and mending it would cost time.
  if (trimmed.length > 80) return { ok: false, code: 'form', likely: [] };
  if (!/[0-9]/.test(trimmed)) return withoutNumber(trimmed, spec);

  const bare = spec.usual(trimmed.replace(AROUND, ''));
  if (bare !== undefined) return { ok: false, code: 'form', likely: [bare] };
  const numbers = spec.numbers === false ? asWritten(trimmed) : repairNumbers(trimmed);
  const likely = new Set<string>();
  const consider = (candidate: string): void => {
    const usual = spec.usual(candidate);
    if (usual !== undefined) likely.add(usual);
  };
  consider(trimmed.replace(FOR_ZERO, '0'));
  for (const candidate of numbers.texts) {
    consider(candidate);
    for (const other of spec.repairs?.(candidate) ?? []) consider(other);
    for (const other of withUnits(candidate, spec)) consider(other);
  }
  const unit = unitFault(numbers.texts[0] ?? trimmed, spec);
  // A comma made a point would still not read.
  const decides = unit.code === 'not-whole' ? undefined : numbers.code;
  if (unit.detail === 'plus') consider(trimmed.replace('+', ''));
  if (unit.code === 'not-whole') for (const whole of wholes(numbers.texts[0]!)) consider(whole);
  const code = decides ?? unit.code;
  const detail = decides ? numbers.detail : unit.detail;
  return {
    ok: false,
    code,
    likely: [...likely].filter((found) => found !== text).slice(0, MOST),
    ...(detail === undefined ? {} : { detail }),
  };
}

const asWritten = (text: string): NumberRepair => ({
  code: undefined,
  detail: undefined,
  texts: [text],
});

function withoutNumber(text: string, spec: DiagnosisSpec): Failure {
  const near = spec.words.filter(
    (word) => editDistance(word, text.toLowerCase()) <= Math.max(1, Math.floor(word.length / 3)),
  );
  return { ok: false, code: 'form', likely: near };
}

function withUnits(text: string, spec: DiagnosisSpec): string[] {
  const parts = TRAILING_UNIT.exec(text);
  if (!parts) {
    const value = Number(text.match(/[0-9.]+/)?.[0] ?? Number.NaN);
    return spec.likelyUnits(value).map((unit) => `${text} ${unit}`);
  }
  const number = parts[1]!;
  const written = parts[2]!;
  if (spec.units.includes(written)) return [];
  const near = spec.units
    .map((unit) => ({ unit, off: unitDistance(written, unit) }))
    .filter(({ off }) => off <= 1)
    .sort((a, b) => a.off - b.off)
    .map(({ unit }) => unit);
  // A share is no number of another unit: 40 % of the light is not 40 stops.
  if (SHARE_UNIT.test(written)) return near.map((unit) => `${number} ${unit}`);
  const value = Number(number.match(/[0-9.]+/)?.[0] ?? Number.NaN);
  return [...near, ...spec.likelyUnits(value)].map((unit) => `${number} ${unit}`);
}

function unitDistance(written: string, unit: string): number {
  if (written === unit) return 0;
  if (written.toLowerCase() === unit.toLowerCase()) return 0.5;
  // One letter off says nothing about a unit of one letter.
  return unit.length < 2 ? 2 : editDistance(written, unit);
}

const FRACTION = /[0-9]\.[0-9]/;

const withNumbers = (text: string, number: string): string =>
  text.replace(/[-\u2212+]?[0-9][0-9.]*/g, number);

/** The text with whole numbers: three digits behind a point may be thousands, else those next to it. */
function wholes(text: string): string[] {
  const withEach = (whole: (part: string) => string): string =>
    text.replace(/[0-9]+\.[0-9]+/g, whole);
  return [
    ...(/(?<![0-9.])[1-9][0-9]{0,2}\.[0-9]{3}(?![0-9.])/.test(text)
      ? [withEach((part) => part.replace('.', ''))]
      : []),
    withEach((part) => String(Math.floor(Number(part)))),
    withEach((part) => String(Math.ceil(Number(part)))),
  ];
}

/** What puts a number out of range, where its sign or its being zero does. */
function offRange(text: string, spec: DiagnosisSpec): { detail?: 'plus' | 'minus' | 'zero' } {
  const sign = /[-\u2212+](?=[0-9])/.exec(text)?.[0];
  if (sign !== undefined && spec.usual(text.replace(sign, '')) !== undefined)
    return { detail: sign === '+' ? 'plus' : 'minus' };
  return /(?<![0-9.])0(?:\.0*)?(?![0-9.])/.test(text) ? { detail: 'zero' } : {};
}

function unitFault(
  text: string,
  spec: DiagnosisSpec,
): { code: 'no-unit' | 'unknown-unit' | 'out-of-range' | 'not-whole' | 'form'; detail?: string } {
  const asOne = withNumbers(text, '1');
  if (spec.usual(asOne) !== undefined) {
    if (FRACTION.test(text) && spec.usual(withNumbers(text, '1.5')) === undefined)
      return { code: 'not-whole' };
    return { code: 'out-of-range', ...offRange(text, spec) };
  }
  const parts = TRAILING_UNIT.exec(text);
  if (spec.units.length === 0) return { code: 'form' };
  if (!parts) return { code: /[0-9]$/.test(text) ? 'no-unit' : 'form' };
  const written = parts[2]!;
  if (spec.units.includes(written)) return { code: 'form' };
  return { code: 'unknown-unit', detail: written };
}
