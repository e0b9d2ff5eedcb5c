/** What the plan said when the sheet was made, what it says now, and what the day says. */
import { describe, expect, it } from 'vitest';
import { bringBack } from '../../shared/bring-back/bring.ts';
import { readDay } from '../../shared/bring-back/read.ts';

const NAME = 'a.shootplan.yaml';
const AT = '2027-03-02T10:41:07Z';
const TAKE = { shot: 'drift', take: 1, at: AT };

const brought = (parts: Record<string, unknown>, plan: string) => {
  const read = readDay(`lamella day 1\n${JSON.stringify({ plan: NAME, saved: AT, ...parts })}`);
  if (!read.ok) throw new Error(read.whys.join());
  const made = bringBack(read.day, plan, NAME);
  if (!made) throw new Error(plan);
  return made;
};

const planWith = (clip: string): string =>
  `shootplan: 1\nshots:\n  drift:\n    aperture: f/16   # sharp\nclips:\n  drift:\n    - ${clip}   # one\n`;

describe('a value of a take', () => {
  const clip = (verdict: string): string => `{ take: 1, time: ${AT}, verdict: ${verdict} }`;
  const inThreeWays = (keep: boolean | null, before: readonly unknown[], now: string) =>
    brought({ takes: [{ ...TAKE, keep, before }] }, planWith(clip(now)));

  it('is brought where the plan is as the sheet knew it', () => {
    for (const before of [[{ keep: true }], [{ keep: true }, { keep: false }]]) {
      const { text, done, kept, left } = inThreeWays(false, before, 'keep');
      expect(text).toBe(planWith(clip('reject')));
      expect(done).toEqual(['Take 1 of drift: `verdict` is reject instead of keep.']);
      expect([kept, left]).toEqual([[], []]);
    }
  });

  it('is kept in the plan where only the plan was changed', () => {
    const { text, done, kept, left } = inThreeWays(true, [{ keep: true }], 'maybe');
    expect(text).toBe(planWith(clip('maybe')));
    expect(kept).toEqual([
      'Take 1 of drift: `verdict` was changed to maybe in the plan; the day has keep as before. The plan is kept.',
    ]);
    expect([done, left]).toEqual([[], []]);
  });

  it('is told with both values where both were changed, and where nobody can say', () => {
    for (const before of [[{ keep: true }], []]) {
      const { text, done, kept, left } = inThreeWays(false, before, 'maybe');
      expect(text).toBe(planWith(clip('maybe')));
      expect(left).toEqual([
        'Take 1 of drift: `verdict` is maybe in the plan and reject in the day. The plan is left as it is.',
      ]);
      expect([done, kept]).toEqual([[], []]);
    }
  });

  it('is never taken out of the plan', () => {
    const { text, left } = inThreeWays(null, [{ keep: true }], 'keep');
    expect(text).toBe(planWith(clip('keep')));
    expect(left).toEqual([
      'Take 1 of drift: `verdict` is keep in the plan, but was cleared in the day. The plan is left as it is.',
    ]);
  });
});

describe('a setting that the plan has otherwise since', () => {
  const planned = { drift: { aperture: 'f/16', iso: '800' } };
  const plan = (iso: string): string => `shots:\n  drift:\n    aperture: f/11\n    iso: ${iso}\n`;

  it('goes with the take that used it', () => {
    const { text, done } = brought({ planned, takes: [TAKE] }, plan('800'));
    expect(text).toContain(`- { take: 1, time: ${AT}, set: { aperture: f/16 } }`);
    expect(done).toEqual([
      'Take 1 of drift: added.',
      'Take 1 of drift keeps `aperture` f/16 of the sheet: the plan has f/11 now.',
    ]);
    expect(brought({ planned, takes: [TAKE] }, text)).toMatchObject({ text, done: [], left: [] });
  });

  it('goes with a take that is in the plan already, unless that says more', () => {
    const before = `${plan('800')}clips:\n  drift:\n    - { take: 1, time: ${AT} }   # one\n`;
    const { text } = brought({ planned, takes: [TAKE] }, before);
    expect(text).toContain(`- { take: 1, time: ${AT}, set: { aperture: f/16 } }   # one\n`);
    const more = text.replace('f/16', 'f/13');
    expect(brought({ planned, takes: [TAKE] }, more)).toMatchObject({
      text: more,
      done: [],
      left: [],
    });
  });

  it('gives way to what was set otherwise', () => {
    const take = { ...TAKE, set: { aperture: 'f/8' } };
    const { text } = brought({ planned, takes: [take] }, plan('1600'));
    expect(text).toContain('set: { aperture: f/8, iso: 800 }');
  });

  it('is nothing where both say the same in other words', () => {
    const same = { drift: { aperture: 'F11', iso: '800' } };
    expect(brought({ planned: same, takes: [TAKE] }, plan('800')).text).not.toContain('set:');
  });
});

describe('a check', () => {
  const plan = (state: string): string =>
    `shots:\n  drift:\n    aperture: f/16\n    preflight: { lens-clean: ${state} }   # both\n`;
  const check = { shot: 'drift', check: 'lens-clean', at: AT };
  const BEFORE = [{ done: true, at: '2027-03-01', by: 'ab' }];

  it('that was done and is open again, is open in the plan', () => {
    const { text, done } = brought(
      { checks: [{ ...check, done: false, before: BEFORE }] },
      plan('{ done: 2027-03-01, by: ab }'),
    );
    expect(text).toBe(plan('open'));
    expect(done).toEqual(['Check lens-clean of drift: open again.']);
  });

  it('that somebody else did meanwhile, stays', () => {
    const now = plan('{ done: 2027-03-04, by: cd }');
    for (const [done, left] of [
      [
        false,
        'Check lens-clean of drift is done in the plan (2027-03-04, cd), but open in the day. The plan is left as it is.',
      ],
      [
        true,
        'Check lens-clean of drift is done in the plan (2027-03-04, cd) and in the day (2027-03-02). The plan is left as it is.',
      ],
    ] as const)
      expect(brought({ checks: [{ ...check, done, before: BEFORE }] }, now)).toEqual({
        ...{ text: now, done: [], kept: [] },
        left: [left],
      });
  });

  it('that was brought before, follows the sheet and gives way to the plan', () => {
    const given = [{ done: false }, { done: true, at: AT }];
    const day = { checks: [{ ...check, done: true, by: 'op', before: given }] };
    expect(brought(day, plan('{ done: 2027-03-02 }')).text).toBe(
      plan('{ done: 2027-03-02, by: op }'),
    );
    const same = { checks: [{ ...check, done: true, before: given }] };
    expect(brought(same, plan('{ done: 2027-03-05, by: cd }')).kept).toEqual([
      'Check lens-clean of drift was changed to 2027-03-05, cd in the plan; the day has 2027-03-02 as before. The plan is kept.',
    ]);
  });
});

describe('a measurement', () => {
  it('that was corrected on the sheet, is corrected in the plan', () => {
    const plan = (field: string): string =>
      `kit:\n  lenses:\n    long-200:\n      bench:\n        - { with: [body-a], ring: closest, field: ${field} }   # ruler\n`;
    const row = { with: ['body-a'], ring: 'closest', field: '119 mm' };
    const day = { measurements: [{ lens: 'long-200', row, before: [{ field: '118 mm' }] }] };
    expect(brought(day, plan('118 mm')).text).toBe(plan('119 mm'));
    expect(brought(day, plan('120 mm')).text).toBe(plan('120 mm'));
  });
});
