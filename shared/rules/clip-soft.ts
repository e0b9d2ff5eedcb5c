import type { Sight } from '../looked-at/judge.ts';
import { message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';

interface Facts {
  readonly file: string;
  readonly sight: Extract<Sight, { of: 'focus' }>;
}

export const clipSoft: RuleCore<Facts> = {
  name: 'clip-soft',
  severity: 'note',
  onRequest: true,
  docs: {
    when: 'the edges of a clip keep half of their contrast only in patterns more than twice as coarse as the effective aperture allows. Only a check that looks at the pictures finds this.',
    why: "Diffraction at the effective f-number and the size of the pixels set the finest pattern. Contrast is by the spectrum of an edge (ISO 12233), of the sharpest tenth of all edges. One frame in a hundred is measured. Width is an edge's height over its steepest step. The narrowest edge counts as at least 1.6 px, for the colour filter.",
    remedy:
      'Check focus and vibration at full magnification. Some subjects have no sharp edges: accept it for those.',
    bad: [],
    good: [],
  },
  words: ({ file, sight: { edgePx, narrowestPx, effectiveFNumber } }, say) => ({
    what: message`${file}: its sharpest edges are ${say.number(edgePx)} px wide.`,
    why: message`Effective ${say.fNumber(effectiveFNumber)} allows ${say.number(narrowestPx)} px: it is softer than this aperture can be.`,
  }),
  numbers: ({ sight: { edgePx, narrowestPx, effectiveFNumber, halfContrast, finest } }) => ({
    edgePx,
    narrowestPx,
    effectiveFNumber,
    halfContrast,
    finestHalfContrast: finest,
  }),
};
