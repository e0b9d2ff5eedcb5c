/** Contrast against the marked f-number: in the middle of the depth needed, and at its ends. */

import type { Drawing } from '../../../api/drawing.ts';
import { type BestContrast, bestContrast, isSeen } from '../../../figures/best-contrast.ts';
import { known, unknownOf } from '../../../figures/figure.ts';
import { contrastOverDepth } from '../../../optics/defocus-contrast.ts';
import { diffractionContrast, nyquistPerMm } from '../../../optics/diffraction.ts';
import { message } from '../../../words/message.ts';
import { label, line, MARGIN, polyline, WIDTH } from '../canvas.ts';
import { type SaidShot, undrawn } from '../said.ts';

const LEFT = 44;
const ROOM = WIDTH - LEFT - MARGIN;
const TOP = 26;
const HIGH = 104;
/** Points of a curve between the ends of the lens's range. */
const STEPS = 32;
/** Full stops as they are engraved. */
const ENGRAVED = [1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64];

export function contrastDrawing(shot: SaidShot): Drawing | null {
  const { bench, figures, say } = shot;
  const { pixelUm, magnification, effectiveFNumber: effective, contrast } = figures;
  const { marked, apertureRange } = bench;
  const drawing = {
    id: 'contrast',
    title: message`Contrast and aperture`,
    key: 'aperture',
  } as const;
  const needed = figures.depthMm.needed.known ? figures.depthMm.needed.value : 0;
  if (
    !pixelUm.known ||
    !magnification.known ||
    !effective.known ||
    !marked.known ||
    !contrast.known
  )
    return undrawn(drawing, [pixelUm, magnification, effective, marked, contrast]);
  const range = apertureRange.known
    ? apertureRange
    : known({ from: marked.value, to: marked.value });
  const { from, to } = range.value;
  if (!(from < to)) return undrawn(drawing, [unknownOf([apertureRange])]);
  // Of the effective f-number, which may have been measured, not of the trace.
  const ratio = effective.value / marked.value;
  const cyclesPerMm = nyquistPerMm(pixelUm.value) / 2;
  const pattern = { depthMm: needed, magnification: magnification.value, cyclesPerMm };
  const apertures = Array.from(
    { length: STEPS + 1 },
    (_, step) => from * (to / from) ** (step / STEPS),
  );
  const at = (n: number) =>
    needed > 0
      ? contrastOverDepth(pattern, [n * ratio])[0]!
      : { middle: diffractionContrast(cyclesPerMm, n * ratio), ends: null };
  const here = at(marked.value);
  const best = bestContrast(bench, figures);
  const words = [
    message`In fine detail, ${say.fNumber(marked.value)} leaves ${say.percent(here.middle)} contrast in focus`,
    here.ends === null
      ? '.'
      : message` and ${endsWords(here.ends, say)} at the ends of the ${say.length(needed)} needed.`,
    best === null ? '' : bestWords(best, say),
  ].join('');
  const x = (n: number): number => LEFT + (Math.log(n / from) / Math.log(to / from)) * ROOM;
  const y = (share: number): number => TOP + (1 - Math.max(0, Math.min(1, share))) * HIGH;
  const curve = (which: 'middle' | 'ends') =>
    apertures.flatMap((n): [number, number][] => {
      const share = at(n)[which];
      return share === null ? [] : [[x(n), y(share)]];
    });
  return {
    ...drawing,
    words,
    picture: {
      height: TOP + HIGH + 44,
      shapes: [
        ...[0, 0.5, 1].flatMap((share) => [
          line('grid', LEFT, y(share), LEFT + ROOM, y(share)),
          label(`${share * 100} %`, LEFT - 4, y(share) + 4, 'end'),
        ]),
        ...ENGRAVED.filter((n) => n >= from * 0.99 && n <= to * 1.01).flatMap((n) => [
          line('grid', x(n), y(0), x(n), y(0) + 5),
          label(String(n), x(n), y(0) + 19),
        ]),
        label(message`marked f-number`, LEFT + ROOM / 2, y(0) + 37),
        polyline('curve', curve('middle'), { 'data-curve': 'middle' }),
        ...(needed > 0 ? [polyline('curve-ends', curve('ends'), { 'data-curve': 'ends' })] : []),
        line(
          'edge',
          x(clamped(marked.value, from, to)),
          TOP - 6,
          x(clamped(marked.value, from, to)),
          y(0),
          {
            'data-mark': 'aperture',
          },
        ),
        label(message`set ${say.fNumber(marked.value)}`, x(clamped(marked.value, from, to)), 14),
      ],
    },
  };
}

const clamped = (value: number, from: number, to: number): number =>
  Math.max(from, Math.min(to, value));

const endsWords = (share: number, say: SaidShot['say']): string =>
  share > 0 ? say.percent(share) : message`nothing`;

function bestWords(best: BestContrast, say: SaidShot['say']): string {
  const most = message`${say.fNumber(best.marked)}, ${say.percent(best.ends)}`;
  if (best.ends - best.endsAsSet < 1e-9) return message` No aperture keeps more there.`;
  return isSeen(best)
    ? message` The ends keep the most contrast at ${most}.`
    : message` The ends keep the most contrast at ${most}; the difference is too small to see.`;
}
