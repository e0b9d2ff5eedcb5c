import { kitRig, type OtherOrder, otherOrder } from '../figures/kit-search.ts';
import { message } from '../words/message.ts';
import { rigFixes } from './rig-fixes.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** One-third stop: a smaller saving is no reason to rebuild the rig. */
const WORTH_STOPS = 1 / 3;
/** Accuracy of the loss. */
const DEAD_BAND_STOPS = 0.04;

export const rigOrder: ShotRule<OtherOrder> = {
  name: 'rig-order',
  severity: 'note',
  docs: {
    when: 'another order of the tubes and converters gives the same field with less light lost or fewer parts.',
    why: 'A tube behind the converter raises the magnification and the light loss of the converter. Ahead of it, the tube acts on the lens alone and the converter enlarges its effect. At one magnification N_eff = N·(M_c + m/p), so the order with the smaller M_c loses less light (paraxial trace of the parts in their order).',
    remedy: 'Put the tubes between converter and lens, and leave out parts that are not needed.',
    bad: [
      {
        says: 'tubes behind the converter',
        change: {
          'kit/converters/once-and-half':
            '{ factor: 1.4x, length: 22 mm, loss: 0.1 stops, mass: 0.2 kg }',
          'rigs/stacked/parts': '[body-a, tube-36, tube-20, once-and-half, macro-100]',
          'shots/frost/rig': 'stacked',
          'shots/frost/field': '22 mm',
          'shots/frost/aperture': 'f/11',
          'shots/frost/iso': 'auto',
          'subjects/frost-plate/depth': '0.5 mm',
          'kit/bodies/body-a/iso/usable-to': '12800',
        },
      },
    ],
    good: [
      {
        says: 'tubes next to the lens',
        change: {
          'shots/frost/rig': 'stacked',
          'shots/frost/field': '24 mm',
          'shots/frost/iso': 'auto',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { fields, wantedAt } = bench;
    const other = wantedAt?.path[0] === 'ring' ? undefined : otherOrder(bench, figures);
    if (!other || !bench.parts.known) return [];
    const { savedStops, savedParts } = other;
    const isWorth =
      savedStops > WORTH_STOPS + DEAD_BAND_STOPS ||
      (savedParts > 0 && savedStops > -DEAD_BAND_STOPS);
    if (!isWorth) return [];
    const at = fields.rig.at;
    return [{ at, facts: other, related: relatedTo(at, bench.parts) }];
  },
  words({ parts, savedStops, savedParts }, say) {
    const light =
      savedStops >= WORTH_STOPS ? message`${say.stops(savedStops)} less light lost` : '';
    const fewer =
      savedParts > 0
        ? savedParts === 1
          ? message`${savedParts} fewer part`
          : message`${savedParts} fewer parts`
        : '';
    return {
      what: message`Another order of tubes and converters gives this field with ${[light, fewer].filter(Boolean).join(message` and `)}.`,
      why: message`From the sensor: ${parts.join(', ')}. A tube behind the converter raises the converter's magnification and its light loss.`,
    };
  },
  size: ({ savedStops }) => ({ kind: 'stops', value: savedStops }),
  numbers: ({ savedStops, savedParts }) => ({ savedStops, savedParts }),
  fixes: ({ facts: { parts } }, { bench }) =>
    rigFixes(bench, [kitRig(bench, parts)], `${bench.rigName}-reordered`),
};
