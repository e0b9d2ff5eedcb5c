import { setTo } from '../plan/fixes.ts';
import { below } from '../plan/place.ts';
import { toNumber } from '../quantity/rational.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Seconds that a detail takes across the frame without judder, at 24 to 30 fps. Common practice. */
const SMOOTH_S = 7;
const DEAD_BAND = 0.05;
/** From this delivered rate on, motion is smooth at any speed that can be followed. */
const SMOOTH_RATE = 48;

interface Facts {
  readonly seconds: number;
  readonly kind: string;
}

export const crossesTooFast: ShotRule<Facts> = {
  name: 'crosses-too-fast',
  severity: 'note',
  docs: {
    when: 'a slide, pan or tilt carries a detail across the frame in less than 7 seconds, and the delivery has less than 48 fps.',
    why: 'At 24 to 30 fps edges that cross the frame faster than in about 7 seconds judder (common practice). The figure is the field along the move divided by its speed.',
    remedy:
      'Move slower, frame wider, or deliver at a higher rate. Slowing the clip down in the edit helps as much.',
    bad: [
      {
        says: 'a slide across the frame in 6 s',
        change: {
          'shots/frost/move': '{ kind: slide, speed: 10 mm/s }',
          'shots/frost/shutter': '1/1000 s',
          'shots/frost/iso': '25600',
          'kit/bodies/body-a/iso/usable-to': '25600',
          'preflight/once/move-rehearsed': 'open',
        },
      },
    ],
    good: [
      {
        says: 'a slow slide',
        change: {
          'shots/frost/move': '{ kind: slide, speed: 0.8 mm/s }',
          'preflight/once/move-rehearsed': 'open',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { crossingS } = figures;
    const { move } = bench.fields;
    if (!crossingS.known || move.state !== 'known' || move.value.kind.state !== 'known') return [];
    if (crossingS.value >= SMOOTH_S * (1 - DEAD_BAND)) return [];
    const rate = bench.deliver?.rate;
    if (rate?.state === 'known' && toNumber(rate.value) >= SMOOTH_RATE) return [];
    const at = below(move.at, 'speed');
    return [
      {
        at,
        facts: { seconds: crossingS.value, kind: move.value.kind.value },
        related: () => relatedTo(at, crossingS),
      },
    ];
  },
  words: ({ seconds, kind }, say) => ({
    what: message`The ${kind} crosses the frame in ${say.seconds(seconds)}; below ${say.seconds(SMOOTH_S)} it judders.`,
    why: message`Common practice at 24 to 30 fps, for clips that play in real time.`,
  }),
  size: ({ seconds }) => ({ kind: 'percent', value: SMOOTH_S / seconds - 1 }),
  numbers: ({ seconds }) => ({ crossingS: seconds }),
  fixes({ facts: { seconds } }, { bench: { fields } }) {
    const speed = fields.move.state === 'known' ? fields.move.value.speed : undefined;
    if (speed?.state !== 'known') return [];
    const { kind, value } = speed.value;
    const shown = kind === 'line' ? value : (value * 180) / Math.PI;
    const slower = Math.floor((100 * shown * seconds) / SMOOTH_S) / 100;
    if (!(slower > 0)) return [];
    const text = `${slower} ${kind === 'line' ? 'mm' : 'deg'}/s`;
    return [setTo(message`Slow the move to ${text}`, speed.at, text)];
  },
};
