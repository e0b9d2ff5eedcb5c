/** The effective aperture of the marked one, what is sharp with it, and what diffraction leaves. */
import { contrastTable } from '../../../figures/contrast-table.ts';
import type { Figure } from '../../../figures/figure.ts';
import { markFor } from '../../../figures/marks.ts';
import { usualCircleOfConfusionMm } from '../../../optics/recorded-pixel.ts';
import { depthPair } from '../../../say/figures.ts';
import { significant } from '../../../say/say.ts';
import { message } from '../../../words/message.ts';
import { figureLine, type Line, line, paragraphs, plain, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

/** Less light than this is not worth a line. */
const LEAST_LOSS_STOPS = 0.005;

export function apertureHover(shot: SaidShot): string {
  const { bench, figures, say } = shot;
  const { marked, bodyShows, body, apertureRange } = bench;
  const { effectiveFNumber: effective } = figures;
  const shown = bodyShows === 'effective' ? effective : marked;
  return paragraphs(
    table([
      marked.known && line(message`marked`, `**${say.fNumber(marked.value)}**`),
      figureLine(
        message`effective`,
        effective,
        (n) => message`**${say.fNumber(n)}**${effectiveAround(shot)} at the sensor`,
      ),
      ...lossLines(shot),
      ...depthLines(shot),
      ...diffractionLines(shot),
      body &&
        bodyShows &&
        figureLine(message`${plain(body.name)} displays`, shown, (n) => say.fNumber(n)),
      apertureRange.known &&
        line(
          message`on the lens`,
          message`${say.fNumber(apertureRange.value.from)} to ${say.number(apertureRange.value.to)}`,
        ),
    ]),
    contrastRows(shot),
    effectiveFormula(shot),
    figures.depthMm.total.known &&
      message`Formula: depth = u·c'/(D + c') in front, u·c'/(D − c') behind, c' = c/m; c ${circleWords(shot)}; c is the Airy disk where that is larger. Ray, Applied Photographic Optics.`,
    figures.airyUm.known &&
      message`Formula: Airy disk = 2.44·λ·N_eff, λ 0.55 µm. Contrast of a perfect lens with a round pupil: Goodman, Introduction to Fourier Optics; out of focus: Stokseth 1969.`,
  );
}

const effectiveAround = ({ say, sure }: SaidShot): string =>
  sure.behind(
    message`effective`,
    (figures) => figures.effectiveFNumber,
    (n) => say.fNumber(n),
  );

/** Contrast against the aperture: where the ends no longer gain is as narrow as is of any use. */
function contrastRows({ bench, figures, say }: SaidShot): string {
  const rows = contrastTable(bench, figures);
  if (!rows.known || rows.value.length < 2) return '';
  const { marked } = bench;
  return [
    message`| contrast at half Nyquist | in focus | ends of the depth needed |`,
    '|:--|:--|:--|',
    ...rows.value.map(({ marked: n, middle, ends }) => {
      const mark = marked.known && marked.value === n ? `**${say.fNumber(n)}**` : say.fNumber(n);
      return `| ${mark} | ${say.percent(middle)} | ${ends > 0 ? say.percent(ends) : message`none`} |`;
    }),
  ].join('\n');
}

function lossLines({ figures, say, sure }: SaidShot): Line[] {
  const { lightLossStops: lost, lossByPart, glassLossStops: glass } = figures;
  // What the parts take by calculation doesn't add up to what was measured.
  const isTraced = !(lost.known && lost.measured);
  const around = (): string =>
    sure.behind(
      message`light lost`,
      (of) => of.lightLossStops,
      (stops) => say.stops(stops),
    );
  const taking = (isTraced && lossByPart.known ? lossByPart.value : []).filter(
    ({ stops }) => Math.abs(stops) >= LEAST_LOSS_STOPS,
  );
  return [
    figureLine(message`light lost`, lost, (stops) => `${say.stops(stops)}${around()}`),
    ...taking.map(({ part, stops }) => line(`· ${plain(part)}`, say.stops(stops))),
    ...(glass.known && glass.value > 0
      ? [
          line(
            message`glass and filters`,
            message`${say.stops(glass.value)}${glassAround(say, sure)} more`,
          ),
        ]
      : []),
  ];
}

/** What is round the loss of glass and filters. */
export const glassAround = (say: SaidShot['say'], sure: SaidShot['sure']): string =>
  sure.behind(
    message`glass and filters`,
    (of) => of.glassLossStops,
    (stops) => say.stops(stops),
  );

/** Depth as findings judge it, what is needed, and by geometry alone where that is less. */
export function depthLines({ figures, say, sure }: SaidShot): Line[] {
  const { depthMm, usableDepthMm: judged } = figures;
  const { front, behind, total, needed } = depthMm;
  const [there, wanted] =
    judged.known && needed.known
      ? depthPair(judged.value, needed.value, say)
      : [judged, needed].map((figure) => (figure.known ? say.length(figure.value) : ''));
  const sides =
    front.known && behind.known
      ? message` (front ${say.length(front.value)}, behind ${say.length(behind.value)})`
      : '';
  const length = (mm: number): string => say.length(mm);
  const around = {
    judged: () => sure.behind(message`depth of field`, (of) => of.usableDepthMm, length),
    total: () => sure.behind(message`· by focus alone`, (of) => of.depthMm.total, length),
    needed: () => sure.behind(message`depth of field needed`, (of) => of.depthMm.needed, length),
  };
  const byDiffraction = judged.known && total.known && judged.value > total.value * (1 + 1e-9);
  return [
    figureLine(message`depth of field`, judged, () =>
      byDiffraction ? `${there}${around.judged()}` : `${there}${around.judged()}${sides}`,
    ),
    ...(byDiffraction
      ? [
          figureLine(
            message`· by focus alone`,
            total,
            (mm) => `${say.length(mm)}${around.total()}${sides}`,
          ),
        ]
      : []),
    figureLine(message`depth of field needed`, needed, () => `${wanted}${around.needed()}`),
  ];
}

function diffractionLines({ bench, figures, say, sure }: SaidShot): Line[] {
  const { airyUm, pixelUm, contrast, contrastAtNyquist, bestEffectiveFNumber: best } = figures;
  const mark = best.known ? markFor(bench, figures, best.value) : undefined;
  const airyAround = (): string =>
    sure.behind(
      message`Airy disk`,
      (of) => of.airyUm,
      (um) => say.micrometres(um),
    );
  const inPixels = (um: number) =>
    pixelUm.known
      ? message`, ${say.pixels(um / pixelUm.value)} of ${say.micrometres(pixelUm.value)}`
      : '';
  return [
    figureLine(
      message`Airy disk`,
      airyUm,
      (um) => `${say.micrometres(um)}${airyAround()}${inPixels(um)}`,
    ),
    figureLine(
      message`contrast after diffraction`,
      contrast,
      (share) => message`${say.number(share)}${contrastAround(say, sure)} at half Nyquist`,
    ),
    ...(contrastAtNyquist.known
      ? [line(message`· at Nyquist`, say.number(contrastAtNyquist.value))]
      : []),
    ...(best.known
      ? [
          line(
            message`best for the depth`,
            mark === undefined
              ? message`${say.fNumber(best.value)} effective`
              : message`${say.fNumber(best.value)} effective, ${say.fNumber(mark)} is nearest on the lens`,
          ),
        ]
      : []),
  ];
}

export const contrastAround = (say: SaidShot['say'], sure: SaidShot['sure']): string =>
  sure.behind(
    message`contrast after diffraction`,
    (of) => of.contrast,
    (share) => say.number(share),
  );

function effectiveFormula({ bench, figures }: SaidShot): string | null {
  const { trace } = figures;
  if (!trace.known || !bench.marked.known) return null;
  const { effectiveFNumber: effective } = figures;
  if (effective.known && effective.measured)
    return message`N_eff was measured; at other apertures it is scaled in proportion.`;
  const { lensMagnification: m1, converterMagnification, pupilRatioAssumed } = trace.value;
  const pupilRatio = pupilRatioOf(figures.chain);
  const said = (value: number): string => significant(value, 3);
  const assumed = pupilRatioAssumed
    ? message` p, the pupil ratio of ${plain(bench.lens?.name ?? message`the lens`)}, is not known and taken as 1.`
    : '';
  return message`Formula: N_eff = N·(1 + m1/p)·M_c = ${said(bench.marked.value)}·(1 + ${said(m1)}/${said(pupilRatio)})·${said(converterMagnification)}; paraxial trace of the parts in their order (Hecht, Optics).${assumed}`;
}

const pupilRatioOf = (chain: Figure<{ lens: { pupilRatio?: number | undefined } }>): number =>
  (chain.known && chain.value.lens.pupilRatio) || 1;

/** c, and where it comes from: the plan, or whichever of the two usual ones is the larger. */
function circleWords({ bench, figures, say }: SaidShot): string {
  const { circleOfConfusionMm: circle } = figures;
  const { givenCircleMm, recordedAreaMm: area } = bench;
  if (!circle.known) return message`unknown`;
  const size = say.micrometres(circle.value * 1000);
  if (givenCircleMm.known) return message`${size} as the plan gives it`;
  const byDiagonal = area.known && circle.value === usualCircleOfConfusionMm(area.value, undefined);
  return `${size}, ${byDiagonal ? message`the recorded diagonal / 1500` : message`one delivered pixel`}`;
}
