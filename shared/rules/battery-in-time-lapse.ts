import { stillsField } from '../figures/stills.ts';
import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import { below, type Place } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { AT_INTERVALS, printTime } from './fewer-frames.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

interface Facts {
  readonly spanS: number;
  readonly lastsS: number;
  readonly body: string;
}

const THREE_HOURS = '{ size: 28 MB, write: 1 s, battery: 2 h }';

export const batteryInTimeLapse: ShotRule<Facts> = {
  name: 'battery-in-time-lapse',
  severity: 'warning',
  docs: {
    when: 'a time-lapse on battery runs longer than one battery of the body lasts at intervals.',
    why: 'Changing the battery moves the rig and leaves a gap, and both show as a jump. `battery` of the `stills` says how long one lasts; it depends on the interval and on the screen, so measure it.',
    remedy:
      'Feed the body from the mains (`supply: mains`), or shorten the time-lapse. Keep mains adapters away from liquid, and follow local rules and the qualified person on set.',
    bad: [
      {
        says: 'three hours on a battery for two',
        change: { ...AT_INTERVALS, 'kit/bodies/body-a/stills': THREE_HOURS },
      },
    ],
    good: [
      {
        says: 'on mains power',
        change: {
          ...AT_INTERVALS,
          'kit/bodies/body-a/stills': THREE_HOURS,
          'shots/frost/time-lapse': '{ interval: 20 s, duration: 3 h, supply: mains }',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { batteryShare, timeLapseS } = figures;
    const lasts = stillsField(bench, 'battery');
    if (!batteryShare.known || !timeLapseS.known || batteryShare.value <= 1) return [];
    if (lasts?.state !== 'known' || !bench.body) return [];
    const at = lengthAt(bench.fields['time-lapse'].at, bench.timeLapse?.fields?.frames.state);
    return [
      {
        at,
        facts: { spanS: timeLapseS.value, lastsS: lasts.value, body: bench.body.name },
        related: [
          { at: lasts.at, words: message`\`battery\` of the stills of ${bench.body.name}` },
          ...relatedTo(at, timeLapseS),
        ],
      },
    ];
  },
  words: ({ spanS, lastsS, body }, say) => ({
    what: message`The time-lapse runs ${say.seconds(spanS)}; a battery of ${body} lasts ${say.seconds(lastsS)}.`,
    why: message`Changing the battery moves the rig and leaves a gap.`,
  }),
  size: ({ spanS, lastsS }) => ({ kind: 'time', value: spanS - lastsS }),
  numbers: ({ spanS, lastsS }) => ({ timeLapseS: spanS, batteryS: lastsS }),
  fixes: ({ facts: { lastsS } }, { bench }) => [
    setTo(
      message`Feed the body from the mains`,
      below(bench.fields['time-lapse'].at, 'supply'),
      'mains',
      message`keep the adapter away from liquid`,
    ),
    ...shorter(lastsS, bench.timeLapse),
  ],
};

function shorter(
  lastsS: number,
  timeLapse: Parameters<NonNullable<(typeof batteryInTimeLapse)['fixes']>>[1]['bench']['timeLapse'],
): readonly PlanFix[] {
  if (!timeLapse?.fields || !timeLapse.intervalS.known) return [];
  const { duration, frames } = timeLapse.fields;
  if (ifKnown(frames) !== undefined) {
    const count = Math.floor(lastsS / timeLapse.intervalS.value);
    return count < 1 ? [] : [setTo(message`Take ${count} frames`, frames.at, String(count))];
  }
  if (duration.state !== 'known') return [];
  const text = printTime(lastsS);
  return [setTo(message`Shorten the time-lapse to ${text}`, duration.at, text)];
}

/** What its length is written under. */
const lengthAt = (at: Place, frames: string | undefined): Place =>
  below(at, frames === 'known' ? 'frames' : 'duration');
