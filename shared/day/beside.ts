/** What can be shot while a time-lapse runs by itself. */
import { NOTHING_UP, type SetUp } from './set-up.ts';

/** It touches nothing that the time-lapse needs: no part, no subject, and no light of it moves. */
export function canRunBeside(lapse: SetUp, other: SetUp): boolean {
  const places = new Map(lapse.lights.map(({ name, place }) => [name, place]));
  return (
    lapse.isLapse &&
    lapse.body !== null &&
    other.body !== null &&
    !other.parts.some((part) => lapse.parts.includes(part)) &&
    (other.subject === null || other.subject !== lapse.subject) &&
    other.lights.every(({ name, place }) => (places.get(name) ?? place) === place)
  );
}

/** What is up already for a shot after another. What a time-lapse has up stays up for it. */
export const upFor = (before: SetUp, next: SetUp): SetUp =>
  canRunBeside(before, next)
    ? {
        ...NOTHING_UP,
        lights: before.lights.filter(({ name }) => next.lights.some((one) => one.name === name)),
      }
    : before;
