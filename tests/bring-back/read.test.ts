/** The text of a day may come from anybody. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { bringBack } from '../../shared/bring-back/bring.ts';
import { propose } from '../../shared/bring-back/propose.ts';
import { readDay } from '../../shared/bring-back/read.ts';
import { manyRuns } from '../support/runs.ts';

const AT = '2027-03-02T10:41:07Z';
const TAKE = { shot: 'drift', take: 1, at: AT };
const CHECK = { shot: null, check: 'lens-clean', done: true, at: AT };
const EXPOSURE = {
  ...{ shot: 'drift', at: AT, found: '0.3 stops under', planned: '0 stops over' },
  ...{ body: 'body-a', iso: '400', lights: ['panel'] },
};
const withTake = (more: Record<string, unknown>): string =>
  `lamella day 1\n${JSON.stringify({ plan: 'a', saved: AT, takes: [{ ...TAKE, ...more }] })}`;
const whyOf = (text: string): string | null => {
  const read = readDay(text);
  return read.ok ? null : read.whys.join('; ');
};

describe('a day with several faults', () => {
  const parts = {
    plan: 'a',
    saved: AT,
    planned: { drift: { iso: '80 "}]' } },
    checks: [CHECK, { ...CHECK, done: 'yes' }],
    takes: [TAKE, { ...TAKE, take: 2, clip: 7 }, { ...TAKE, take: 3, set: { iso: 'x' } }],
    exposures: [{ ...EXPOSURE, lights: ['panel', ''] }],
  };

  it('names every one with its line, as an editor counts them', () => {
    const text = `lamella day 1\n${JSON.stringify(parts, null, 1)}`;
    const read = readDay(text);
    const whys = read.ok ? [] : read.whys;
    // The line that a search in the text finds.
    const lines = text.split('\n');
    const lineWith = (part: string) => lines.findIndex((line) => line.includes(part)) + 1;
    const empty = lines.findIndex((line) => line.trim() === '""') + 1;
    expect(whys).toEqual([
      `line ${lineWith('80 ')}: planned.drift.iso needs a value such as 1600, not "80 \\"}]"`,
      `line ${lineWith('"yes"')}: checks[2].done needs true or false, not "yes"`,
      `line ${lineWith('"clip": 7')}: takes[2].clip needs text, not 7`,
      `line ${lineWith('"iso": "x"')}: takes[3].set.iso needs a value such as 1600, not "x"`,
      `line ${empty}: exposures[1].lights[2] needs text, not ""`,
    ]);
  });

  it('names the line of the entry where a key is left out', () => {
    const { clip: _, ...take } = { ...TAKE, take: undefined, clip: 1 };
    const text = `lamella day 1\n${JSON.stringify({ plan: 'a', saved: AT, takes: [TAKE, take] }, null, 1)}`;
    // The first line, {, plan, saved, takes, then five lines of the first take.
    expect(whyOf(text)).toBe('line 11: takes[2].take needs a number from 1 to 9999, not nothing');
  });

  it('counts those that are too many to name', () => {
    const takes = Array.from({ length: 30 }, (_, index) => ({ ...TAKE, take: -index }));
    const read = readDay(`lamella day 1\n${JSON.stringify({ plan: 'a', saved: AT, takes })}`);
    const whys = read.ok ? [] : read.whys;
    expect(whys).toHaveLength(21);
    expect(whys.at(-1)).toBe('and 10 more');
  });
});

describe('a day that can not be read', () => {
  it('says where and why', () => {
    for (const [text, why] of [
      ['', 'its first line is not "lamella day 1"'],
      ['lamella day 2\n{}', 'it is of version 2; only version 1 can be read'],
      ['lamella day 1\n', 'what follows its first line is not JSON, or it is cut off'],
      ['lamella day 1\n[]', 'the document needs an object, not a list'],
      [
        `lamella day 1\n${'['.repeat(400_000)}`,
        'what follows its first line is not JSON, or it is cut off',
      ],
      ['lamella day 1\n{"plan":"a"}', 'saved needs text, not nothing'],
      [withTake({ shot: '__proto__' }), 'takes[1].shot needs a name of the plan, not "__proto__"'],
      [withTake({ take: 1.5 }), 'takes[1].take needs a number from 1 to 9999, not 1.5'],
      [withTake({ keep: 'yes' }), 'takes[1].keep needs true, false or null, not "yes"'],
      [withTake({ clip: 7 }), 'takes[1].clip needs text, not 7'],
      [withTake({ clip: 'a\u001b[2J' }), 'takes[1].clip has a control character; remove it'],
      [withTake({ note: 'a\u202eb' }), 'takes[1].note has a control character; remove it'],
      [withTake({ note: '\ud800' }), 'takes[1].note has a control character; remove it'],
      [
        withTake({ note: 'a'.repeat(2001) }),
        'takes[1].note has 2001 characters; at most 2000 are read',
      ],
      [withTake({ used: '52' }), 'takes[1].used needs a value such as 40 to 52 s, not "52"'],
      [
        withTake({ set: { iso: 'x: y' } }),
        'takes[1].set.iso needs a value such as 1600, not "x: y"',
      ],
      [
        withTake({ at: '2027-02-30T10:41Z' }),
        'takes[1].at needs a date and time like 2027-03-02T10:41:07Z, not "2027-02-30T10:41Z"',
      ],
      [
        `lamella day 1\n${JSON.stringify({ plan: 'a', saved: AT, takes: [TAKE, TAKE] })}`,
        'takes[2] repeats take 1 of drift',
      ],
      [
        `lamella day 1\n${JSON.stringify({ plan: 'a', saved: AT, takes: Array(1001).fill(TAKE) })}`,
        'takes has 1001 entries; at most 1000 are read',
      ],
      ...([
        [{ planned: { 'a b': {} } }, 'planned needs names of the plan, not "a b"'],
        [{ planned: { a: { iso: 'x' } } }, 'planned.a.iso needs a value such as 1600, not "x"'],
        [
          { checks: [{ ...CHECK, before: [{ done: true, at: '2027-02-30' }] }] },
          'checks[1].before[1].at needs a date and time like 2027-03-02T10:41:07Z, not "2027-02-30"',
        ],
        [
          { takes: [{ ...TAKE, before: Array(51).fill({}) }] },
          'takes[1].before has 51 entries; at most 50 are read',
        ],
        [
          { takes: [{ ...TAKE, before: [{ keep: 1 }] }] },
          'takes[1].before[1].keep needs true, false or null, not 1',
        ],
        [
          { exposures: [{ ...EXPOSURE, found: 'dark' }] },
          'exposures[1].found needs a value such as 0.3 stops under, not "dark"',
        ],
        [
          { exposures: [{ ...EXPOSURE, body: '../a' }] },
          'exposures[1].body needs a name of the plan, not "../a"',
        ],
        [
          { lifetimes: [{ shot: 'drift', at: AT, subject: 'soap', seconds: 1e9 }] },
          'lifetimes[1].seconds needs a number from 0 to 604800, not 1000000000',
        ],
      ].map(([parts, why]) => [
        `lamella day 1\n${JSON.stringify({ plan: 'a', saved: AT, ...(parts as object) })}`,
        why as string,
      ]) as [string, string][]),
      [
        `lamella day 1\n${' '.repeat(1_000_000)}`,
        'it has 1000014 characters; at most 1000000 are read',
      ],
    ] as const)
      expect(whyOf(text)).toBe(why);
  });
});

const PLAN = `shots:
  drift:
    aperture: f/11   # sharp
    preflight: { lens-clean: open }   # both
subjects: { soap: { lifetime: 90 s } }
kit: { bodies: { body-a: { sensor: 36 x 24 mm } }, lenses: { long-200: { length: 165 mm } } }
`;
/** A day with all that there may be. */
const WHOLE = {
  plan: 'a',
  saved: AT,
  planned: { drift: { aperture: 'f/16', iso: '800' } },
  checks: [
    {
      ...{ shot: 'drift', check: 'lens-clean', done: true, at: AT, by: 'op' },
      before: [{ done: true, at: '2027-03-01', by: 'ab' }],
    },
  ],
  takes: [
    {
      ...{ ...TAKE, clip: 'a.mp4', keep: true, note: 'soft', used: '1 to 2 s', set: { iso: 400 } },
      before: [{ keep: false, note: 'dark', set: { iso: '800' } }],
    },
  ],
  measurements: [
    {
      lens: 'long-200',
      row: { with: ['body-a'], ring: 'closest', field: '118 mm' },
      before: [{ field: '119 mm' }],
    },
  ],
  exposures: [EXPOSURE, { ...EXPOSURE, lights: ['bulb'] }],
  lifetimes: [70, 95].map((seconds) => ({
    ...{ shot: 'drift', at: AT, seconds, subject: 'soap' },
    before: [{ lifetime: '90 s' }],
  })),
};

/** Values in a document, at any depth. */
const placesIn = (value: unknown): number =>
  typeof value === 'object' && value !== null
    ? Object.values(value).reduce<number>((sum, one) => sum + 1 + placesIn(one), 0)
    : 0;

describe('any text', () => {
  it('is a day or refused with a reason, and leaves no trace', () => {
    const piece = fc.oneof(
      fc.constantFrom('__proto__', 'constructor', 'plan', 'saved', 'takes', 'checks', AT, 'drift'),
      fc.string(),
      fc.integer(),
      fc.constant(null),
    );
    const { tree } = fc.letrec<{ tree: unknown }>((tie) => ({
      tree: fc.oneof(
        { maxDepth: 3 },
        piece,
        fc.array(tie('tree'), { maxLength: 3 }),
        fc
          .array(fc.tuple(piece.map(String), tie('tree')), { maxLength: 4 })
          .map((pairs) => Object.fromEntries(pairs)),
      ),
    }));
    const whole = tree.map((more) => ({
      plan: 'a',
      saved: AT,
      takes: [{ ...TAKE, set: more }, more],
      checks: more,
      measurements: [{ lens: 'x', row: more }],
      extra: more,
    }));
    const text = fc
      .tuple(
        fc.oneof(tree, whole).map((one) => `lamella day 1\n${JSON.stringify(one)}`),
        fc.nat(),
        fc.string({ maxLength: 3 }),
        fc.boolean(),
      )
      .map(([made, at, put, isCut]) =>
        isCut
          ? made.slice(0, at % (made.length + 1)) + put + made.slice(at % (made.length + 1))
          : made,
      );
    fc.assert(
      fc.property(text, (given) => {
        const read = readDay(given);
        if (!read.ok) expect(read.whys.join()).not.toMatch(/\p{Cc}/u);
        expect(Object.keys(Object.prototype)).toEqual([]);
        expect(({} as Record<string, unknown>).polluted).toBeUndefined();
      }),
      { numRuns: manyRuns(400) },
    );
  });

  it('is laid into a plan without a crash, whichever part of it was forged', () => {
    const forged = fc.oneof(
      fc.constantFrom<unknown>(...['__proto__', {}, [], [{}], 0, -1, 1e308, true, '2027-13-01']),
      fc.string({ unit: 'binary', maxLength: 8 }),
      fc.constantFrom('keep: {', '# no', '\u2028', 'f/0', '0 stops', '{ a: b }', '*a', '&a b'),
    );
    fc.assert(
      fc.property(fc.nat(), forged, (at, put) => {
        let left = at % placesIn(WHOLE);
        const whole = JSON.stringify(WHOLE, (key, value) =>
          key !== '' && left-- === 0 ? put : value,
        );
        const read = readDay(`lamella day 1\n${whole}`);
        if (!read.ok) return;
        const brought = bringBack(read.day, PLAN, 'a');
        const once = brought && propose(read.day, brought.text);
        if (!once) throw new Error(whole);
        // What is written is a plan for every reader of YAML, with its own lines as they were.
        expect(() => parse(once.text, { schema: 'failsafe' })).not.toThrow();
        expect(once.text.match(/ {3}# \w+$/gm)).toEqual(['   # sharp', '   # both']);
        const again = bringBack(read.day, once.text, 'a');
        expect([again?.text, again?.done]).toEqual([once.text, []]);
        expect(propose(read.day, once.text)).toMatchObject({ text: once.text, done: [] });
      }),
      { numRuns: manyRuns(60) },
    );
  });

  it('tells keys that it does not know, and takes nothing from a prototype', () => {
    const read = readDay(
      `lamella day 1\n{"plan":"a","saved":"${AT}","__proto__":{"takes":[${JSON.stringify(TAKE)}]}}`,
    );
    expect(read).toMatchObject({ ok: true, day: { takes: [], unknown: ['__proto__'] } });
  });
});
