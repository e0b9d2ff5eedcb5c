import type { DayStep } from '../figures/day-figures.ts';
import { setTo } from '../plan/fixes.ts';
import type { Place } from '../plan/place.ts';
import { clock } from '../quantity/time-of-day.ts';
import { message } from '../words/message.ts';
import type { PlanRule } from './plan-rule.ts';

/** Nobody plans a day to the minute. */
const DEAD_BAND_S = 60;
/** A start is proposed on a round time. */
const ROUND_TO_S = 300;

interface Facts {
  readonly shot: string;
  /** Seconds from midnight before the day. */
  readonly startS: number;
  readonly reachedS: number;
  readonly lateS: number;
  /** What it waits for last. */
  readonly waitsFor: 'subject' | 'building';
  readonly subject: string | null;
}

export const shotStartsLate: PlanRule<Facts> = {
  name: 'shot-starts-late',
  severity: 'warning',
  docs: {
    when: 'a shot has a `start`, and no order of the day has it built and its subject ready by then.',
    why: 'What has an hour of its own, as daylight through a window, does not wait for the camera.',
    remedy:
      'Start the shot later, begin the day earlier, or leave what comes before it for another day.',
    bad: [
      {
        says: 'before anything is built',
        change: {
          day: '{ start: 09:00, end: 18:00, rig-change: 20 min }',
          'shots/frost/start': '09:10',
          'shots/frost/take': '{ duration: 60 s }',
        },
      },
      {
        says: 'before the subject is ready',
        change: {
          day: '{ start: 09:00, end: 18:00 }',
          'subjects/frost-plate/ready-after': '3 h',
          'shots/frost/start': '11:00',
          'shots/frost/take': '{ duration: 60 s }',
        },
      },
    ],
    good: [
      {
        says: 'in the afternoon',
        change: {
          day: '{ start: 09:00, end: 18:00 }',
          'shots/frost/start': '15:00',
          'shots/frost/take': '{ duration: 60 s }',
        },
      },
    ],
  },
  check({ day }) {
    if (!day?.startS.known) return [];
    const dayStartS = day.startS.value;
    return day.steps
      .filter(({ lateS }) => lateS > DEAD_BAND_S)
      .map((step) => ({
        at: step.shot.startAt,
        facts: {
          shot: step.shot.shot,
          startS: dayStartS + step.beginS - step.lateS,
          reachedS: dayStartS + step.beginS,
          lateS: step.lateS,
          waitsFor: waitsFor(step),
          subject: step.shot.setUp.subject,
        },
        related: startOf(day.fields.start, dayStartS),
      }));
  },
  words: ({ shot, startS, reachedS, lateS, waitsFor: what, subject }, say) => ({
    what: message`\`${shot}\` can't begin at ${clock(startS)}; the day reaches it at ${clock(reachedS)}.`,
    why:
      what === 'subject'
        ? message`It is ${say.seconds(lateS)} late, and ${subject ?? message`its subject`} isn't ready before.`
        : message`It is ${say.seconds(lateS)} late, with building and what comes before it.`,
  }),
  size: ({ lateS }) => ({ kind: 'time', value: lateS }),
  numbers: ({ lateS }) => ({ lateS }),
  fixes({ at, facts: { reachedS } }) {
    const start = Math.ceil(reachedS / ROUND_TO_S) * ROUND_TO_S;
    return [setTo(message`Start it at ${clock(start)}`, at, clock(start))];
  },
};

const waitsFor = ({ waitS }: DayStep): Facts['waitsFor'] => (waitS > 0 ? 'subject' : 'building');

const startOf = (field: { readonly at: Place }, startS: number) => [
  { at: field.at, words: message`the day starts at ${clock(startS)}` },
];
