/** What was saved of each entry: a later text tells it, so that changes of the plan are known as such. */
import { checkName, type Day, measuredName, takeName } from './day.ts';

/** Saves of one entry that differ; the plan has one of the latest. */
const MOST_GIVEN = 20;

interface Saved {
  readonly checks: readonly ({ shot: string | null; check: string } & Record<string, unknown>)[];
  readonly takes: readonly ({ shot: string; take: number } & Record<string, unknown>)[];
  readonly measurements: readonly {
    lens: string;
    row: { with: readonly string[]; ring: string } & Record<string, unknown>;
  }[];
}

/** @param text of the day, as this page made it and somebody took it */
export function give(day: Day, text: string): void {
  for (const [name, state] of statesIn(JSON.parse(text.slice(text.indexOf('\n'))))) {
    const before = day.given(name);
    if (JSON.stringify(before.at(-1)) !== JSON.stringify(state))
      day.setGiven(name, [...before, state].slice(-MOST_GIVEN));
  }
}

/** Each entry's name in the store, with what was saved of it. */
const statesIn = ({ checks, takes, measurements }: Saved): (readonly [string, object])[] => [
  ...checks.map(({ shot, check, before, ...state }) => [checkName(shot, check), state] as const),
  ...takes.map(
    ({ shot, take, at, seconds, before, ...state }) => [takeName(shot, take), state] as const,
  ),
  ...measurements.map(({ lens, row: { with: parts, ring, ...values } }) => {
    const given = { with: parts, ring };
    return [measuredName({ lens, given }), values] as const;
  }),
];
