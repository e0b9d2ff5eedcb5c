import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import type { Sec } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import type { ShotRule } from './shot-rule.ts';

interface Facts {
  readonly takeS: number;
  readonly longestS: number;
  /** The body, or the mode where that has a limit of its own. */
  readonly by: string;
}

export const clipTooLong: ShotRule<Facts> = {
  name: 'clip-too-long',
  severity: 'warning',
  docs: {
    when: 'a take is longer than the longest clip that the body, or its recording mode, can record.',
    why: 'The camera stops recording at its time limit or from heat, and nobody may notice during the take. Modes of high frame rate often have limits of seconds.',
    remedy: 'Shorten the take, or restart before the limit and plan where the gap falls.',
    bad: [
      {
        says: 'a take over the limit',
        change: {
          'kit/bodies/body-a/longest-clip': '29 min',
          'shots/frost/take': '{ duration: 45 min }',
        },
      },
      {
        says: 'a take over the limit of its mode',
        change: {
          'kit/bodies/body-a/recording-modes/full-25':
            '{ resolution: 1920 x 1080, rate: 25 fps, bitrate: 30 Mb/s, area: 36 x 20.25 mm, longest-clip: 10 s }',
          'shots/frost/take': '{ duration: 15 s }',
          'shots/skin/take': '{ duration: 10 s, settle: 5 s }',
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
  check({ bench: { fields, body, recording } }) {
    const own = recording?.fields['longest-clip'];
    const isOwn = own !== undefined && own.state !== 'missing';
    const longest = isOwn ? own : body?.fields['longest-clip'];
    const take = ifKnown(fields.take);
    if (!body || longest?.state !== 'known' || take?.duration.state !== 'known') return [];
    const { duration } = take;
    const by = isOwn && recording ? recording.name : body.name;
    if (duration.value <= longest.value) return [];
    return [
      {
        at: duration.at,
        facts: { takeS: duration.value, longestS: longest.value, by },
        related: [{ at: longest.at, words: message`\`longest-clip\` of ${by}` }],
      },
    ];
  },
  words: ({ takeS, longestS, by }, say) => ({
    what: message`The take is ${say.seconds(takeS)}; ${by} stops recording after ${say.seconds(longestS)}.`,
  }),
  size: ({ takeS, longestS }) => ({ kind: 'time', value: takeS - longestS }),
  numbers: ({ takeS, longestS }) => ({ takeS, longestClipS: longestS }),
  fixes: ({ at, facts: { longestS } }) => {
    const text = KINDS.time.print(longestS as Sec, longestS % 60 === 0 ? 'min' : 's');
    return [setTo(message`Shorten the take to ${text} (the limit of the camera)`, at, text)];
  },
};
