import { type Bench, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { setTo } from '../plan/fixes.ts';
import { below, type Place } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Pixels by which the picture may shake unseen; three are seen by everybody. Common practice. */
const SEEN_PX = 1;
const SPOILT_PX = 3;
const DEAD_BAND = 0.05;

interface Facts {
  readonly px: number;
  readonly stand: string;
  readonly amplitudeUm: number;
}

export const vibrationSeen: ShotRule<Facts> = {
  name: 'vibration-seen',
  severity: 'warning',
  docs: {
    when: 'the support shakes the picture by more than one pixel. A note above 1 pixel, a warning above 3.',
    why: 'Jitter in pixels is amplitude × magnification ÷ pixel size, by the coarser of the recorded and the delivered pixel. At 1x, 20 µm of sway on a boom is one pixel of 19 µm. What a support of its kind usually does is assumed until `vibration` says it.',
    remedy:
      'Use a steadier support, put camera and subject on one base, wait longer before the take, or frame wider.',
    bad: [
      {
        says: 'a boom that sways',
        change: {
          'kit/stands':
            '\n    arm: { kind: boom, footprint: 1.1 m, reach: 0.5 m, mass: 6 kg, payload: 8 kg, counterweight: 4 kg, counterweight-arm: 0.5 m, vibration: 80 um }\n    post: { kind: column, footprint: 0.5 m, payload: 8 kg }',
          'rigs/bench/support': '{ stand: arm, foot: 70 mm, overhead: no }',
          'shots/frost/field': '40 mm',
          'shots/frost/iso': 'auto',
          'shots/frost/aperture': 'f/11',
          'kit/bodies/body-a/iso/usable-to': '6400',
        },
      },
    ],
    good: [
      {
        says: 'a column',
        change: {
          'kit/stands': '\n    post: { kind: column, footprint: 0.5 m, payload: 8 kg }',
          'rigs/bench/support': '{ stand: post, foot: 70 mm }',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { jitterPx, pixelUm, magnification } = figures;
    const { stand } = bench.carriers;
    if (!stand || !jitterPx.known || !pixelUm.known || !magnification.known) return [];
    if (jitterPx.value <= SEEN_PX * (1 + DEAD_BAND)) return [];
    const support =
      bench.fields.support.state === 'missing' ? bench.rig?.fields.support : bench.fields.support;
    const at = support?.state === 'known' ? below(support.at, 'stand') : bench.fields.rig.at;
    return [
      {
        at,
        severity: jitterPx.value > SPOILT_PX * (1 + DEAD_BAND) ? 'warning' : 'note',
        facts: {
          px: jitterPx.value,
          stand: stand.name,
          amplitudeUm: (jitterPx.value * pixelUm.value) / magnification.value,
        },
        related: () => relatedTo(at, jitterPx),
      },
    ];
  },
  words: ({ px, stand, amplitudeUm }, say) => ({
    what: message`${stand} shakes the picture by ${say.pixels(px)}.`,
    why: message`It sways by ${say.micrometres(amplitudeUm)} at the subject; ${say.micrometres(amplitudeUm / px)} would be one pixel.`,
  }),
  size: ({ px }) => ({ kind: 'pixels', value: px }),
  numbers: ({ px, amplitudeUm }) => ({ jitterPx: px, amplitudeUm }),
  fixes: ({ at, facts: { stand } }, { bench }) => steadier(bench, stand, at),
};

/** So many other supports are offered. */
const MOST_STANDS = 2;

/** Supports of the kit on which the picture stands still. */
function steadier(bench: Bench, stand: string, at: Place): readonly PlanFix[] {
  if (at.path.at(-1) !== 'stand') return [];
  return bench.offer
    .names('stands')
    .filter((name) => {
      const other = name === stand ? undefined : bench.source.reader.find('stands', name);
      if (!other) return false;
      const carriers = { ...bench.carriers, stand: other };
      const { jitterPx } = figuresOf(substitute(bench, { carriers }));
      return jitterPx.known && jitterPx.value <= SEEN_PX;
    })
    .slice(0, MOST_STANDS)
    .map((name) => setTo(message`Carry the rig on ${name}`, at, name));
}
