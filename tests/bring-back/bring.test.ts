import { describe, expect, it } from 'vitest';
import { bringBack } from '../../shared/bring-back/bring.ts';
import type { Day } from '../../shared/bring-back/day.ts';
import { readDay } from '../../shared/bring-back/read.ts';

const NAME = 'low-water.shootplan.yaml';
const PLAN = `shootplan: 1
title: Low Water   # working title
kit:
  lenses:
    long-200:   # borrowed
      focal-length: 200 mm
      bench:
        - { with: [body-a], ring: closest, field: 143 mm }   # steel ruler
shots:
  # the quick one
  drift:
    aperture: f/16
    preflight: { lens-clean: open }   # both sides
  still:
    aperture: f/8
preflight:
  once:
    cards-formatted: open   # both cards
  every-shot: [focus-at-full-size]
clips:
  drift:
    - file: media/0007.mp4   # from the card
      note: soft
`;

const AT = '2027-03-02T10:41:07+01:00';

const day = (parts: Record<string, unknown>): Day => {
  const read = readDay(`lamella day 1\n${JSON.stringify({ plan: NAME, saved: AT, ...parts })}`);
  if (!read.ok) throw new Error(read.whys.join());
  return read.day;
};

const WHOLE = {
  checks: [
    { shot: null, check: 'cards-formatted', done: true, at: AT, by: 'op' },
    { shot: 'drift', check: 'lens-clean', done: true, at: AT },
    { shot: 'still', check: 'focus-at-full-size', done: true, at: AT, by: 'op' },
    { shot: 'still', check: 'lens-clean', done: false, at: AT },
  ],
  takes: [
    {
      shot: 'drift',
      take: 1,
      at: AT,
      clip: '0007.mp4',
      keep: true,
      note: 'soft',
      used: '40 to 52 s',
    },
    {
      shot: 'drift',
      take: 2,
      at: AT,
      keep: false,
      note: "it's gone: # really",
      set: { aperture: 'F11', iso: 1600 },
    },
    { shot: 'still', take: 1, at: AT, clip: 'C0008.MP4', keep: null },
  ],
  measurements: [
    { lens: 'long-200', row: { with: ['body-a'], ring: 'closest', 'working-distance': '1277 mm' } },
    { lens: 'long-200', row: { with: ['body-a', 'tube-36'], ring: 'closest', field: '118 mm' } },
  ],
};

describe('a day brought back', () => {
  it('stands in the plan, which keeps its comments and layout', () => {
    const brought = bringBack(day(WHOLE), PLAN, NAME);
    expect(brought?.left).toEqual([]);
    expect(brought?.text).toBe(`shootplan: 1
title: Low Water   # working title
kit:
  lenses:
    long-200:   # borrowed
      focal-length: 200 mm
      bench:
        - { with: [body-a], ring: closest, field: 143 mm, working-distance: 1277 mm }   # steel ruler
        - { with: [body-a, tube-36], ring: closest, field: 118 mm }
shots:
  # the quick one
  drift:
    aperture: f/16
    preflight: { lens-clean: { done: 2027-03-02 } }   # both sides
  still:
    aperture: f/8
    preflight:
      focus-at-full-size: { done: 2027-03-02, by: op }
preflight:
  once:
    cards-formatted: { done: 2027-03-02, by: op }   # both cards
  every-shot: [focus-at-full-size]
clips:
  drift:
    - file: media/0007.mp4   # from the card
      note: soft
      take: 1
      time: ${AT}
      verdict: keep
      used: 40 to 52 s
    - { take: 2, time: ${AT}, verdict: reject, note: "it's gone: # really", set: { aperture: f/11, iso: 1600 } }
  still:
    - { file: C0008.MP4, take: 1, time: ${AT} }
`);
  });

  it('brings nothing twice', () => {
    const once = bringBack(day(WHOLE), PLAN, NAME);
    expect(bringBack(day(WHOLE), once?.text ?? '', NAME)).toEqual({
      text: once?.text,
      done: [],
      kept: [],
      left: [],
    });
  });

  it('tells and leaves what says something else in the plan', () => {
    const once = bringBack(day(WHOLE), PLAN, NAME)?.text ?? '';
    const edited = once
      .replace('verdict: keep', 'verdict: maybe')
      .replace('f/11', 'f/13')
      .replace('field: 118 mm', 'field: 120 mm')
      .replace('by: op }   # both', 'by: ab }   # both');
    const again = bringBack(day(WHOLE), edited, NAME);
    expect(again?.text).toBe(edited);
    expect(again?.done).toEqual([]);
    expect(again?.left).toEqual([
      'Check cards-formatted is done in the plan (2027-03-02, ab) and in the day (2027-03-02, op). The plan is left as it is.',
      'Take 1 of drift: `verdict` is maybe in the plan and keep in the day. The plan is left as it is.',
      'Take 2 of drift: `aperture` is f/13 in the plan and f/11 in the day. The plan is left as it is.',
      'Measurement of long-200 at closest: `field` is 120 mm in the plan and 118 mm in the day. The plan is left as it is.',
    ]);
  });

  it('tells what the plan has no place for', () => {
    const { text, left } = bringBack(
      day({
        checks: [{ shot: 'gone', check: 'lens-clean', done: true, at: AT }],
        takes: [{ shot: 'gone', take: 1, at: AT, colour: 'red' }],
        measurements: [{ lens: 'gone', row: { with: [], ring: 'closest', field: '3 mm' } }],
      }),
      PLAN,
      'other.shootplan.yaml',
    )!;
    expect(text).toBe(PLAN);
    expect(left).toEqual([
      'takes[1].colour is not known here; it is left out.',
      `The day is of ${NAME}; the plan is other.shootplan.yaml. Check that they belong together.`,
      'Check lens-clean of gone: the plan has no such shot.',
      'Take 1 of gone: the plan has no such shot.',
      'Measurement of gone at closest: this file has no such lens. Add the row where the lens is.',
    ]);
  });

  it('leaves a plan whose text has errors', () => {
    expect(bringBack(day(WHOLE), `${PLAN}  still: [\n`, NAME)).toBeNull();
  });
});
