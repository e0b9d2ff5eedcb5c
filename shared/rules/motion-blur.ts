import { MARKED_SHUTTER_RECIPROCALS } from '../exposure/shutter-marks.ts';
import type { Bench } from '../figures/bench.ts';
import { type Field, ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import { below } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Pixels of the coarser kind over which an edge moves during one exposure. */
const SOFT = 1;
const SPOILT = 2;
/** Accuracy of a speed, at best. */
const DEAD_BAND = 0.05;
/** The shortest shutter that bodies are marked with, 1/s. */
const SHORTEST = MARKED_SHUTTER_RECIPROCALS.at(-1)!;

interface Facts {
  readonly smearPx: number;
  readonly speedMmPerS: number;
  readonly seconds: number;
}

export const smear: ShotRule<Facts> = {
  name: 'motion-blur',
  severity: 'warning',
  docs: {
    when: 'subject movement and camera movement together blur more than one pixel per frame. A note above 1 pixel, a warning above 2.',
    why: 'Motion blur in pixels is speed × magnification × shutter time ÷ pixel size, by the coarser of the recorded and the delivered pixel. At 1x, 3 mm/s crosses 3 pixels of 19 µm in 1/50 s. The worst case is assumed: all movement is across the axis, subject and camera in opposite directions. A focus pull that breathes moves the corners of the frame.',
    remedy: 'Use a faster shutter with more light, move slower, or frame wider.',
    bad: [
      { says: 'a quick flow', change: { 'shots/skin/subject-speed': '8 mm/s' } },
      {
        says: 'a quick slide',
        change: {
          'shots/frost/move': '{ kind: slide, speed: 6 mm/s }',
          'preflight/once/move-rehearsed': 'open',
        },
      },
    ],
    good: [{ says: 'a slow flow', change: { 'shots/skin/subject-speed': '0.5 mm/s' } }],
  },
  check({ bench, figures }) {
    const { smearPx, subjectSpeedMmPerS, shutterSeconds } = figures;
    if (!smearPx.known || !subjectSpeedMmPerS.known || !shutterSeconds.known) return [];
    if (smearPx.value <= SOFT * (1 + DEAD_BAND)) return [];
    const { 'subject-speed': flow, move } = bench.fields;
    const at = flow.state === 'known' ? flow.at : below(move.at, paceOf(bench));
    return [
      {
        at,
        severity: smearPx.value > SPOILT * (1 + DEAD_BAND) ? 'warning' : 'note',
        facts: {
          smearPx: smearPx.value,
          speedMmPerS: subjectSpeedMmPerS.value,
          seconds: shutterSeconds.value,
        },
        related: () => relatedTo(at, smearPx),
      },
    ];
  },
  words: ({ smearPx, speedMmPerS, seconds }, say) => ({
    what: message`Motion blur is ${say.pixels(smearPx)} per frame.`,
    why:
      smearPx / seconds <= SHORTEST
        ? message`${say.length(speedMmPerS)}/s during a ${say.shutter(seconds)} exposure. ${say.shutter(seconds / smearPx)} would limit the blur to one pixel.`
        : message`${say.length(speedMmPerS)}/s during a ${say.shutter(seconds)} exposure. Not even ${say.shutter(1 / SHORTEST)} would limit the blur to one pixel.`,
  }),
  size: ({ smearPx }) => ({ kind: 'pixels', value: smearPx }),
  numbers: ({ smearPx, speedMmPerS }) => ({ smearPx, speedMmPerS }),
  fixes({ facts: { smearPx, seconds } }, { bench }) {
    const wanted = smearPx / seconds;
    const mark = MARKED_SHUTTER_RECIPROCALS.find((each) => each >= wanted * 0.98);
    const shorter =
      mark === undefined
        ? []
        : [setTo(message`Set shutter to 1/${mark} s`, bench.fields.shutter.at, `1/${mark} s`)];
    return [...shorter, ...slowerMove(bench, smearPx)];
  },
};

/** What decides how fast the move is: of a focus pull, how long it takes. */
const paceOf = ({ fields: { move } }: Pick<Bench, 'fields'>): 'speed' | 'duration' =>
  move.state === 'known' && ifKnown(move.value.kind) === 'focus-pull' ? 'duration' : 'speed';

/** The speed of the move at which flow and move together stay under one pixel. */
function slowerMove({ fields }: Pick<Bench, 'fields'>, smearPx: number): readonly PlanFix[] {
  const { 'subject-speed': flow, move } = fields;
  if (move.state === 'known' && paceOf({ fields }) === 'duration')
    return slowerPull(move.value.duration, smearPx);
  const speed = move.state === 'known' ? move.value.speed : undefined;
  if (speed?.state !== 'known' || flow.state !== 'missing') return [];
  const { kind, value } = speed.value;
  const shown = kind === 'line' ? value : (value * 180) / Math.PI;
  const slower = Number((Math.floor((100 * shown) / smearPx) / 100).toPrecision(3));
  if (!(slower > 0)) return [];
  const text = `${slower} ${kind === 'line' ? 'mm' : 'deg'}/s`;
  return [setTo(message`Slow the move to ${text}`, speed.at, text)];
}

/** The duration of a focus pull at which its breathing stays under one pixel. */
function slowerPull(duration: Field<number>, smearPx: number): readonly PlanFix[] {
  if (duration.state !== 'known') return [];
  const seconds = Math.ceil(duration.value * smearPx);
  return [setTo(message`Pull focus in ${seconds} s`, duration.at, `${seconds} s`)];
}
