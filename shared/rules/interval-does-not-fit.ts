import type { Bench } from '../figures/bench.ts';
import { stillsField } from '../figures/stills.ts';
import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import { below } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { AT_INTERVALS, intervalDown, intervalUp, printTime } from './fewer-frames.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** A hundredth of a second is less than bodies and intervalometers keep to. */
const DEAD_BAND_S = 0.01;

interface Facts {
  readonly intervalS: number;
  readonly exposureS: number;
  /** null: not known. */
  readonly writeS: number | null;
  /** Real time of the whole; null: it is long enough. */
  readonly wholeS: number | null;
}

export const intervalDoesNotFit: ShotRule<Facts> = {
  name: 'interval-does-not-fit',
  severity: 'error',
  docs: {
    when: 'the interval of a time-lapse is shorter than exposure and writing together, or longer than the time-lapse.',
    why: 'While the body exposes and writes, it ignores the next trigger. That frame is missing, and the movement jumps there. Writing counts where `write` of the `stills` gives it.',
    remedy:
      'Lengthen the interval, or shorten the exposure with more light. Common practice is to leave a second for the body.',
    bad: [
      {
        says: 'no time left to write',
        change: {
          ...AT_INTERVALS,
          'kit/bodies/body-a/stills': '{ size: 28 MB, write: 3 s }',
          'shots/frost/time-lapse': '{ interval: 2 s, duration: 3 h }',
        },
      },
      {
        says: 'an exposure longer than the interval',
        change: {
          ...AT_INTERVALS,
          'shots/frost/shutter': '8 s',
          'shots/frost/iso': '100',
          'shots/frost/relight': '{ panel: { dimmed: 5 stops } }',
          'shots/frost/time-lapse': '{ interval: 5 s, duration: 3 h }',
        },
      },
      {
        says: 'longer than the time-lapse',
        change: { ...AT_INTERVALS, 'shots/frost/time-lapse': '{ interval: 3 h, duration: 20 s }' },
      },
    ],
    good: [
      {
        says: 'time left after exposure and writing',
        change: {
          ...AT_INTERVALS,
          'kit/bodies/body-a/stills': '{ size: 28 MB, write: 1 s, battery: 5 h }',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { intervalLeftS, shutterSeconds, timeLapseFrames } = figures;
    const { timeLapse, fields } = bench;
    if (!timeLapse?.intervalS.known) return [];
    const at = below(fields['time-lapse'].at, 'interval');
    const intervalS = timeLapse.intervalS.value;
    const duration = timeLapse.fields && ifKnown(timeLapse.fields.duration);
    if (timeLapseFrames.known && timeLapseFrames.value < 1 && duration)
      return [{ at, facts: { intervalS, exposureS: 0, writeS: null, wholeS: duration } }];
    if (!intervalLeftS.known || !shutterSeconds.known || intervalLeftS.value >= -DEAD_BAND_S)
      return [];
    return [
      {
        at,
        facts: {
          intervalS,
          exposureS: shutterSeconds.value,
          writeS: writeOf(bench),
          wholeS: null,
        },
        related: () => relatedTo(at, intervalLeftS),
      },
    ];
  },
  words: ({ intervalS, exposureS, writeS, wholeS }, say) =>
    wholeS !== null
      ? {
          what: message`The interval is ${say.seconds(intervalS)}; the time-lapse runs only ${say.seconds(wholeS)}.`,
          why: message`No second frame is taken.`,
        }
      : {
          what:
            writeS === null
              ? message`The exposure is ${say.seconds(exposureS)}; the interval is only ${say.seconds(intervalS)}.`
              : message`Exposure and writing need ${say.seconds(exposureS + writeS)}; the interval is only ${say.seconds(intervalS)}.`,
          why: message`The body ignores the next trigger, so frames are missing and the movement jumps.`,
        },
  size: ({ intervalS, exposureS, writeS, wholeS }) => ({
    kind: 'time',
    value: wholeS === null ? exposureS + (writeS ?? 0) - intervalS : intervalS - wholeS,
  }),
  numbers: ({ intervalS, exposureS, writeS, wholeS }) => ({
    intervalS,
    ...(wholeS === null ? { exposureS } : { timeLapseS: wholeS }),
    ...(writeS !== null && { writeS }),
  }),
  fixes({ at, facts }, { bench }) {
    const { exposureS, writeS, wholeS } = facts;
    if (wholeS !== null) return turned(at, facts, bench);
    const text = printTime(intervalUp(exposureS + (writeS ?? 0)));
    return [setTo(message`Lengthen the interval to ${text}`, at, text)];
  },
};

/** The two were exchanged, or the interval is far too long. */
function turned(
  at: Parameters<typeof setTo>[1],
  { intervalS, wholeS }: Facts,
  { timeLapse }: Bench,
): readonly PlanFix[] {
  const duration = timeLapse?.fields?.duration;
  if (wholeS === null || duration?.state !== 'known') return [];
  const [short, long] = [printTime(intervalDown(wholeS)), printTime(intervalS)];
  return [
    {
      title: message`Set an interval of ${short} over ${long}`,
      edits: [
        { op: 'set', at, text: short },
        { op: 'set', at: duration.at, text: long },
      ],
    },
  ];
}

function writeOf(bench: Bench): number | null {
  const write = bench.timeLapse?.isStills ? stillsField(bench, 'write') : null;
  return (write && ifKnown(write)) ?? null;
}
