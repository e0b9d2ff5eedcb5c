import { message } from '../words/message.ts';
import type { PlanRule } from './plan-rule.ts';
import { fewerTakes, neededAtOnce, partlyKnown, type TakesOver, takesOver } from './takes-over.ts';

export const batteryShort: PlanRule<TakesOver> = {
  name: 'battery-short',
  severity: 'warning',
  docs: {
    when: 'the takes of the plan run longer than one battery of the body lasts.',
    why: 'An empty battery ends the take. Setting up, focusing and waiting with the screen on use more. Bring a charged spare for every battery in the count, and keep batteries warm when it is cold. A time-lapse counts by the share of a battery that it uses.',
    remedy: 'Bring the number of charged batteries stated and one more, or use mains power.',
    bad: [
      {
        says: 'a day on one battery',
        change: {
          'kit/bodies/body-a/battery': '30 min',
          'shots/skin/take': '{ duration: 30 s, count: 80, settle: 5 s }',
        },
      },
    ],
    good: [
      {
        says: 'half an hour of takes on 90 minutes',
        change: {
          'kit/bodies/body-a/battery': '90 min',
          'shots/skin/take': '{ duration: 30 s, count: 60, settle: 5 s }',
        },
      },
    ],
  },
  check: ({ shots }) => takesOver(shots, 'batteryS', (body) => body.battery),
  words: (facts, say) =>
    facts.filled === null
      ? {
          what: message`One take of ${facts.shot} is ${say.seconds(facts.each)}; a battery of ${facts.body} lasts ${say.seconds(facts.holds)}.`,
          why: message`The recording ends when the battery is empty.${partlyKnown(facts)}`,
        }
      : {
          what: message`The takes on ${facts.body} run ${say.seconds(facts.total)}; one battery lasts ${say.seconds(facts.holds)}.`,
          why: message`They need ${facts.filled} batteries, changed between takes; setting up needs more.${partlyKnown(facts)}`,
        },
  size: (facts) => ({ kind: 'time', value: neededAtOnce(facts) - facts.holds }),
  numbers: ({ total, holds, each, filled }) => ({
    recordedS: total,
    batteryS: holds,
    takeS: each,
    ...(filled !== null && { batteries: filled }),
  }),
  fixes: ({ at, facts }) => fewerTakes(at, facts),
};
