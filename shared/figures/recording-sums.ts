/** What a plan records, body by body: its cards and its batteries. */
import { countFilled, type Run, totalOf } from '../recording/filling.ts';
import type { RecordingBody, TakesOfShot } from './recording.ts';

export interface BodySums {
  readonly body: RecordingBody;
  /** In the order of the plan. */
  readonly shots: readonly TakesOfShot[];
  /** Of takes whose length is known, s. */
  readonly recordedS: number;
  /** The same with the settling time before each take. */
  readonly withSettlingS: number;
  /** Of takes whose length and bit rate are known; of stills of unknown size, as small as they may be. */
  readonly bytes: number;
  /** Shots of which the length, or the bytes, isn't known: the sums have only what is sure of them. */
  readonly untimed: readonly string[];
  readonly unweighed: readonly string[];
  /** Time-lapses whose use of a battery isn't known, or is more than one lasts. */
  readonly unpowered: readonly string[];
  /**
   * Number of cards or batteries, each changed when the next take doesn't fit; null: unknown, or
   * one take is more than one holds.
   */
  readonly cards: number | null;
  readonly batteries: number | null;
}

export const sumsByBody = (shots: readonly TakesOfShot[]): readonly BodySums[] =>
  takesByBody(shots).map(sumsOf);

/** The takes of each body, both in the order of the plan. */
export function takesByBody(shots: readonly TakesOfShot[]): readonly (readonly TakesOfShot[])[] {
  const bodies = new Map<string, TakesOfShot[]>();
  // Most shots are on the body of the shot before: no key is made for those.
  let last: TakesOfShot[] | undefined;
  for (const shot of shots) {
    const { file, entry } = shot.body.at;
    const before = last?.[0]?.body.at;
    if (before?.entry !== entry || before.file !== file) {
      const key = `${file} ${entry}`;
      last = bodies.get(key) ?? [];
      bodies.set(key, last);
    }
    last!.push(shot);
  }
  return [...bodies.values()];
}

/** The known takes of the shots, as runs of equal takes. */
export const runsOf = (
  shots: readonly TakesOfShot[],
  unit: 'takeS' | 'leastTakeBytes' | 'batteryS',
): readonly Run[] =>
  shots.flatMap((shot): Run[] => {
    const each = shot[unit];
    return each === null || shot.takes === null ? [] : [{ each, takes: shot.takes }];
  });

function sumsOf(shots: readonly TakesOfShot[]): BodySums {
  const { body } = shots[0]!;
  const times = runsOf(shots, 'takeS');
  const weights = runsOf(shots, 'leastTakeBytes');
  const without = (unit: 'takeS' | 'takeBytes' | 'batteryS'): readonly string[] =>
    shots.filter((shot) => shot[unit] === null || shot.takes === null).map(({ shot }) => shot);
  const untimed = without('takeS');
  const unweighed = without('takeBytes');
  const unpowered = without('batteryS');
  const settling = shots.map(({ settleS, takes }) => ({ each: settleS, takes: takes ?? 0 }));
  return {
    body,
    shots,
    recordedS: totalOf(times),
    withSettlingS: totalOf(times) + totalOf(settling),
    bytes: totalOf(weights),
    untimed,
    unweighed,
    unpowered,
    cards: unweighed.length === 0 && body.card ? countFilled(weights, body.card.value) : null,
    batteries:
      unpowered.length === 0 && body.battery
        ? countFilled(runsOf(shots, 'batteryS'), body.battery.value)
        : null,
  };
}
