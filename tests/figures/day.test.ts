/**
 * The figures of a day against hours that are added up by hand, and what changes them. Times of
 * rebuilding that a day leaves out are those of the table of assumptions.
 */
import { describe, expect, it } from 'vitest';
import {
  LIGHT_CHANGE,
  NEW_FILM,
  RIG_CHANGE,
  SUBJECT_CHANGE,
} from '../../shared/assumptions/table.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const TAKES = {
  'shots/frost/take': '{ duration: 10 min, count: 3, settle: 1 min }',
  'shots/skin/take': '{ duration: 15 s, count: 3, settle: 5 s }',
};
const EXACT = 'rig-change: 20 min, light-change: 3 min, subject-change: 4 min, new-film: 2 min';

const dayOf = (day: string, change: Readonly<Record<string, string>> = {}) =>
  coreWith(changed(EXAMPLE_PLAN, { day, ...TAKES, ...change })).dayFigures(PLAN)!;

const hours = (day: ReturnType<typeof dayOf>) =>
  day.shots.map(({ shot, buildFrom, begins, ends }) => [shot, buildFrom, begins, ends]);

describe('the figures of a day', () => {
  it('are null without a day', () => {
    expect(coreWith(EXAMPLE_PLAN).dayFigures(PLAN)).toBeNull();
  });

  it('add up building, films and takes', () => {
    const day = dayOf(`{ date: 2027-03-02, place: back room, start: 09:00, end: 12:00, ${EXACT} }`);
    // Frost: rig 20, a light 3, subject 4 = 27 min; 3 takes of 11 min. Skin: rig 20, the panel off and
    // the strip on 6, subject 4 = 30 min; two takes of 20 s live on one film of 40 s, so two films
    // of 2 min, and 3 times 20 s.
    expect(hours(day)).toEqual([
      ['frost', '09:00', '09:27', '10:00'],
      ['skin', '10:00', '10:30', '10:35'],
    ]);
    expect(day).toMatchObject({
      date: '2027-03-02',
      place: 'back room',
      start: '09:00',
      end: '12:00',
      availableS: 10_800,
      neededS: 5700,
      countedS: 5700,
      leastCountedS: 5700,
      mostCountedS: 5700,
      overS: -5100,
      rebuildingS: 3420,
      waitingS: 0,
      orderIsExact: true,
      drop: [],
      notToday: [],
      notCounted: [],
    });
  });

  it('assume what the day leaves out, with its ends', () => {
    const day = dayOf('{ start: 09:00, end: 12:00 }');
    const sum = (end: 'low' | 'middle' | 'high') =>
      2 * RIG_CHANGE[end] +
      3 * LIGHT_CHANGE[end] +
      2 * SUBJECT_CHANGE[end] +
      2 * NEW_FILM[end] +
      3 * 660 +
      3 * 20;
    expect([day.leastCountedS, day.countedS, day.mostCountedS]).toEqual([
      sum('low'),
      sum('middle'),
      sum('high'),
    ]);
    const rough = dayOf('{ start: 09:00, rig-change: 10 to 20 min, light-change: 1 min }');
    expect(rough.mostCountedS! - rough.leastCountedS!).toBeCloseTo(
      2 * 600 + 2 * (SUBJECT_CHANGE.high - SUBJECT_CHANGE.low) + 2 * (NEW_FILM.high - NEW_FILM.low),
      6,
    );
  });

  it('put what matters first, and what has an hour at its hour', () => {
    const first = dayOf(`{ start: 09:00, end: 17:00, ${EXACT} }`, { 'shots/frost/priority': '2' });
    expect(first.shots.map(({ shot }) => shot)).toEqual(['skin', 'frost']);
    const timed = dayOf(`{ start: 09:00, end: 17:00, ${EXACT} }`, { 'shots/frost/start': '14:00' });
    expect(hours(timed)).toEqual([
      ['skin', '09:00', '09:27', '09:32'],
      ['frost', '09:32', '14:00', '14:33'],
    ]);
    expect(timed.shots[1]).toMatchObject({ waitS: 14_280, lateS: 0 });
  });

  it('film others while one subject grows', () => {
    const day = dayOf(`{ start: 09:00, end: 17:00, ${EXACT} }`, {
      'subjects/frost-plate/ready-after': '2 h',
    });
    expect(hours(day)).toEqual([
      ['skin', '09:00', '09:27', '09:32'],
      ['frost', '09:32', '11:00', '11:33'],
    ]);
    expect(day.waitingS).toBe(3480);
  });

  it('end after midnight where the end is no later than the start', () => {
    const day = dayOf(`{ start: 22:00, end: 02:00, ${EXACT} }`, { 'shots/frost/start': '00:30' });
    expect(day.availableS).toBe(14_400);
    expect(day.shots.at(-1)).toMatchObject({ shot: 'frost', begins: '00:30', lateS: 0 });
  });

  it('say what is not counted, and are unknown for want of it', () => {
    const text = changed(EXAMPLE_PLAN, {
      day: `{ start: 09:00, end: 12:00, ${EXACT} }`,
      'shots/frost/take': TAKES['shots/frost/take'],
      'shots/skin/take': '{ count: 3 }',
    });
    const day = coreWith(text).dayFigures(PLAN)!;
    expect(day.neededS).toBeNull();
    expect(day.notCounted).toEqual(['skin']);
    expect(day.notKnown.neededS).toContain('duration');
    expect(day.countedS).toBeGreaterThan(3600);
  });

  it('have no hours of the clock without a start', () => {
    const day = dayOf(`{ ${EXACT} }`);
    expect(day.shots[0]).toMatchObject({ begins: null, beginsS: 27 * 60 });
    expect([day.start, day.availableS, day.overS]).toEqual([null, null, null]);
  });

  it('leave out what the plan leaves for another day', () => {
    const day = dayOf(`{ start: 09:00, end: 12:00, not-today: [frost], ${EXACT} }`);
    expect(day.shots.map(({ shot }) => shot)).toEqual(['skin']);
    expect(day.notToday).toEqual(['frost']);
  });
});
