/** What a day shows of body and subjects: proposed where it is clear, told where it is not. */
import { describe, expect, it } from 'vitest';
import { bringBack } from '../../shared/bring-back/bring.ts';
import { propose } from '../../shared/bring-back/propose.ts';
import { readDay } from '../../shared/bring-back/read.ts';

const NAME = 'a.shootplan.yaml';
const AT = '2027-03-02T10:41:07Z';

const dayOf = (parts: Record<string, unknown>) => {
  const read = readDay(`lamella day 1\n${JSON.stringify({ plan: NAME, saved: AT, ...parts })}`);
  if (!read.ok) throw new Error(read.whys.join());
  return read.day;
};
const proposed = (parts: Record<string, unknown>, plan: string) => {
  const made = propose(dayOf(parts), plan);
  if (!made) throw new Error(plan);
  return made;
};

const exposure = (light: string, found: string, planned = '0 stops over', iso = '400') => ({
  ...{ shot: 'drift', at: AT, found, planned, body: 'body-a', iso },
  lights: [light],
});
const life = (seconds: number, ...before: readonly string[]) => ({
  ...{ shot: 'drift', at: AT, seconds, subject: 'soap' },
  before: before.map((lifetime) => ({ lifetime })),
});

const planWith = ({ bench = '', lifetime = '' } = {}): string => `kit:
  bodies:
    body-a:   # borrowed
      sensor: 36 x 24 mm   # full
${bench}subjects:
  soap:   # two parts
    kind: film
${lifetime}shots: { drift: { aperture: f/16 } }
`;
const ROW = '      bench:\n        - { set: 400, found: 0.3 stops under }\n';

describe('exposures found', () => {
  it('give the offset of the body where different lights agree', () => {
    const exposures = [
      exposure('panel', '0.3 stops under'),
      exposure('bulb', '0.1 stops under', '0.3 stops over'),
      exposure('panel', '0.2 stops under', '0 stops over', '800'),
    ];
    // (−0.3 − 0.4 − 0.2) / 3 is −0.3.
    const { text, done, kept, left } = proposed({ exposures }, planWith());
    expect(text).toBe(planWith({ bench: ROW }));
    expect(done).toEqual(['Bench of body-a: 0.3 stops under at ISO 400.']);
    expect([kept, left]).toEqual([[], []]);
    expect(proposed({ exposures }, text)).toEqual({ text, done: [], kept: [], left: [] });
  });

  it('are told where they leave open what differs', () => {
    for (const [exposures, why] of [
      [
        [exposure('panel', '0.3 stops under'), exposure('panel', '0.3 stops under')],
        'Exposure with body-a was found under one light only. A second light tells whether body or light differs.',
      ],
      [
        [exposure('panel', '0.5 stops under'), exposure('bulb', '0 stops over')],
        'Exposures found with body-a differ by light: 0.5 stops under with panel; 0 stops over with bulb. Read the lights again.',
      ],
      [
        [exposure('panel', '0.1 stops under'), exposure('bulb', '0.1 stops over')],
        'Exposure with body-a was found as planned.',
      ],
    ] as const)
      expect(proposed({ exposures }, planWith())).toEqual({
        ...{ text: planWith(), done: [], left: [] },
        kept: [why],
      });
  });

  it('add nothing to rows that the plan calculates with, or to another file', () => {
    const exposures = [exposure('panel', '0.3 stops under'), exposure('bulb', '0.3 stops under')];
    const other = planWith({ bench: ROW.replace('0.3', '0.6') });
    expect(proposed({ exposures }, other)).toEqual({
      ...{ text: other, done: [], left: [] },
      kept: ['`bench` of body-a has rows already; the day found 0.3 stops under on top of them.'],
    });
    expect(proposed({ exposures }, 'shots: { drift: { aperture: f/16 } }\n').kept).toEqual([
      'This file has no body body-a. Add to its `bench`: { set: 400, found: 0.3 stops under }',
    ]);
  });
});

describe('lifetimes counted', () => {
  const RANGE = '    lifetime: 70 to 95 s\n';

  it('give the range of their subject', () => {
    const lifetimes = [life(84.2), life(70.9), life(94.1)];
    const { text, done } = proposed({ lifetimes }, planWith());
    expect(text).toBe(planWith({ lifetime: RANGE }));
    expect(done).toEqual(['Lifetime of soap: 70 to 95 s, counted 3 times.']);
    expect(proposed({ lifetimes }, text)).toEqual({ text, done: [], kept: [], left: [] });
  });

  it('take the place of what the sheet knew, and of nothing that was changed since', () => {
    const lifetimes = [life(70, '90 s'), life(95, '90 s')];
    const plan = (lifetime: string): string =>
      planWith({ lifetime: `    lifetime: ${lifetime}   # guess\n` });
    expect(proposed({ lifetimes }, plan('90 s')).text).toBe(plan('70 to 95 s'));
    const { text, left } = proposed({ lifetimes }, plan('60 s'));
    expect(text).toBe(plan('60 s'));
    expect(left).toEqual([
      'soap: `lifetime` is 60 s in the plan and 70 to 95 s in the day. The plan is left as it is.',
    ]);
  });

  it('give nothing where one was counted', () => {
    expect(proposed({ lifetimes: [life(84)] }, planWith()).kept).toEqual([
      'Lifetime of soap was counted once, 84 s. A range needs two.',
    ]);
  });
});

it('brings nothing of it unasked', () => {
  const exposures = [exposure('panel', '0.3 stops under'), exposure('bulb', '0.3 stops under')];
  const day = dayOf({ exposures, lifetimes: [life(70), life(95)] });
  expect(bringBack(day, planWith(), NAME)).toMatchObject({ text: planWith(), done: [], left: [] });
});
