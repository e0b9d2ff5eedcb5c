import { substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { known } from '../figures/figure.ts';
import { markFor } from '../figures/marks.ts';
import { setTo } from '../plan/fixes.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Contrast at half the pixel's Nyquist frequency under which fine detail looks soft. */
export const USABLE_CONTRAST = 0.45;
/** Below this contrast the detail is lost, and no sharpening restores it. */
const GONE_CONTRAST = 0.2;

interface Facts {
  readonly contrast: number;
  readonly effective: number;
  readonly airyUm: number;
  readonly pixelUm: number;
  /** The best effective f-number for the depth needed; null: none is needed or known. */
  readonly best: number | null;
  /** The mark on the lens that is nearest to it; undefined: none is known. */
  readonly mark: number | undefined;
}

export const diffractionEatsDetail: ShotRule<Facts> = {
  name: 'diffraction-eats-detail',
  severity: 'note',
  docs: {
    when: 'diffraction leaves less than 45% contrast in fine detail; a warning below 20%. Fine detail is half the Nyquist frequency of the coarser of the recorded and the delivered pixel.',
    why: 'The Airy disk grows with the effective f-number: A = 2.44·λ·N_eff. No sharpening restores the detail that it blurs.',
    remedy: 'Open up as far as depth of field allows, frame wider, or deliver a lower resolution.',
    bad: [
      {
        says: 'stopped down further than depth of field needs',
        change: {
          'shots/frost/rig': 'stacked',
          'shots/frost/field': '30 mm',
          'shots/frost/aperture': 'f/22',
          'lights/panel/reading': '{ aperture: f/32, shutter: 1/50 s, iso: 400, through: meter }',
          'shots/frost/iso': 'auto',
        },
      },
    ],
    good: [{ says: 'stopped down as far as needed', change: { 'shots/frost/aperture': 'f/11' } }],
  },
  check({ bench, figures }) {
    const { contrast, effectiveFNumber, airyUm, pixelUm, bestEffectiveFNumber } = figures;
    if (!contrast.known || !effectiveFNumber.known || !airyUm.known || !pixelUm.known) return [];
    if (contrast.value >= USABLE_CONTRAST) return [];
    const at = bench.fields.aperture.at;
    return [
      {
        at,
        severity: contrast.value < GONE_CONTRAST ? 'warning' : 'note',
        facts: {
          contrast: contrast.value,
          effective: effectiveFNumber.value,
          airyUm: airyUm.value,
          pixelUm: pixelUm.value,
          best: bestEffectiveFNumber.known ? bestEffectiveFNumber.value : null,
          mark: bestEffectiveFNumber.known
            ? markFor(bench, figures, bestEffectiveFNumber.value)
            : undefined,
        },
        related: () => relatedTo(at, effectiveFNumber, pixelUm),
      },
    ];
  },
  words({ contrast, effective, airyUm, pixelUm, best, mark }, say) {
    const gone = contrast < GONE_CONTRAST;
    return {
      what: gone
        ? message`Diffraction at ${say.fNumber(effective)} effective removes fine detail (contrast ${say.percent(contrast)}).`
        : message`Diffraction at ${say.fNumber(effective)} effective softens fine detail (contrast ${say.percent(contrast)}).`,
      why:
        message`The Airy disk is ${say.micrometres(airyUm)} wide, a pixel ${say.micrometres(pixelUm)}.` +
        (best !== null && best < effective
          ? mark === undefined
            ? message` ${say.fNumber(best)} effective softens the whole depth as little as can be.`
            : message` ${say.fNumber(best)} effective softens the whole depth as little as can be; the nearest marked f-number is ${say.fNumber(mark)}.`
          : ''),
    };
  },
  size: ({ airyUm, pixelUm }) => ({ kind: 'pixels', value: airyUm / pixelUm }),
  numbers: ({ contrast, effective, airyUm, pixelUm }) => ({
    contrast,
    effectiveFNumber: effective,
    airyUm,
    pixelUm,
  }),
  fixes({ at }, { bench, figures }) {
    const { marked } = bench;
    const needed = figures.depthMm.needed;
    if (!marked.known) return [];
    // The narrowest mark that still keeps the contrast, so that as much depth as possible is left.
    for (const mark of bench.marksOnLens.toReversed()) {
      if (mark >= marked.value) continue;
      const opened = figuresOf(substitute(bench, { marked: known(mark) }));
      if (!opened.contrast.known || opened.contrast.value < USABLE_CONTRAST) continue;
      const depth = opened.usableDepthMm;
      const short = needed.known && depth.known && depth.value < needed.value;
      return [
        setTo(
          message`Open up to f/${mark}${short ? message` (less depth of field than needed)` : ''}`,
          at,
          `f/${mark}`,
        ),
      ];
    }
    return [];
  },
};
