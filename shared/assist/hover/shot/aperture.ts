/** The effective aperture of the marked one, what is sharp with it, and what diffraction leaves. */
import { type BestContrast, bestContrast, isSeen } from '../../../figures/best-contrast.ts';
import { contrastTable } from '../../../figures/contrast-table.ts';
import type { Figure } from '../../../figures/figure.ts';
import { usualCircleOfConfusionMm } from '../../../optics/recorded-pixel.ts';
import { depthPair } from '../../../say/figures.ts';
import { significant } from '../../../say/say.ts';
import { message } from '../../../words/message.ts';
import { figureLine, type Line, last, line, paragraphs, plain, table } from '../markdown.ts';
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
      figureLine(
        message`effective`,
        effective,
        (n) => message`**${say.fNumber(n)}**${effectiveAround(shot)} at the sensor`,
      ),
      ...depthLines(shot),
      ...lossLines(shot),
      ...diffractionLines(shot),
      body &&
        bodyShows &&
        figureLine(message`${plain(body.name)} displays`, shown, (n) => say.fNumber(n)),
      apertureRange.known &&
        line(
          message`on the lens`,
          message`${say.fNumber(apertureRange.value.from)} to ${say.number(apertureRange.value.to)}`,
        ),
      marked.known && line(message`marked`, say.fNumber(marked.value)),
    ]),
    contrastRows(shot),
    effectiveFormula(shot),
    figures.depthMm.total.known &&
      last(
        message`Formula: depth = u·c'/(D + c') in front, u·c'/(D − c') behind, c' = c/m; c ${circleWords(shot)}; c is the Airy disk where that is larger. Ray, Applied Photographic Optics.`,
      ),
    figures.airyUm.known &&
      last(
        message`Formula: Airy disk = 2.44·λ·N_eff, λ 0.55 µm. Contrast of a perfect lens with a round pupil: Goodman, Introduction to Fourier Optics; out of focus: Stokseth 1969.`,
      ),
  );
}

const effectiveAround = ({ say, sure }: SaidShot): string =>
  sure.behind(
    message`effective aperture`,
    (figures) => figures.effectiveFNumber,
    (n) => say.fNumber(n),
  );

/** Contrast against the aperture: where the ends no longer gain is as narrow as is of any use. */
function contrastRows({ bench, figures, say }: SaidShot): string {
  const rows = contrastTable(bench, figures);
  if (!rows.known || rows.value.length < 2) return '';
  const { marked } = bench;
  const each = rows.value.map(({ marked: n, middle, ends }) => {
    const mark = marked.known && marked.value === n ? `**${say.fNumber(n)}**` : say.fNumber(n);
    return `${mark} ${say.percent(middle)}, ${ends > 0 ? say.percent(ends) : message`none`}`;
  });
  return message`Contrast of fine detail, in focus and at the ends of the depth needed: ${each.join(' · ')}.`;
}

function lossLines({ bench, figures, say, sure }: SaidShot): Line[] {
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
  const takenBy = ({ part, stops }: (typeof taking)[number]): string =>
    part === bench.lens?.name
      ? message`${plain(part)}, focused close, ${say.stops(stops)}`
      : message`${plain(part)} ${say.stops(stops)}`;
  const parts = taking.map(takenBy);
  return [
    figureLine(message`light lost`, lost, (stops) =>
      [`${say.stops(stops)}${around()}`, ...parts].join('; '),
    ),
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

/** What is sharp by focus alone where that is less, depth as findings judge it, what is needed. */
export function depthLines({ figures, say, sure }: SaidShot): Line[] {
  const { depthMm, usableDepthMm: judged } = figures;
  const { front, behind, total, needed } = depthMm;
  const [there = '', wanted = ''] =
    judged.known && needed.known
      ? depthPair(judged.value, needed.value, say)
      : [judged, needed].map((figure) => (figure.known ? say.length(figure.value) : ''));
  const sides =
    front.known && behind.known
      ? message`${say.length(front.value)} in front, ${say.length(behind.value)} behind`
      : '';
  const length = (mm: number): string => say.length(mm);
  const around = {
    judged: () => sure.behind(message`depth of field`, (of) => of.usableDepthMm, length),
    total: () => sure.behind(message`sharp by focus`, (of) => of.depthMm.total, length),
    needed: () => sure.behind(message`depth of field needed`, (of) => of.depthMm.needed, length),
  };
  const withSides = (words: string): string => (sides === '' ? words : `${words}; ${sides}`);
  const byDiffraction = judged.known && total.known && judged.value > total.value * (1 + 1e-9);
  return [
    ...(byDiffraction
      ? [
          figureLine(message`sharp by focus`, total, (mm) =>
            withSides(`**${say.length(mm)}**${around.total()}`),
          ),
          figureLine(
            message`depth of field`,
            judged,
            () =>
              message`**${there}**${around.judged()}: as sharp as diffraction leaves anything; findings use this`,
          ),
        ]
      : [
          figureLine(message`depth of field`, judged, () =>
            withSides(`**${there}**${around.judged()}`),
          ),
        ]),
    figureLine(message`depth of field needed`, needed, () => `**${wanted}**${around.needed()}`),
  ];
}

function diffractionLines({ bench, figures, say, sure }: SaidShot): Line[] {
  const { airyUm, pixelUm, contrast, contrastAtNyquist } = figures;
  const best = bestContrast(bench, figures);
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
      (share) =>
        message`${say.number(share)}${contrastAround(say, sure)} in fine detail (half Nyquist)`,
    ),
    ...(contrastAtNyquist.known
      ? [line(message`· at Nyquist`, say.number(contrastAtNyquist.value))]
      : []),
    ...(best ? [line(message`most contrast at the ends`, bestWords(best, say))] : []),
  ];
}

/** "f/13: 73%; the loss at f/16 (71%) is too small to see". */
function bestWords(best: BestContrast, say: SaidShot['say']): string {
  const most = message`${say.fNumber(best.marked)}: ${say.percent(best.ends)}`;
  const set = best.endsAsSet > 0 ? say.percent(best.endsAsSet) : message`none`;
  if (best.ends - best.endsAsSet < 1e-9) return message`${most}, as set`;
  return isSeen(best)
    ? message`${most}, against ${set} as set`
    : message`${most}, against ${set} as set: too little to see`;
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
  return last(
    message`Formula: N_eff = N·(1 + m1/p)·M_c = ${said(bench.marked.value)}·(1 + ${said(m1)}/${said(pupilRatio)})·${said(converterMagnification)}; paraxial trace of the parts in their order (Hecht, Optics).${assumed}`,
  );
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
