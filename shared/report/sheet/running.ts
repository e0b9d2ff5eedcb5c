/** Time-lapses in the order of shots: each is started first, and others may be shot beside it. */
import { canRunBeside, upFor } from '../../day/beside.ts';
import { NOTHING_UP, type SetUp } from '../../day/set-up.ts';
import { changesBetween, shootingOrder } from './order.ts';

export interface Run {
  readonly lapse: SetUp;
  /** What can be shot while it runs. */
  readonly beside: readonly SetUp[];
}

/** What is put up before a shot, in the order that it is shot in. */
export interface Planned {
  readonly setUp: SetUp;
  readonly changes: readonly string[];
}

/** Time-lapses first, each with the shots beside it; then the rest, in the order that rebuilds least. */
export function inOrder(setUps: readonly SetUp[]): {
  readonly runs: readonly Run[];
  readonly planned: readonly Planned[];
} {
  let left = setUps.filter(({ isLapse }) => !isLapse);
  const lapses = setUps.filter(({ isLapse }) => isLapse);
  const runs = shootingOrder(lapses).map((lapse): Run => {
    const beside = left.filter((one) => canRunBeside(lapse, one));
    left = left.filter((one) => !beside.includes(one));
    return { lapse, beside: shootingOrder(beside) };
  });
  let before = NOTHING_UP;
  const next = (setUp: SetUp): Planned => {
    const from = upFor(before, setUp);
    before = setUp;
    return { setUp, changes: changesBetween(from, setUp) };
  };
  return {
    runs,
    planned: [
      ...runs.flatMap(({ lapse, beside }) => [next(lapse), ...beside.map((one) => next(one))]),
      ...shootingOrder(left).map((one) => next(one)),
    ],
  };
}
