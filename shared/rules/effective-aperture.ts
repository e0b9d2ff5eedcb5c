import type { NamedLoss } from '../figures/shot-figures.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Below 1/3 stop the marked f-number is close enough. */
const WORTH_SAYING_STOPS = 1 / 3;

interface Facts {
  readonly marked: number;
  readonly effective: number;
  readonly isMeasured: boolean;
  readonly stops: number;
  readonly losses: readonly NamedLoss[];
  /** The lens, which loses light by focusing close; null: not named. */
  readonly lens: string | null;
  /** The f-number on the body's display. */
  readonly shows: number;
  /** A result that depends on the difference and that the plan overlooks. */
  readonly decision: 'reading' | 'depth' | null;
}

export const effectiveAperture: ShotRule<Facts> = {
  name: 'effective-aperture',
  isStatement: true,
  severity: 'hint',
  docs: {
    when: 'the effective aperture is slower than the marked one. A note where the exposure or depth of field of the shot depends on it.',
    why: 'Extension and converters spread the light of the lens: N_eff = N·(1 + m1/p)·M_c. The lens is still marked N, and a meter reading through the bare lens does not include the loss.',
    remedy:
      'Expose for the effective aperture: slower shutter, higher ISO or more light. Or take the meter reading through this rig.',
    bad: [
      {
        says: 'a long stack with a converter',
        change: { 'shots/skin': null, 'shots/frost/rig': 'stacked', 'shots/frost/iso': '3200' },
      },
    ],
    good: [
      {
        says: 'a lens on the body alone',
        change: { 'shots/skin': null, 'shots/frost/rig': 'plain', 'shots/frost/field': '300 mm' },
      },
    ],
  },
  check({ bench, figures }) {
    const { effectiveFNumber, lossByPart, exposureErrorStops, depthMm, usableDepthMm } = figures;
    if (!effectiveFNumber.known || !bench.marked.known) return [];
    const marked = bench.marked.value;
    const effective = effectiveFNumber.value;
    const stops = 2 * Math.log2(effective / marked);
    if (stops < WORTH_SAYING_STOPS) return [];
    const at = bench.fields.aperture.at;
    const dark =
      bench.readThroughBareLens &&
      exposureErrorStops.known &&
      exposureErrorStops.value < -WORTH_SAYING_STOPS &&
      exposureErrorStops.value + stops > -WORTH_SAYING_STOPS;
    const shallow =
      depthMm.needed.known &&
      usableDepthMm.known &&
      usableDepthMm.value < depthMm.needed.value * 0.95;
    const decision = dark ? 'reading' : shallow ? 'depth' : null;
    return [
      {
        at,
        ...(decision && { severity: 'note' as const }),
        facts: {
          marked,
          effective,
          stops,
          // The calculated losses of the parts don't add up to a measured loss.
          losses:
            lossByPart.known && !effectiveFNumber.measured
              ? lossByPart.value.filter((loss) => loss.stops >= 0.05)
              : [],
          lens: bench.lens?.name ?? null,
          isMeasured: effectiveFNumber.measured === true,
          shows: bench.bodyShows === 'effective' ? effective : marked,
          decision,
        },
        // This hint is shown at every such aperture; the hover lists its inputs.
        ...(decision && { related: () => relatedTo(at, effectiveFNumber) }),
      },
    ];
  },
  words({ marked, effective, isMeasured, stops, losses, lens, shows, decision }, say) {
    const parts = [...losses]
      .sort((a, b) => b.stops - a.stops)
      .map(({ part, stops: lost }) =>
        part === lens
          ? message`\`${part}\` focused close ${say.stops(lost)}`
          : `\`${part}\` ${say.stops(lost)}`,
      )
      .join(', ');
    const shown =
      shows === marked ? '' : message` The camera will display about ${say.fNumber(shows)}.`;
    const because =
      decision === 'reading'
        ? message` The meter reading was taken through the bare lens, so it does not include this loss.`
        : decision === 'depth'
          ? message` Depth of field is still less than the shot needs.`
          : '';
    return {
      what: message`Marked ${say.fNumber(marked)} is ${say.effective(effective, isMeasured)}: ${say.stops(stops)} of light lost.`,
      why: `${parts ? message`Light lost: ${parts}.` : ''}${shown}${because}`.trim(),
    };
  },
  size: ({ stops }) => ({ kind: 'stops', value: stops }),
  numbers: ({ marked, effective, stops }) => ({ marked, effective, stops }),
};
