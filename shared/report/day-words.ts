/** The day in words and as a table: for a terminal, a sheet, a hover. */
import { type Table, table } from '../api/document.ts';
import { MOST_EXACT } from '../day/order.ts';
import type { DayJson, DayShotJson } from '../figures/day-json.ts';
import { clock } from '../quantity/time-of-day.ts';
import type { Say } from '../say/say.ts';
import { allOf } from '../words/listed.ts';
import { message } from '../words/message.ts';

/** "10:25", or "+1:25" from a start that nobody gave. */
export const hourWords = (hour: string | null, seconds: number): string =>
  hour ?? `+${clock(seconds)}`;

/** "6.2 h (4.1 to 9.8 h) of 8.5 h, 2.1 h of it for rebuilding" */
export function neededWords(day: DayJson, say: Say): string {
  const { countedS, leastCountedS, mostCountedS, availableS, rebuildingS, neededS } = day;
  const [low, high] = [say.seconds(leastCountedS ?? 0), say.seconds(mostCountedS ?? 0)];
  const ends = low === high ? '' : message` (${low} to ${high})`;
  const needed = `${say.seconds(countedS ?? 0)}${ends}`;
  const rebuilding = say.seconds(rebuildingS ?? 0);
  const all =
    availableS === null
      ? message`${needed}, ${rebuilding} of it for rebuilding`
      : message`${needed} of ${say.seconds(availableS)}, ${rebuilding} of it for rebuilding`;
  return neededS === null && day.shots.length > 0 ? message`at least ${all}` : all;
}

/** Sentences on what the hours leave out and what they rest on. */
export function dayRemarks(day: DayJson, say: Say): readonly string[] {
  const { waitingS, notToday, orderIsExact, drop, notCounted, breaks } = day;
  const said = (breaks ?? []).map(({ from, to }) => message`${from} to ${to}`);
  return [
    said.length > 0 &&
      (said.length === 1 ? message`Break: ${allOf(said)}.` : message`Breaks: ${allOf(said)}.`),
    (waitingS ?? 0) > 0 && message`Waiting: ${say.seconds(waitingS ?? 0)}.`,
    notCounted?.length && message`Not counted, for want of a length: ${named(notCounted)}.`,
    drop?.length && message`Too long; the others fit without ${named(drop)}.`,
    notToday?.length && message`Left for another day: ${named(notToday)}.`,
    orderIsExact === false &&
      message`With more than ${MOST_EXACT} setups a better order may exist.`,
  ].filter((one): one is string => typeof one === 'string');
}

const named = (shots: readonly string[]): string => allOf(shots.map((shot) => `\`${shot}\``));

/** "rig, 2 lights, subject"; empty: nothing is rebuilt. */
export function rebuildWords({ rigs, lights, subjects }: DayShotJson['rebuilt']): string {
  return [
    rigs > 0 && message`rig`,
    lights > 0 && (lights === 1 ? message`${lights} light` : message`${lights} lights`),
    subjects > 0 && message`subject`,
  ]
    .filter((one): one is string => typeof one === 'string')
    .join(', ');
}

/** "09:00 rig, 2 lights; 09:25 to 09:31 `drift`." */
export function stepWords(step: DayShotJson, say: Say): string {
  const { shot, rebuilt, buildFrom, buildFromS, waitS, lateS, workS, breakS, beside } = step;
  const begins = hourWords(step.begins, step.beginsS);
  const built = rebuildWords(rebuilt);
  const before = [
    built !== '' && message`${hourWords(buildFrom, buildFromS)} ${built}`,
    waitS > 0 && message`a wait of ${say.seconds(waitS)}`,
    breakS > 0 && message`a break of ${say.seconds(breakS)}`,
  ].filter((one): one is string => typeof one === 'string');
  const takes =
    workS === null
      ? message`${begins} \`${shot}\`, of unknown length`
      : message`${begins} to ${hourWords(step.ends, step.endsS)} \`${shot}\``;
  const meanwhile = beside.length > 0 ? message`, while ${named(beside)} runs` : '';
  const words = [...before, `${takes}${meanwhile}`].join('; ');
  return lateS > 0 ? message`${words}, late.` : message`${words}.`;
}

const hasBreaks = ({ breaks }: DayJson): boolean => (breaks?.length ?? 0) > 0;

/** The day as a table: a line a shot. */
export const dayTable = (day: DayJson, say: Say): Table =>
  table(
    [
      message`begins`,
      message`ends`,
      message`shot`,
      message`priority`,
      message`rebuilt`,
      message`rebuilding`,
      message`waiting`,
      ...(hasBreaks(day) ? [message`break`] : []),
    ],
    day.shots.map((step) => [
      hourWords(step.begins, step.beginsS),
      step.workS === null ? message`unknown` : hourWords(step.ends, step.endsS),
      step.shot,
      String(step.priority),
      rebuildWords(step.rebuilt),
      step.rebuildS === 0 ? '' : say.seconds(step.rebuildS),
      step.waitS === 0 ? '' : say.seconds(step.waitS),
      ...(hasBreaks(day) ? [step.breakS === 0 ? '' : say.seconds(step.breakS)] : []),
    ]),
  );
