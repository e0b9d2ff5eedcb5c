/** The day as the plan writes it, with the times of its shots: all that its figures follow from. */
import type { Prior } from '../assumptions/assumption.ts';
import type { SetUp } from '../day/set-up.ts';
import { type Field, ifKnown, isKnown } from '../plan/field.ts';
import type { Day } from '../plan/generated/types.ts';
import type { FileId, Place } from '../plan/place.ts';
import type { Bench } from './bench.ts';
import { setUpOf } from './day-set-up.ts';
import { derive, type Figure, figureOf, known, valueIn } from './figure.ts';
import type { ShotFigures } from './shot-figures.ts';
import { natureOf } from './subject-kinds.ts';
import { takeLengthOf, takesOf } from './take-length.ts';

/** A shot as the day needs it. Separate data, so that other changes of a shot don't affect it. */
export interface DayShot {
  readonly shot: string;
  /** The shot's entry. */
  readonly at: Place;
  readonly setUp: SetUp;
  /** 1 is filmed first and dropped last. */
  readonly priority: number;
  /** When its first take has to begin, s from midnight; null: at any hour. */
  readonly startS: number | null;
  readonly startAt: Place;
  /** Takes and waits before them, s. */
  readonly takesS: Figure<number>;
  /** One take with the wait before it, which no break interrupts, s; null: all of it is one. */
  readonly pieceS: number | null;
  /** A time-lapse, once begun, needs nobody. */
  readonly runsOn: boolean;
  /** Films or bubbles that are made for its takes. */
  readonly films: number;
  /** How long its subject grows, dries or settles, s. */
  readonly ready: Prior;
}

export interface DayPlan {
  readonly file: FileId;
  readonly day: Field<Day>;
  /** In the order of the plan. */
  readonly shots: readonly DayShot[];
  /** Shots that can't be read. */
  readonly unread: readonly string[];
}

const AT_ONCE: Prior = { middle: 0, low: 0, high: 0 };

/** The value with the ends that it was written with; undefined where it isn't known. */
export function endsOf(field: Field<number>): Prior | undefined {
  if (!isKnown(field)) return undefined;
  const { value, range } = field;
  return { middle: value, low: range?.low ?? value, high: range?.high ?? value };
}

export function dayShotOf(bench: Bench, figures: ShotFigures): DayShot {
  const { fields, subject } = bench;
  const take = ifKnown(fields.take);
  const settle = take === undefined ? known(0) : orZero(take.settle, bench.shot);
  const onceS = derive([takeLengthOf(bench), settle], (runs, waits) => runs + waits);
  const takes = takesOf(bench);
  return {
    shot: bench.shot,
    at: bench.at,
    setUp: setUpOf(bench),
    priority: ifKnown(fields.priority) ?? 1,
    startS: ifKnown(fields.start) ?? null,
    startAt: fields.start.at,
    takesS: bench.stack
      ? figures.stackTimeS
      : derive([onceS, takes], (each, count) => each * count),
    pieceS: bench.stack ? null : (valueIn(onceS) ?? null),
    runsOn: bench.timeLapse !== null,
    films: filmsFor(bench, figures, valueIn(takes) ?? 1, valueIn(onceS)),
    ready: (subject && endsOf(subject.fields['ready-after'])) ?? AT_ONCE,
  };
}

const orZero = (field: Field<number>, shot: string): Figure<number> =>
  field.state === 'missing' ? known(0) : figureOf(field, shot);

/** As many as outlive the takes; one a take where nobody knows how long they last. */
function filmsFor(
  { subject }: Bench,
  { lifeS }: ShotFigures,
  takes: number,
  onceS: number | undefined,
): number {
  if (natureOf(subject)?.isFilm !== true) return 0;
  const life = valueIn(lifeS);
  const each = life === undefined || onceS === undefined ? 1 : Math.floor(life / onceS);
  return Math.max(1, Math.ceil(takes / Math.max(1, each)));
}
