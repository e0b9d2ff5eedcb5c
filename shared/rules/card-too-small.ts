import { message } from '../words/message.ts';
import { AT_INTERVALS, fewerFrames } from './fewer-frames.ts';
import type { PlanRule } from './plan-rule.ts';
import { fewerTakes, neededAtOnce, partlyKnown, type TakesOver, takesOver } from './takes-over.ts';

export const cardTooSmall: PlanRule<TakesOver> = {
  name: 'card-too-small',
  severity: 'warning',
  docs: {
    when: 'the takes of the plan need more than one card of the body holds.',
    why: 'A take needs bit rate × duration, and is not split over two cards. A full card ends the take. Stills need the size of one for every frame. Prefixes are decimal, as on card labels (IEC 80000-13).',
    remedy:
      'Bring the number of cards stated and change them in time, or plan fewer, shorter or smaller takes.',
    bad: [
      {
        says: 'a day on a small card',
        change: {
          'kit/bodies/body-a/card': '2 GB',
          'shots/skin/take': '{ duration: 20 s, count: 40, settle: 5 s }',
        },
      },
      {
        says: 'more stills than a card holds',
        change: {
          'kit/bodies/body-a/card': '8 GB',
          'kit/bodies/body-a/stills': '{ size: 28 MB, write: 1 s, battery: 5 h }',
          ...AT_INTERVALS,
        },
      },
      {
        says: 'a take larger than a card',
        change: {
          'kit/bodies/body-a/card': '2 GB',
          'shots/frost/take': '{ duration: 20 min }',
        },
      },
    ],
    good: [
      {
        says: 'stills that fit',
        change: {
          'kit/bodies/body-a/card': '64 GB',
          'kit/bodies/body-a/stills': '{ size: 28 MB, write: 1 s, battery: 5 h }',
          ...AT_INTERVALS,
        },
      },
      {
        says: 'a card that holds them all',
        change: {
          'kit/bodies/body-a/card': '64 GB',
          'shots/skin/take': '{ duration: 20 s, count: 40, settle: 5 s }',
        },
      },
    ],
  },
  check: ({ shots }) => takesOver(shots, 'leastTakeBytes', (body) => body.card),
  words: (facts, say) =>
    facts.filled === null
      ? {
          what: message`One take of ${facts.shot} needs ${say.bytes(facts.each)}; a card of ${facts.body} holds ${say.bytes(facts.holds)}.`,
          why: message`The recording ends when the card is full.${partlyKnown(facts)}`,
        }
      : {
          what: message`The takes on ${facts.body} need ${say.bytes(facts.total)}; one card holds ${say.bytes(facts.holds)}.`,
          why: message`They need ${facts.filled} cards, each changed before a take that would not fit.${partlyKnown(facts)}`,
        },
  size: (facts) => ({ kind: 'percent', value: neededAtOnce(facts) / facts.holds - 1 }),
  numbers: ({ total, holds, each, filled }) => ({
    bytes: total,
    cardBytes: holds,
    takeBytes: each,
    ...(filled !== null && { cards: filled }),
  }),
  fixes: ({ at, facts }, { shots }) => [...fewerTakes(at, facts), ...fewerFrames(facts, shots)],
};
