import type { DayFigures } from '../figures/day-figures.ts';
import { type Field, ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import { below } from '../plan/place.ts';
import type { PlanEdit, PlanFix } from '../plan/problem.ts';
import { clock } from '../quantity/time-of-day.ts';
import type { Say } from '../say/say.ts';
import { allOf } from '../words/listed.ts';
import { message } from '../words/message.ts';
import type { PlanRule } from './plan-rule.ts';

/** Nobody plans a day to the minute. */
const DEAD_BAND_S = 60;
/** An end is proposed on a round time. */
const ROUND_TO_S = 300;
const DAY_S = 86_400;
/** More shots than this are counted. */
const MOST_NAMED = 3;

interface Facts {
  /** Ends of the time that is needed, and the time that there is, s. */
  readonly neededS: number;
  readonly leastS: number;
  readonly mostS: number;
  readonly availableS: number;
  readonly rebuildingS: number;
  /** Shots whose length isn't known; they count for nothing. */
  readonly untimed: number;
  readonly drop: readonly string[];
  readonly shots: number;
}

const isSure = ({ leastS, availableS }: Facts): boolean => leastS - availableS > DEAD_BAND_S;

/** Two shots that fill a day of an hour. */
const BUSY = {
  'shots/frost/take': '{ duration: 10 min, count: 3 }',
  'shots/skin/take': '{ duration: 20 s, count: 3 }',
  'shots/skin/priority': '2',
};

export const dayTooShort: PlanRule<Facts> = {
  name: 'day-too-short',
  severity: 'warning',
  docs: {
    when: 'the shots, with rebuilding between them, need more time than the day has between `start` and `end`. It is a note where that depends on times that are known roughly or assumed.',
    why: 'Takes are a small part of a day; rebuilding between shots is most of it. Who finds out in the evening has lost the shots that came last.',
    remedy:
      'Leave the shots of the lowest priority for another day, end later, or give shots the same rig and lights. `rig-change`, `light-change`, `subject-change` and `new-film` of the day replace the assumed times.',
    bad: [
      {
        says: 'an hour for two rigs',
        change: { day: '{ start: 09:00, end: 10:00, rig-change: 20 min }', ...BUSY },
      },
    ],
    good: [
      {
        says: 'a whole day',
        change: { day: '{ start: 09:00, end: 17:00 }', ...BUSY },
      },
      {
        says: 'one of them left for another day',
        change: {
          day: '{ start: 09:00, end: 10:00, rig-change: 10 min, light-change: 3 min, not-today: [skin] }',
          ...BUSY,
        },
      },
    ],
  },
  check({ day }) {
    const room = day?.roomS;
    if (!day || !room?.known) return [];
    const { finishS, rebuildingS, drop, steps, fields, notCounted } = day;
    const facts: Facts = {
      neededS: finishS.middle,
      leastS: finishS.low,
      mostS: finishS.high,
      availableS: room.value,
      rebuildingS,
      untimed: notCounted.length,
      drop,
      shots: steps.length,
    };
    if (facts.neededS - facts.availableS <= DEAD_BAND_S) return [];
    return [
      {
        at: fields.end.at,
        facts,
        severity: isSure(facts) ? 'warning' : 'note',
        related: steps
          .filter(({ shot }) => drop.includes(shot.shot))
          .map(({ shot }) => ({
            at: { ...shot.at, part: 'key' as const },
            words: message`priority ${shot.priority}`,
          })),
      },
    ];
  },
  words(facts, say) {
    const over = say.seconds(facts.neededS - facts.availableS);
    return {
      what: isSure(facts)
        ? message`The day is ${over} too short.`
        : message`Probably the day is ${over} too short.`,
      why: `${needsWords(facts, say)} ${dropWords(facts)}`,
    };
  },
  size: ({ neededS, availableS }) => ({ kind: 'time', value: neededS - availableS }),
  numbers: ({ neededS, leastS, mostS, availableS, rebuildingS }) => ({
    neededS,
    leastNeededS: leastS,
    mostNeededS: mostS,
    availableS,
    rebuildingS,
  }),
  fixes: (_, { day }) => (day ? [...leaveFor(day), ...endLater(day)] : []),
};

function needsWords(facts: Facts, say: Say): string {
  const { untimed } = facts;
  const needed = say.seconds(facts.neededS);
  const [least, most] = [say.seconds(facts.leastS), say.seconds(facts.mostS)];
  const rebuilding = say.seconds(facts.rebuildingS);
  const available = say.seconds(facts.availableS);
  const needs =
    least === most
      ? message`Its shots need ${needed}, of it ${rebuilding} for rebuilding; the day has ${available}.`
      : message`Its shots need ${needed} (${least} to ${most}), of it ${rebuilding} for rebuilding; the day has ${available}.`;
  if (untimed === 0) return needs;
  return untimed === 1
    ? message`${needs} ${untimed} shot of unknown length is not counted.`
    : message`${needs} ${untimed} shots of unknown length are not counted.`;
}

function dropWords({ drop, shots }: Facts): string {
  if (drop.length === 0)
    return shots === 1 ? message`The shot alone doesn't fit.` : message`No shot fits alone.`;
  return drop.length <= MOST_NAMED
    ? message`The others fit without ${allOf(drop.map((shot) => `\`${shot}\``))}.`
    : message`The others fit without ${drop.length} shots of lower priority.`;
}

/** What follows for the edit, where it shows them. */
function leaveFor({ drop, fields }: DayFigures): readonly PlanFix[] {
  if (drop.length === 0) return [];
  const title =
    drop.length <= MOST_NAMED
      ? message`Leave ${allOf(drop.map((shot) => `\`${shot}\``))} for another day`
      : message`Leave ${drop.length} shots for another day`;
  return [{ title, edits: added(fields['not-today'], drop) }];
}

function added(
  list: Field<readonly Field<string>[]>,
  names: readonly string[],
): readonly PlanEdit[] {
  const there = ifKnown(list)?.length ?? 0;
  if (there === 0) return [{ op: 'set', at: list.at, text: `[${names.join(', ')}]` }];
  return names.map((text, index) => ({ op: 'set', at: below(list.at, there + index), text }));
}

function endLater({ startS, finishS, fields }: DayFigures): readonly PlanFix[] {
  if (!startS.known) return [];
  const end = Math.ceil((startS.value + finishS.middle) / ROUND_TO_S) * ROUND_TO_S;
  // A day of 24 hours and more can't be written.
  if (end - startS.value >= DAY_S) return [];
  return [
    setTo(
      message`End the day at ${clock(end)}`,
      fields.end.at,
      clock(end),
      message`the day gets longer`,
    ),
  ];
}
