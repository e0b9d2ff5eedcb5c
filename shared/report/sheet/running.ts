/** Time-lapses in the order of shots: each is started first, and others may be shot beside it. */
import { NOTHING_UP, type SetUp } from '../../day/set-up.ts';
import { changesBetween, shootingOrder } from './order.ts';

/** A set-up, and whether it runs by itself for its time. */
export interface Running extends SetUp {
  readonly body: string | null;
  readonly isLapse: boolean;
}

interface Run {
  readonly lapse: Running;
  /** What can be shot while it runs. */
  readonly beside: readonly Running[];
}

/** What is put up before a shot, in the order that it is shot in. */
export interface Planned {
  readonly setUp: Running;
  readonly changes: readonly string[];
}

/** Time-lapses first, each with the shots beside it; then the rest, in the order that rebuilds least. */
export function inOrder(setUps: readonly Running[]): {
  readonly runs: readonly Run[];
  readonly planned: readonly Planned[];
} {
  let left = setUps.filter(({ isLapse }) => !isLapse);
  const lapses = setUps.filter(({ isLapse }) => isLapse);
  const runs = (shootingOrder(lapses) as readonly Running[]).map((lapse): Run => {
    const beside = left.filter((one) => canRunBeside(lapse, one));
    left = left.filter((one) => !beside.includes(one));
    return { lapse, beside: shootingOrder(beside) as readonly Running[] };
  });
  let before = NOTHING_UP;
  const next = (setUp: Running, from = before): Planned => {
    before = setUp;
    return { setUp, changes: changesBetween(from, setUp) };
  };
  return {
    runs,
    planned: [
      ...runs.flatMap(({ lapse, beside }) => [
        next(lapse),
        // What the time-lapse has up stays up.
        ...beside.map((one, index) => next(one, index === 0 ? besides(lapse, one) : undefined)),
      ]),
      ...(shootingOrder(left) as readonly Running[]).map((one) => next(one)),
    ],
  };
}

const besides = ({ lights }: SetUp, other: SetUp): SetUp => ({
  ...NOTHING_UP,
  lights: lights.filter(({ name }) => other.lights.some((one) => one.name === name)),
});

/** It touches nothing that the time-lapse needs: no part, no subject, and no light of it moves. */
function canRunBeside(lapse: Running, other: Running): boolean {
  const places = new Map(lapse.lights.map(({ name, place }) => [name, place]));
  return (
    lapse.body !== null &&
    other.body !== null &&
    !other.parts.some((part) => lapse.parts.includes(part)) &&
    (other.subject === null || other.subject !== lapse.subject) &&
    other.lights.every(({ name, place }) => (places.get(name) ?? place) === place)
  );
}
