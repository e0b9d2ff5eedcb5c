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

describe('the breaks of a day', () => {
  const BREAK = 'breaks: [ 09:40 to 10:10 ]';

  it('stop takes between two of them, and building for as long as they last', () => {
    const day = dayOf(`{ start: 09:00, end: 13:00, ${BREAK}, ${EXACT} }`);
    // Skin first is done sooner: built at 09:27, 5 min. Then 8 of 30 min of building, the break, the
    // other 22 until 10:32, and 33 min of takes.
    expect(hours(day)).toEqual([
      ['skin', '09:00', '09:27', '09:32'],
      ['frost', '09:32', '10:32', '11:05'],
    ]);
    expect(day.shots[1]).toMatchObject({ breakS: 1800, workS: 1980, waitS: 0, builtS: 5520 });
    expect(day.breaks).toEqual([{ from: '09:40', to: '10:10', fromS: 2400, toS: 4200 }]);
    // Where frost matters more: one take of 11 min until 09:38, the other two after the break.
    const first = dayOf(`{ start: 09:00, end: 13:00, ${BREAK}, ${EXACT} }`, {
      'shots/skin/priority': '2',
    });
    expect(hours(first)).toEqual([
      ['frost', '09:00', '09:27', '10:32'],
      ['skin', '10:32', '11:02', '11:07'],
    ]);
    // In the middle of building: 27 min from 09:00, 20 of them before the break.
    const early = dayOf(`{ start: 09:00, end: 13:00, breaks: [ 09:20 to 09:30 ], ${EXACT} }`);
    expect(hours(early)[0]).toEqual(['frost', '09:00', '09:37', '10:10']);
  });

  it('let a time-lapse run on', () => {
    const lapse = {
      'shots/frost/record': 'full-25',
      'shots/frost/time-lapse': '{ interval: 10 s, duration: 1 h, mode: video }',
    };
    const day = coreWith(
      changed(EXAMPLE_PLAN, {
        day: `{ start: 09:00, end: 13:00, ${BREAK}, ${EXACT} }`,
        'shots/skin/take': TAKES['shots/skin/take'],
        ...lapse,
      }),
    ).dayFigures(PLAN)!;
    expect(hours(day)[0]).toEqual(['frost', '09:00', '09:27', '10:27']);
  });

  it('count over midnight, and nowhere without a start', () => {
    const night = dayOf(`{ start: 22:00, end: 03:00, breaks: [ 23:50 to 00:20 ], ${EXACT} }`);
    expect(night.breaks).toMatchObject([{ fromS: 6600, toS: 8400 }]);
    const none = dayOf(`{ breaks: [ 12:00 to 13:00 ], ${EXACT} }`);
    expect(none.breaks).toBeNull();
    expect(none.notKnown.breaks).toBe('needs `start` of day');
  });

  it('are refused where they are no part of the day', () => {
    const problems = (breaks: string) =>
      coreWith(
        changed(EXAMPLE_PLAN, { day: `{ start: 09:00, end: 17:00, breaks: ${breaks} }`, ...TAKES }),
      )
        .findings(PLAN)
        .filter(({ rule }) => rule === 'wrong-value' || rule === 'unit')
        .map(({ what }) => what);
    expect(problems('[ 12:30 to 13:15 ]')).toEqual([]);
    expect(problems('[ 18:00 to 18:30 ]')).toEqual([
      'The break 18:00 to 18:30 begins outside the day.',
    ]);
    expect(problems('[ 12:00 to 12:00 ]')).toEqual(['The break 12:00 to 12:00 has no length.']);
    expect(problems('[ half past twelve ]')).toHaveLength(1);
  });

  it('are said on the sheet and drawn over its hours', () => {
    const text = changed(EXAMPLE_PLAN, {
      day: `{ start: 09:00, end: 13:00, ${BREAK}, ${EXACT} }`,
      ...TAKES,
    });
    const { day } = coreWith(text).sheet(PLAN, { isWrittenOn: true });
    expect(day?.remarks).toContain('Break: 09:40 to 10:10.');
    expect(day?.drawing.words).toContain('a break of 30 min; 10:32 to 11:05 `frost`');
    expect(JSON.stringify(day?.drawing.picture)).toContain('"data-break":"09:40"');
  });

  it('make a day too short that was long enough', () => {
    const rules = (breaks: string) =>
      coreWith(
        changed(EXAMPLE_PLAN, { day: `{ start: 09:00, end: 11:00, ${breaks}${EXACT} }`, ...TAKES }),
      )
        .findings(PLAN)
        .map(({ rule }) => rule);
    expect(rules('')).not.toContain('day-too-short');
    expect(rules(`${BREAK}, `)).toContain('day-too-short');
  });
});
