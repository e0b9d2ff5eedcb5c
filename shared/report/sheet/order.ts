/**
 * The order of shots that rebuilds least: rigs cost most, then lights, then the subject; where
 * nothing is won, shots stay as the plan has them.
 */
import { isSameRig, type SetUp } from '../../day/set-up.ts';
import { message } from '../../words/message.ts';

/** Whatever the rest, one rig less to build is worth more than all lights of a shot. */
const RIG = 10_000;
const PART = 100;
const LIGHT = 10;
const SUBJECT = 1;

/** Exactly, up to so many different set-ups: every further one doubles the work. */
const MOST_EXACT = 11;

export function changesBetween(a: SetUp, b: SetUp): readonly string[] {
  const rig = isSameRig(a, b)
    ? []
    : [b.rig === null ? message`no rig is named` : message`rig \`${b.rig}\``];
  const names = new Map(a.lights.map(({ name, place }) => [name, place]));
  const lights = b.lights.flatMap(({ name, place }) => {
    const before = names.get(name);
    names.delete(name);
    if (before === undefined) return [message`light \`${name}\` on`];
    return before === place ? [] : [message`light \`${name}\` moved or dimmed`];
  });
  const off = [...names.keys()].map((name) => message`light \`${name}\` off`);
  const subject =
    a.subject === b.subject || b.subject === null ? [] : [message`subject \`${b.subject}\``];
  return [...rig, ...lights, ...off, ...subject];
}

function cost(a: SetUp, b: SetUp): number {
  const parts = isSameRig(a, b) ? 0 : RIG + PART * apart(a.parts, b.parts);
  const lights = LIGHT * apart(a.lights.map(placeText), b.lights.map(placeText));
  return parts + lights + (a.subject === b.subject ? 0 : SUBJECT);
}

const placeText = ({ name, place }: SetUp['lights'][number]): string => `${name} ${place}`;

/** How many of either are not in the other. */
function apart(a: readonly string[], b: readonly string[]): number {
  const [left, right] = [new Set(a), new Set(b)];
  return (
    [...left].filter((one) => !right.has(one)).length +
    [...right].filter((one) => !left.has(one)).length
  );
}

/** Rebuilds of rig or light on the way through `setUps`; putting up the first is none. */
export const rebuilds = (setUps: readonly SetUp[]): number =>
  setUps.filter((next, index) => index > 0 && cost(setUps[index - 1]!, next) >= LIGHT).length;

/** @returns the same set-ups, in the order that rebuilds least */
export function shootingOrder(setUps: readonly SetUp[]): readonly SetUp[] {
  const groups = new Map<string, SetUp[]>();
  for (const setUp of setUps) {
    const key = JSON.stringify([setUp.rig, setUp.parts, setUp.lights, setUp.subject]);
    groups.set(key, [...(groups.get(key) ?? []), setUp]);
  }
  const kinds = [...groups.values()];
  const route = kinds.length <= MOST_EXACT ? cheapest(kinds) : nearestNext(kinds);
  return route.flat();
}

/** Held and Karp's way: the cheapest route over every set of set-ups and each of its ends. */
function cheapest(kinds: readonly (readonly SetUp[])[]): readonly (readonly SetUp[])[] {
  const count = kinds.length;
  if (count < 2) return kinds;
  const costs = kinds.map(([a]) => kinds.map(([b]) => cost(a!, b!)));
  const best = new Map<number, { cost: number; before: number }>();
  const keyOf = (set: number, end: number): number => set * count + end;
  for (let end = 0; end < count; end++) best.set(keyOf(1 << end, end), { cost: 0, before: -1 });
  for (let set = 1; set < 1 << count; set++)
    for (let end = 0; end < count; end++) {
      const here = best.get(keyOf(set, end));
      if (!here) continue;
      for (let next = 0; next < count; next++) {
        if (set & (1 << next)) continue;
        const key = keyOf(set | (1 << next), next);
        const total = here.cost + costs[end]![next]!;
        const known = best.get(key);
        if (!known || total < known.cost) best.set(key, { cost: total, before: end });
      }
    }
  const all = (1 << count) - 1;
  let end = 0;
  for (let other = 1; other < count; other++)
    if (best.get(keyOf(all, other))!.cost < best.get(keyOf(all, end))!.cost) end = other;
  const route: number[] = [];
  for (let set = all; end >= 0; ) {
    route.unshift(end);
    const { before } = best.get(keyOf(set, end))!;
    set &= ~(1 << end);
    end = before;
  }
  // Backwards costs the same: begin where the plan does.
  if (route[0]! > route.at(-1)!) route.reverse();
  return route.map((index) => kinds[index]!);
}

/** From each the cheapest of those left, the earliest in the plan where several are. */
function nearestNext(kinds: readonly (readonly SetUp[])[]): readonly (readonly SetUp[])[] {
  const left = [...kinds];
  const route = [left.shift()!];
  while (left.length > 0) {
    const [here] = route.at(-1)!;
    let next = 0;
    for (let index = 1; index < left.length; index++)
      if (cost(here!, left[index]![0]!) < cost(here!, left[next]![0]!)) next = index;
    route.push(...left.splice(next, 1));
  }
  return route;
}
