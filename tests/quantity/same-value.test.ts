/** The value counts: however a number is written, the same value gives the same reading. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KINDS, kindOf, type QuantityId } from '../../shared/quantity/index.ts';
import { NUMBER, plainNumber, SIGNED } from '../../shared/quantity/number.ts';
import { manyRuns } from '../support/runs.ts';

/** Digits that are no numbers with decimals or exponents of their own. */
const OF_DIGITS: ReadonlySet<QuantityId> = new Set(['date', 'pixels']);
const ids = (Object.keys(KINDS) as QuantityId[]).filter((id) => !OF_DIGITS.has(id));
/** Whole numbers take no decimals, not even zeros: 1.000 may be a thousand. */
const WHOLE: ReadonlySet<QuantityId> = new Set(['iso', 'iso-or-auto', 'count', 'beats']);

const BOUNDED: ReadonlySet<QuantityId> = new Set(['angle', 'percent', 'shutter']);

/** The number without what says nothing, moved by an exponent: "40" as "4.0e1". */
function byExponent(number: string, exponent: number): string {
  const [whole = '', decimals = ''] = number.split('.');
  const digits = whole + decimals;
  const point = whole.length - exponent;
  const padded = point <= 0 ? '0'.repeat(1 - point) + digits : digits.padEnd(point, '0');
  const at = Math.max(1, point);
  const front = padded.slice(0, at).replace(/^0+(?=.)/, '');
  const back = padded.slice(at);
  return `${front}${back === '' ? '' : `.${back}`}e${exponent}`;
}

const NUMBERS = /(?<![0-9./:a-z])[0-9]+(?:\.[0-9]+)?(?![0-9]*[/:])/g;

describe.each(ids)('%s', (id) => {
  const kind = kindOf(id);
  const frames = (example: string) => /frame|beat/.test(example);
  const cases = kind.examples.flatMap((example) =>
    [...example.matchAll(NUMBERS)].map((found) => ({ example, found })),
  );

  it('reads the same value from every writing of a number', () => {
    if (cases.length === 0) return expect(kind.words.length + kind.examples.length).not.toBe(0);
    fc.assert(
      fc.property(
        fc.constantFrom(...cases),
        fc.boolean(),
        fc.integer({ min: 0, max: 20 }),
        fc.integer({ min: -2, max: 2 }),
        fc.boolean(),
        ({ example, found }, plus, zeros, exponent, exponential) => {
          const [number] = found;
          const isWhole = WHOLE.has(id) || frames(example);
          let written = number;
          // Of what ends at 100 or 360 not every writing is read; the usual ones are.
          if (exponential && BOUNDED.has(id) && Number(number) >= 100)
            written = byExponent(number, 1 + Math.abs(exponent % 2));
          else if (exponential && !isWhole) written = byExponent(number, exponent);
          else if (zeros > 0 && !isWhole)
            written = `${number}${number.includes('.') ? '' : '.'}${'0'.repeat(zeros)}`;
          if (plus) written = `+${written}`;
          if (example[found.index - 1] === '-') return;
          const text =
            example.slice(0, found.index) + written + example.slice(found.index + number.length);
          const expected = kind.parse(example);
          const parsed = kind.parse(text);
          expect(parsed, `${example} as ${text}`).toMatchObject({ ok: true });
          if (!parsed.ok || !expected.ok) return;
          expect(parsed.value, text).toEqual(expected.value);
          expect(new RegExp(kind.pattern, 'u').test(text), text).toBe(true);
        },
      ),
      { numRuns: manyRuns(100) },
    );
    return undefined;
  });

  it('refuses what is absurd', () => {
    for (const { example, found } of cases)
      for (const absurd of ['1e999', '1e-999', '1e400', '9e99', '1e10', '0e1e1', '++1', '1e', 'e1'])
        expect(
          kind.parse(
            example.slice(0, found.index) + absurd + example.slice(found.index + found[0].length),
          ).ok,
          `${absurd} in ${example}`,
        ).toBe(false);
  });
});

it('a number written plainly is the same number, and is read', () => {
  const pattern = new RegExp(`^(?:${SIGNED})$`);
  const unsigned = new RegExp(`^(?:${NUMBER})$`);
  const digits = (most: number) =>
    fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: most }).map((each) => each.join(''));
  fc.assert(
    fc.property(
      fc.constantFrom('', '-', '+'),
      digits(9),
      digits(15),
      fc.option(fc.integer({ min: -12, max: 12 })),
      (sign, whole, decimals, exponent) => {
        const text = `${sign}${whole.replace(/^0+(?=.)/, '') || '0'}${decimals === '' ? '' : `.${decimals}`}${exponent === null ? '' : `e${exponent}`}`;
        if (!pattern.test(text)) return;
        const plain = plainNumber(text);
        expect(Number(plain), text).toBe(Number(text));
        expect(plain).not.toMatch(/[eE+]/);
        expect(pattern.test(plain), plain).toBe(true);
        expect(plainNumber(plain)).toBe(plain);
        const size = Math.abs(Number(text));
        expect(size === 0 || (size >= 1e-9 && size < 1e9), text).toBe(true);
        if (sign === '') expect(unsigned.test(text)).toBe(true);
      },
    ),
    { numRuns: manyRuns(3000) },
  );
});
