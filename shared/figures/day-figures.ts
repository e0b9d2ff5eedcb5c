/**
 * The figures of a day: in which order its shots rebuild least, when each begins, how long all of it
 * needs, and what it goes without where that is too long.
 */
import type { Prior } from '../assumptions/assumption.ts';
import { LIGHT_CHANGE, NEW_FILM, RIG_CHANGE, SUBJECT_CHANGE } from '../assumptions/table.ts';
import { canRunBeside, upFor } from '../day/beside.ts';
import { type Break, inOrder } from '../day/breaks.ts';
import { dropped } from '../day/drop.ts';
import { dayOrder } from '../day/order.ts';
import { NOTHING_UP, type Rebuild, rebuildBetween } from '../day/set-up.ts';
import { type BuildTime, finishOf, type Job, type Step, walk } from '../day/walk.ts';
import { type Field, ifKnown } from '../plan/field.ts';
import type { Day } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import { type DayPlan, type DayShot, endsOf } from './day-plan.ts';
import {
  derive,
  type Figure,
  figureOf,
  known,
  notKnown,
  silent,
  unknownOf,
  valueIn,
} from './figure.ts';

/** A shot with its hours, in seconds from the start of the day. */
export interface DayStep {
  readonly shot: DayShot;
  readonly rebuild: Rebuild;
  /** When building begins, how long it is without breaks, and when it is done. */
  readonly fromS: number;
  readonly buildS: number;
  readonly builtS: number;
  /** Breaks from the beginning of building to the end of its takes. */
  readonly restS: number;
  /** For hour or subject, once it is built. */
  readonly waitS: number;
  readonly beginS: number;
  readonly endS: number;
  /** After its start time; 0: in time, or at any hour. */
  readonly lateS: number;
  /** Time-lapses that run by themselves when it is built. */
  readonly beside: readonly string[];
  /** null: the length of its takes isn't known, and nothing is counted for them. */
  readonly workS: number | null;
}

export interface DayFigures {
  readonly plan: DayPlan;
  readonly fields: Day;
  /** Seconds from midnight. */
  readonly startS: Figure<number>;
  /** From start to end, s. */
  readonly roomS: Figure<number>;
  /** In order, in seconds from the start of the day; empty where the start isn't known. */
  readonly breaks: readonly Break[];
  readonly steps: readonly DayStep[];
  /** From the start to the end of the last take, as far as lengths are known, with its ends, s. */
  readonly finishS: Prior;
  /** The same; unknown where the length of a shot is. */
  readonly neededS: Figure<number>;
  /** How much it is too long for the day, s; negative: what is left of the day. */
  readonly overS: Figure<number>;
  readonly rebuildingS: number;
  readonly waitingS: number;
  /** false: a better order may exist. */
  readonly isExact: boolean;
  /** The shots that a day that is too short goes without; empty: it isn't, or no shot alone fits. */
  readonly drop: readonly string[];
  /** Left for another day by the plan. */
  readonly notToday: readonly string[];
  /** Shots that can't be read or whose takes have no length: nothing is counted for them. */
  readonly notCounted: readonly string[];
}

const DAY_S = 86_400;
const MS = 1000;

type End = keyof Prior;

/** Times of rebuilding, as the day gives them or as they are assumed, s. */
interface Costs {
  readonly rig: Prior;
  readonly light: Prior;
  readonly subject: Prior;
  readonly film: Prior;
}

/** What is known of the day's hours, s. */
interface Hours {
  readonly startS: number | null;
  readonly roomS: number | null;
}

const costsOf = (day: Day): Costs => ({
  rig: endsOf(day['rig-change']) ?? RIG_CHANGE,
  light: endsOf(day['light-change']) ?? LIGHT_CHANGE,
  subject: endsOf(day['subject-change']) ?? SUBJECT_CHANGE,
  film: endsOf(day['new-film']) ?? NEW_FILM,
});

/** null: the plan has no day that can be read. */
export function dayFigures(plan: DayPlan): DayFigures | null {
  const fields = ifKnown(plan.day);
  if (!fields) return null;
  const notToday = namesIn(fields['not-today']);
  const shots = plan.shots.filter(({ shot }) => !notToday.includes(shot));
  const unread = plan.unread.filter((shot) => !notToday.includes(shot));
  const startS = figureOf(fields.start, 'day');
  const roomS = derive([startS, figureOf(fields.end, 'day')], (start, end) =>
    end > start ? end - start : end - start + DAY_S,
  );
  const costs = costsOf(fields);
  const hours = { startS: valueIn(startS) ?? null, roomS: valueIn(roomS) ?? null };
  const end = hours.roomS === null ? null : hours.roomS * MS;
  const breaks = breaksIn(fields, hours);
  const at = (level: End) => ({
    jobs: shots.map((shot) => jobOf(shot, shots, costs, { ...hours, breaks }, level)),
    build: buildTimes(shots, costs, level),
  });
  const usual = at('middle');
  const { order, isExact } = searched(shots, usual.jobs, usual.build, end);
  const walked = walk(usual.jobs, order, usual.build);
  const finishAt = (level: End): number => {
    const { jobs, build } = level === 'middle' ? usual : at(level);
    return finishOf(walk(jobs, order, build)) / MS;
  };
  const finishS = { low: finishAt('low'), middle: finishAt('middle'), high: finishAt('high') };
  const isLong = end !== null && finishS.middle * MS > end;
  const drop = isLong ? (dropped(usual.jobs, order, usual.build, end) ?? []) : [];
  const lengths = shots.map(({ takesS }) => takesS);
  const needed = (seconds: number): Figure<number> =>
    unread.length > 0
      ? silent
      : shots.length === 0
        ? notKnown(message`no shot is planned for the day`)
        : lengths.every((one) => one.known)
          ? known(seconds)
          : unknownOf(lengths);
  return {
    plan,
    fields,
    startS,
    roomS,
    breaks: breaks.map(({ from, to }) => ({ from: from / MS, to: to / MS })),
    steps: stepsOf(shots, usual.jobs, walked),
    finishS,
    neededS: needed(finishS.middle),
    overS: derive([needed(finishS.middle), roomS], (all, room) => all - room),
    rebuildingS: walked.reduce((sum, { build }) => sum + build, 0) / MS,
    waitingS: walked.reduce((sum, { wait }) => sum + wait, 0) / MS,
    isExact,
    drop: drop.map((index) => shots[index]!.shot),
    notToday,
    notCounted: [...shots.filter(({ takesS }) => !takesS.known).map(({ shot }) => shot), ...unread],
  };
}

const namesIn = (field: Field<readonly Field<string>[]>): readonly string[] =>
  (ifKnown(field) ?? []).flatMap((name) => ifKnown(name) ?? []);

/** On the clock of the day, ms from its start. */
function breaksIn({ breaks }: Day, { startS }: Hours): readonly Break[] {
  if (startS === null) return [];
  const after = (seconds: number): number => (seconds - startS + DAY_S) % DAY_S;
  return inOrder(
    (ifKnown(breaks) ?? []).flatMap((field): Break[] => {
      const hours = ifKnown(field);
      if (!hours) return [];
      const from = after(hours.from);
      return [{ from: toMs(from), to: toMs(from + ((hours.to - hours.from + DAY_S) % DAY_S)) }];
    }),
  );
}

const toMs = (seconds: number): number => Math.round(seconds * MS);

function jobOf(
  shot: DayShot,
  all: readonly DayShot[],
  costs: Costs,
  day: Hours & { readonly breaks: readonly Break[] },
  level: End,
): Job {
  const { takesS, films, ready, priority, startS, pieceS, runsOn } = shot;
  const film = films > 0 ? costs.film[level] : 0;
  const work = (takesS.known ? takesS.value : 0) + films * film;
  return {
    work: toMs(work),
    ready: toMs(ready[level]),
    start: startS === null ? null : startIn(day, startS),
    priority,
    piece: toMs(pieceS === null ? work : pieceS + film),
    runsOn,
    breaks: day.breaks,
    beside: besideOf(shot, all),
  };
}

/** The places of the shots that can be made while it runs. */
const besideOf = ({ setUp }: DayShot, all: readonly DayShot[]): readonly number[] =>
  all.flatMap((other, index) => (canRunBeside(setUp, other.setUp) ? [index] : []));

/** Of a day that ends after midnight, a start in its part after midnight is of the next day. */
function startIn({ startS, roomS }: Hours, shotS: number): number | null {
  if (startS === null) return null;
  const later = shotS - startS + DAY_S;
  return toMs(shotS < startS && roomS !== null && later <= roomS ? later : shotS - startS);
}

/** Of all pairs once: the search asks for each many times. */
function buildTimes(shots: readonly DayShot[], costs: Costs, level: End): BuildTime {
  const kept = new Map<number, number>();
  return (from, to) => {
    const key = from * shots.length + to;
    const before = kept.get(key);
    if (before !== undefined) return before;
    const { rigs, lights, subjects } = rebuildOf(shots[from], shots[to]!);
    const seconds =
      rigs * costs.rig[level] + lights * costs.light[level] + subjects * costs.subject[level];
    const time = toMs(seconds);
    kept.set(key, time);
    return time;
  };
}

const rebuildOf = (from: DayShot | undefined, to: DayShot): Rebuild =>
  rebuildBetween(upFor(from?.setUp ?? NOTHING_UP, to.setUp), to.setUp);

/** Shots that need nothing rebuilt between them are one job for the search, and stay together. */
function searched(
  shots: readonly DayShot[],
  jobs: readonly Job[],
  build: BuildTime,
  end: number | null,
): { readonly order: readonly number[]; readonly isExact: boolean } {
  const groups = new Map<string, number[]>();
  for (const [index, { setUp, priority }] of shots.entries()) {
    const { start, ready, runsOn } = jobs[index]!;
    const { shot, ...bench } = setUp;
    // Two of them may have a break between them, or something that is done while one of them runs.
    const isFree = start === null && ready === 0 && !runsOn && jobs[index]!.breaks?.length === 0;
    const key = isFree ? JSON.stringify([bench, priority]) : JSON.stringify([shot]);
    groups.set(key, [...(groups.get(key) ?? []), index]);
  }
  const members = [...groups.values()];
  const merged = members.map(
    (group): Job => ({
      ...jobs[group[0]!]!,
      work: group.reduce((sum, index) => sum + jobs[index]!.work, 0),
      beside: groupsOf(members, jobs[group[0]!]!),
    }),
  );
  const { order, isExact } = dayOrder(
    merged,
    (from, to) => build(from < 0 ? -1 : members[from]![0]!, members[to]![0]!),
    end,
  );
  return { order: order.flatMap((group) => members[group]!), isExact };
}

/** Shots of one group have the same set-up, so either all of them can be made beside it or none. */
const groupsOf = (
  groups: readonly (readonly number[])[],
  { beside = [] }: Job,
): readonly number[] =>
  groups.flatMap(([first], index) => (beside.includes(first!) ? [index] : []));

const stepsOf = (
  shots: readonly DayShot[],
  jobs: readonly Job[],
  walked: readonly Step[],
): readonly DayStep[] =>
  walked.map(({ job, from, build, built, wait, begin, late, end, rest }, index) => {
    const shot = shots[job]!;
    const before = index === 0 ? undefined : shots[walked[index - 1]!.job];
    return {
      shot,
      rebuild: rebuildOf(before, shot),
      fromS: from / MS,
      buildS: build / MS,
      builtS: built / MS,
      restS: rest / MS,
      waitS: wait / MS,
      beginS: begin / MS,
      endS: end / MS,
      lateS: late / MS,
      beside: walked
        .slice(0, index)
        .filter((other) => other.end > from && jobs[other.job]!.beside?.includes(job))
        .map((other) => shots[other.job]!.shot),
      workS: shot.takesS.known ? jobs[job]!.work / MS : null,
    };
  });
