/** The total of a plan's takes on one body, against the capacity of its card or battery. */

import type { Limit, RecordingBody, TakesOfShot } from '../figures/recording.ts';
import { runsOf, takesByBody } from '../figures/recording-sums.ts';
import { setTo } from '../plan/fixes.ts';
import { below, type Place } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import { countFilled, totalOf } from '../recording/filling.ts';
import { message } from '../words/message.ts';
import type { ShotSummary } from './plan-rule.ts';
import type { Observation } from './rule.ts';

export interface TakesOver {
  readonly body: string;
  /** Bytes or seconds of the known takes. */
  readonly total: number;
  readonly holds: number;
  /** How many are filled; null: a single take is more than one holds. */
  readonly filled: number | null;
  /** The shot that needs most, where the finding stands. */
  readonly shot: string;
  readonly each: number;
  /** Shots of unknown size, which could only add to it. */
  readonly notCounted: number;
  /** Stills of unknown size are in it, as small as they may be. */
  readonly hasAssumed: boolean;
  /** Takes of that shot that would all fit, with all others as they are; 0: none would. */
  readonly wouldFit: number;
}

type Unit = 'batteryS' | 'leastTakeBytes';

/** One observation for each body of which the takes need more than one card, or battery, holds. */
export function takesOver(
  shots: readonly ShotSummary[],
  unit: Unit,
  limitOf: (body: RecordingBody) => Limit | null,
): readonly Observation<TakesOver>[] {
  // Only limits that are known are summed up: this runs whenever any shot's takes change.
  return takesByBody(shots.flatMap(({ takes }) => takes ?? [])).flatMap((ofBody) => {
    const { body } = ofBody[0]!;
    const limit = limitOf(body);
    if (!limit) return [];
    const runs = runsOf(ofBody, unit);
    const filled = countFilled(runs, limit.value);
    if (filled !== null && filled <= 1) return [];
    const total = totalOf(runs);
    const most = largest(ofBody, unit, filled === null);
    const each = most[unit]!;
    const rest = total - each * most.takes!;
    const left = limit.value - rest;
    const key = limit.at.path.at(-1);
    return [
      {
        at: most.at,
        facts: {
          body: body.name,
          total,
          holds: limit.value,
          filled,
          shot: most.shot,
          each,
          notCounted: ofBody.length - runs.length,
          hasAssumed: unit === 'leastTakeBytes' && ofBody.some(isAssumed),
          wouldFit: Math.max(0, Math.floor(left / each)),
        },
        related: [{ at: limit.at, words: message`\`${String(key)}\` of ${body.name}` }],
      },
    ];
  });
}

const isAssumed = ({ takeBytes, leastTakeBytes }: TakesOfShot): boolean =>
  takeBytes === null && leastTakeBytes !== null;

/** By all of its takes; where one take alone is too much, by one take. */
function largest(shots: readonly TakesOfShot[], unit: Unit, byOne: boolean): TakesOfShot {
  const size = (shot: TakesOfShot): number => (shot[unit] ?? 0) * (byOne ? 1 : (shot.takes ?? 0));
  return shots.reduce((most, next) => (size(next) > size(most) ? next : most));
}

/** Fewer takes of the shot that needs most, where they alone would do. */
export function fewerTakes(at: Place, { shot, wouldFit, filled }: TakesOver): readonly PlanFix[] {
  if (filled === null || wouldFit < 1) return [];
  const takes = wouldFit === 1 ? message`one take` : message`${wouldFit} takes`;
  return [setTo(message`Plan ${takes} of ${shot}`, below(at, 'count'), String(wouldFit))];
}

/** What has to fit: all takes, or the one take that is too large by itself. */
export const neededAtOnce = ({ filled, each, total }: TakesOver): number =>
  filled === null ? each : total;

export const partlyKnown = ({ notCounted, hasAssumed }: TakesOver): string =>
  (hasAssumed ? message` Stills of unknown size are counted with 0.3 bytes a pixel.` : '') +
  (notCounted === 0
    ? ''
    : notCounted === 1
      ? message` One shot is not counted because its recording is unknown.`
      : message` ${notCounted} shots are not counted because their recording is unknown.`);
