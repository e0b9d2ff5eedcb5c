import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import type { Sec } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import type { ShotRule } from './shot-rule.ts';

interface Facts {
  readonly takeS: number;
  readonly longestS: number;
  readonly body: string;
}

export const clipTooLong: ShotRule<Facts> = {
  name: 'clip-too-long',
  severity: 'warning',
  docs: {
    when: 'a take is longer than the longest clip that the body can record.',
    why: 'The camera stops recording at its time limit or from heat, and nobody may notice during the take.',
    remedy: 'Shorten the take, or restart before the limit and plan where the gap falls.',
    bad: [
      {
        says: 'a take over the limit',
        change: {
          'kit/bodies/body-a/longest-clip': '29 min',
          'shots/frost/take': '{ duration: 45 min }',
        },
      },
    ],
    good: [
      {
        says: 'a take exactly at the limit',
        change: {
          'kit/bodies/body-a/longest-clip': '29 min',
          'shots/frost/take': '{ duration: 29 min }',
        },
      },
    ],
  },
  check({ bench: { fields, body } }) {
    const longest = body?.fields['longest-clip'];
    const take = ifKnown(fields.take);
    if (!body || longest?.state !== 'known' || take?.duration.state !== 'known') return [];
    const { duration } = take;
    if (duration.value <= longest.value) return [];
    return [
      {
        at: duration.at,
        facts: { takeS: duration.value, longestS: longest.value, body: body.name },
        related: [{ at: longest.at, words: message`\`longest-clip\` of ${body.name}` }],
      },
    ];
  },
  words: ({ takeS, longestS, body }, say) => ({
    what: message`The take is ${say.seconds(takeS)}; ${body} stops recording after ${say.seconds(longestS)}.`,
  }),
  size: ({ takeS, longestS }) => ({ kind: 'time', value: takeS - longestS }),
  numbers: ({ takeS, longestS }) => ({ takeS, longestClipS: longestS }),
  fixes: ({ at, facts: { longestS } }) => {
    const text = KINDS.time.print(longestS as Sec, longestS % 60 === 0 ? 'min' : 's');
    return [setTo(message`Shorten the take to ${text} (the limit of the camera)`, at, text)];
  },
};
