/**
 * All figures of the day and of its shots, by their keys in the JSON and in its order. A key of the
 * contract that is forgotten here doesn't compile, nor one that it doesn't have.
 */
import { KINDS } from '../../quantity/index.ts';
import { clock } from '../../quantity/time-of-day.ts';
import type { DayFigures, DayStep } from '../day-figures.ts';
import type { DayJson, DayShotJson } from '../day-json.ts';
import { derive, type Figure, figureOf, known } from '../figure.ts';

type Declared<J, Given extends keyof J, F extends readonly unknown[]> = {
  readonly [K in Exclude<keyof J, Given | 'notKnown'>]: {
    readonly of: (...from: F) => Figure<NonNullable<J[K]>>;
  };
};

const told = <F extends readonly unknown[], V>(of: (...from: F) => Figure<V>) => ({ of });

export const DAY: Declared<DayJson, 'shots', [DayFigures]> = {
  date: told(({ fields }) => derive([figureOf(fields.date, 'day')], KINDS.date.print)),
  place: told(({ fields }) => figureOf(fields.place, 'day')),
  start: told(({ startS }) => derive([startS], clock)),
  end: told(({ fields }) => derive([figureOf(fields.end, 'day')], clock)),
  availableS: told(({ roomS }) => roomS),
  neededS: told(({ neededS }) => neededS),
  countedS: told(({ finishS }) => known(finishS.middle)),
  leastCountedS: told(({ finishS }) => known(finishS.low)),
  mostCountedS: told(({ finishS }) => known(finishS.high)),
  overS: told(({ overS }) => overS),
  rebuildingS: told(({ rebuildingS }) => known(rebuildingS)),
  waitingS: told(({ waitingS }) => known(waitingS)),
  breaks: told(({ startS, breaks }) =>
    derive([startS], (start) =>
      breaks.map(({ from, to }) => ({
        ...{ from: clock(start + from), to: clock(start + to) },
        ...{ fromS: from, toS: to },
      })),
    ),
  ),
  orderIsExact: told(({ isExact }) => known(isExact)),
  drop: told(({ drop }) => known(drop)),
  notToday: told(({ notToday }) => known(notToday)),
  notCounted: told(({ notCounted }) => known(notCounted)),
};

const hour = (seconds: number, { startS }: DayFigures): Figure<string> =>
  derive([startS], (start) => clock(start + seconds));

export const DAY_SHOT: Declared<DayShotJson, never, [DayStep, DayFigures]> = {
  shot: told(({ shot }) => known(shot.shot)),
  priority: told(({ shot }) => known(shot.priority)),
  buildFrom: told(({ fromS }, day) => hour(fromS, day)),
  begins: told(({ beginS }, day) => hour(beginS, day)),
  ends: told(({ endS }, day) => hour(endS, day)),
  buildFromS: told(({ fromS }) => known(fromS)),
  beginsS: told(({ beginS }) => known(beginS)),
  endsS: told(({ endS }) => known(endS)),
  rebuilt: told(({ rebuild }) => known(rebuild)),
  rebuildS: told(({ buildS }) => known(buildS)),
  builtS: told(({ builtS }) => known(builtS)),
  breakS: told(({ restS }) => known(restS)),
  waitS: told(({ waitS }) => known(waitS)),
  workS: told(({ shot, workS }) => derive([shot.takesS], (takes) => workS ?? takes)),
  lateS: told(({ lateS }) => known(lateS)),
  beside: told(({ beside }) => known(beside)),
};
