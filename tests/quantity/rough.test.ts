/** What is known only roughly: `50 to 80 mm`, `100 ± 2 mm`, `400 mm ± 5 %`. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { KINDS, kindOf, type QuantityId } from '../../shared/quantity/index.ts';
import { each, laws } from '../support/each.ts';

const ids = (Object.keys(KINDS) as QuantityId[]).filter((id) => kindOf(id).rough);

const SCHEMA = JSON.parse(
  readFileSync(new URL('../../schemas/shootplan.schema.json', import.meta.url), 'utf8'),
) as { $defs: Record<string, { pattern: string } | undefined> };

/** Texts close enough to ranges that many of them are ones. */
const nearly = (id: QuantityId) => {
  const { units, rough } = kindOf(id);
  const number = fc.constantFrom(
    '0',
    '1',
    '2.5',
    '16',
    '80',
    '0.25',
    '359',
    '999999999',
    '0800',
    '1,5',
    '1e3',
    '-3',
    '+4',
    '\u22125',
    '0.000000001',
    '1.234567891',
  );
  const unit = fc.constantFrom(
    '',
    '',
    ' ',
    ' mm',
    ' zz',
    ...units.flatMap((one) => [one, ` ${one}`]),
  );
  const mark = fc.constantFrom(
    ' to ',
    '-',
    '\u2013',
    ' \u2013 ',
    '..',
    ' \u00b1 ',
    '\u00b1',
    ' +- ',
    '+/-',
    ' bis ',
    ' ',
    'to',
  );
  return fc.oneof(
    {
      weight: 6,
      arbitrary: fc
        .tuple(number, unit, mark, number, fc.oneof(unit, fc.constant(' %')))
        .map((parts) => parts.join('')),
    },
    fc
      .tuple(fc.constantFrom(...rough!.examples), fc.nat(12), fc.string({ maxLength: 2 }))
      .map(([example, at, text]) => example.slice(0, at) + text + example.slice(at + 1)),
    fc.string({ maxLength: 14 }),
  );
};

laws(
  ids,
  (id) => id,
  (id, law) => {
    const kind = kindOf(id);
    const rough = kind.rough!;
    const pattern = new RegExp(rough.pattern, 'u');
    const either = SCHEMA.$defs[`rough-${id}`];

    law('reads its examples as they stand', () => {
      for (const example of rough.examples) {
        expect(rough.parse(example), example).toMatchObject({ ok: true });
        expect(rough.parse(example), example).not.toHaveProperty('usual');
        expect(kind.parse(example).ok, example).toBe(false);
      }
    });

    law(
      'passes over exactly what its pattern does, and takes its own spelling as it stands',
      () => {
        fc.assert(
          fc.property(nearly(id), (text) => {
            const parsed = rough.parse(text);
            expect(pattern.test(text)).toBe(parsed !== undefined);
            if (either)
              expect(new RegExp(either.pattern, 'u').test(text)).toBe(
                parsed !== undefined || kind.parse(text).ok,
              );
            if (!parsed?.ok) return;
            const { low, high } = parsed.range as { low: number; high: number };
            const middle = parsed.value as number;
            expect(low).toBeLessThanOrEqual(high);
            expect(middle).toBe((low + high) / 2);
            if (parsed.usual === undefined) return;
            const again = rough.parse(parsed.usual);
            expect(again, parsed.usual).toMatchObject({ ok: true });
            expect(again, parsed.usual).not.toHaveProperty('usual');
            if (!again?.ok) return;
            const close = 1e-9 * Math.max(Math.abs(low), Math.abs(high)) + 1e-9;
            expect(Math.abs((again.range.low as number) - low)).toBeLessThanOrEqual(close);
            expect(Math.abs((again.range.high as number) - high)).toBeLessThanOrEqual(close);
          }),
          { numRuns: 400 },
        );
      },
    );

    law('writes what it reads as the same range, in every unit', () => {
      for (const example of rough.examples) {
        const parsed = rough.parse(example);
        if (!parsed?.ok) throw new Error(example);
        for (const unit of [undefined, ...kind.units]) {
          const again = rough.parse(rough.print(parsed.range as never, unit));
          if (!again?.ok) throw new Error(`${example} in ${unit}`);
          expect(again.range.low as number).toBeCloseTo(parsed.range.low as number, 6);
          expect(again.range.high as number).toBeCloseTo(parsed.range.high as number, 6);
        }
      }
    });

    law('says no of long texts as soon as of short ones', () => {
      const parts = [
        '1',
        '1.',
        ' ',
        '1 to ',
        '1 \u00b1 ',
        '1-',
        '\u00a0',
        '0.0',
        '..',
        kind.units[0] ?? 'x',
      ];
      // A bounded pattern looks at so many characters at most, wherever it begins.
      const bare = rough.pattern.replace(/\\.|\[(?:\\.|[^\]\\])*\]/gu, '');
      expect(bare.replaceAll('(?', '(').match(/[*+]|\{\d+,\}/gu)).toBeNull();
      // Each text is asked as often, however long it is.
      const asked = (length: number): number => {
        const spy = vi.spyOn(RegExp.prototype, 'exec');
        try {
          for (const part of parts) rough.parse(`1 ${part.repeat(length)} 2`);
          return spy.mock.calls.length;
        } finally {
          spy.mockRestore();
        }
      };
      expect(asked(10_000)).toBe(asked(100));
      expect(asked(100)).toBeGreaterThan(0);
    });
  },
);

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

const READ: readonly (readonly [QuantityId, string, number, number, string?])[] = [
  ['length', '50 to 80 mm', 50, 80],
  ['length', '80 to 50 mm', 50, 80, '50 to 80 mm'],
  ['length', '50mm-80mm', 50, 80, '50 to 80 mm'],
  ['length', '50\u201380 mm', 50, 80, '50 to 80 mm'],
  ['length', '50..80 mm', 50, 80, '50 to 80 mm'],
  ['length', '5 cm to 80 mm', 50, 80, '50 to 80 mm'],
  // The inch is 25.4 mm (international agreement of 1959).
  ['length', '1 in to 50 mm', 25.4, 50, '25.4 to 50 mm'],
  ['length', '100 \u00b1 2 mm', 98, 102],
  ['length', '100 mm \u00b1 2 mm', 98, 102, '100 \u00b1 2 mm'],
  ['length', '100 mm +- 2 mm', 98, 102, '100 \u00b1 2 mm'],
  ['length', '100 +/- 2 mm', 98, 102, '100 \u00b1 2 mm'],
  ['length', '10 cm \u00b1 2 mm', 98, 102, '100 \u00b1 2 mm'],
  ['length', '400 mm \u00b1 5 %', 380, 420],
  ['length', '400mm\u00b15%', 380, 420, '400 mm \u00b1 5 %'],
  ['ratio', '0.8-1', 0.8, 1, '0.8 to 1'],
  ['ratio', '1 \u00b1 0.2', 0.8, 1.2],
  ['percent', '10 to 30 %', 0.1, 0.3],
  ['percent', '20 \u00b1 5 %', 0.15, 0.25],
  ['angle', '-2 to 4 deg', rad(-2), rad(4)],
  ['angle', '-5 - -3 deg', rad(-5), rad(-3), '-5 to -3 deg'],
  ['angle', '-10 deg \u00b1 10 %', rad(-11), rad(-9)],
  ['stops', '0.3 \u00b1 0.1 stops', 0.2, 0.4],
  ['over-under', '0.3 \u00b1 0.1 stops under', -0.4, -0.2],
  ['over-under', '0.1 \u00b1 0.2 stops over', -0.1, 0.3],
  ['over-under', '0.2 to 0.4 EV darker', -0.4, -0.2, '0.2 to 0.4 stops under'],
  ['magnification', '0.9x to 1.1x', 0.9, 1.1, '0.9 to 1.1x'],
  ['time-or-zero', '0 to 20 ms', 0, 0.02],
];

describe('ranges', () => {
  it('are read by their ends, whichever way they are written', () => {
    each(
      READ,
      ([id, text, low, high, usual]) => {
        const parsed = kindOf(id).rough?.parse(text);
        if (!parsed?.ok) throw new Error('is not read');
        expect(parsed.range.low as number).toBeCloseTo(low, 12);
        expect(parsed.range.high as number).toBeCloseTo(high, 12);
        expect(parsed.value as number).toBeCloseTo((low + high) / 2, 12);
        expect(parsed.usual).toBe(usual);
      },
      ([id, text]) => `${id}: ${text}`,
    );
  });

  it('end where their kind does', () => {
    const beyond: readonly (readonly [QuantityId, string])[] = [
      ['length', '0 to 50 mm'],
      ['length', '2 \u00b1 2 mm'],
      ['length', '2 \u00b1 3 mm'],
      ['length', '10 mm \u00b1 100 %'],
      ['length-or-zero', '1 \u00b1 2 mm'],
      ['percent', '90 to 110 %'],
      ['percent', '95 \u00b1 6 %'],
      ['angle', '350 to 370 deg'],
      ['angle', '-370 to 0 deg'],
      ['ratio', '0 to 1'],
    ];
    each(
      beyond,
      ([id, text]) =>
        expect(kindOf(id).rough?.parse(text)).toEqual({ ok: false, code: 'out-of-range' }),
      ([id, text]) => `${id}: ${text}`,
    );
  });
});
