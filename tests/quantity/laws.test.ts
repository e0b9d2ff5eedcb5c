import fc from 'fast-check';
import { expect, it } from 'vitest';
import { KINDS, kindOf, type QuantityId } from '../../shared/quantity/index.ts';
import { Say } from '../../shared/say/say.ts';
import { shown } from '../../shared/say/shown.ts';
import { laws } from '../support/each.ts';

const ids = Object.keys(KINDS) as QuantityId[];

/** Texts close enough to quantities that many of them are ones. */
const nearly = (id: QuantityId) => {
  const kind = kindOf(id);
  const pieces = [
    ...[
      '0',
      '1',
      '2.5',
      '16',
      '0800',
      '1,5',
      '1,920',
      '1e3',
      '1e999',
      '.5',
      '5.',
      '-3',
      '999999999',
    ],
    ...[
      '1/50',
      'f/',
      'F',
      ' to ',
      '-',
      '–',
      ' x ',
      '×',
      ':',
      '/',
      ' ',
      '\u00a0',
      '"',
      'µ',
      '²',
      '°',
    ],
    ...['dissolve ', 'auto', 'ISO ', 'K', 'zz', '29.97', '30000/1001', '2027-02-29', '(', '\\'],
    ...kind.units,
    ...kind.units,
    ...kind.examples,
    ...kind.words,
  ];
  return fc.oneof(
    fc.array(fc.constantFrom(...pieces), { maxLength: 5 }).map((parts) => parts.join('')),
    fc
      .tuple(fc.constantFrom(...kind.examples), fc.nat(20), fc.string({ maxLength: 2 }))
      .map(([example, at, text]) => example.slice(0, at) + text + example.slice(at + 1)),
    fc.string({ maxLength: 12 }),
  );
};

laws(
  ids,
  (id) => id,
  (id, law) => {
    const kind = kindOf(id);
    const pattern = new RegExp(kind.pattern, 'u');

    law('stands in the registry under its own id, titled, with examples', () => {
      expect(kind.id).toBe(id);
      expect(kind.title).not.toBe('');
      expect(kind.examples.length).toBeGreaterThan(0);
    });

    law('reads its examples, which are in the usual spelling', () => {
      for (const example of kind.examples) {
        const parsed = kind.parse(example);
        expect(parsed, example).toMatchObject({ ok: true });
        expect(parsed, example).not.toHaveProperty('usual');
        expect(pattern.test(example), example).toBe(true);
      }
    });

    law('writes what it reads as the same value', () => {
      for (const example of kind.examples) {
        const parsed = kind.parse(example);
        if (!parsed.ok) throw new Error(example);
        for (const unit of [undefined, ...kind.units]) {
          const again = kind.parse(kind.print(parsed.value, unit));
          expect(again, `${example} as ${unit}`).toMatchObject({ ok: true });
          if (again.ok) expectClose(again.value, parsed.value);
        }
        expect(shown(id, parsed.value, new Say())).not.toBe('');
      }
    });

    law(
      'accepts exactly what its pattern does; usual and likely spellings read as they stand',
      () => {
        fc.assert(
          fc.property(nearly(id), (text) => {
            const parsed = kind.parse(text);
            expect(pattern.test(text)).toBe(parsed.ok);
            const offered = parsed.ok ? [parsed.usual ?? text] : parsed.likely;
            for (const better of offered) {
              const again = kind.parse(better);
              expect(again, better).toMatchObject({ ok: true });
              expect(again, better).not.toHaveProperty('usual');
              if (parsed.ok && again.ok) expectClose(again.value, parsed.value, 5);
            }
          }),
          { numRuns: 300 },
        );
      },
    );
  },
);

/** Equal in structure; numbers to `digits` significant digits (an inch in mm has no end). */
function expectClose(actual: unknown, wanted: unknown, digits = 9): void {
  if (typeof wanted === 'number') {
    expect(Math.abs((actual as number) - wanted)).toBeLessThanOrEqual(
      Math.abs(wanted) * 10 ** (1 - digits) + 1e-9,
    );
  } else if (typeof wanted === 'object' && wanted !== null) {
    expect(Object.keys(actual as object)).toEqual(Object.keys(wanted));
    for (const [key, value] of Object.entries(wanted)) {
      expectClose((actual as Record<string, unknown>)[key], value, digits);
    }
  } else {
    expect(actual).toBe(wanted);
  }
}

it('has no pattern that a long text could keep busy: every repetition has an end', () => {
  for (const id of ids) {
    const { pattern } = kindOf(id);
    const unbounded = pattern.replaceAll('[0-9.]*[1-9]', '').match(/[\])][*+]/g);
    expect(unbounded, id).toBeNull();
  }
});
