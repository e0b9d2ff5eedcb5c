/** A shot at a glance, for its name. */

import { type CheckCalledFor, isJudged, missingChecks } from '../../../rules/checks-called-for.ts';
import { isoRangeOf, neededIso } from '../../../rules/needed-iso.ts';
import { exposureError, sizeWords } from '../../../say/figures.ts';
import { inLanguage, message } from '../../../words/message.ts';
import { code, figureLine, line, paragraphs, plain, table } from '../markdown.ts';
import { contrastAround, depthLines } from './aperture.ts';
import { isoAround } from './exposure.ts';
import type { SaidShot } from './view.ts';

export function shotSummary(shot: SaidShot): string {
  const { bench, figures, say, sure } = shot;
  const { marked, iso } = bench;
  const missing = isJudged(bench) ? missingChecks(bench) : [];
  const around = sure.behind.bind(sure);
  const effectiveAround = (): string =>
    around(
      message`aperture`,
      (of) => of.effectiveFNumber,
      (n) => say.fNumber(n),
    );
  const rows = table([
    line(`**${plain(bench.shot)}**`, message`shot`),
    ...depthLines(shot),
    iso.known && iso.value === 'auto'
      ? figureLine(
          message`ISO needed`,
          figures.isoNeeded,
          (needed) => `**${neededIso(needed, isoRangeOf(bench), say)}**${isoAround(say, sure)}`,
        )
      : figureLine(
          message`exposure`,
          figures.exposureErrorStops,
          (stops) => `**${exposureError(stops, say)}**${sure.exposure(message`exposure`)}`,
        ),
    missing.length > 0 && line(message`checks missing`, String(missing.length)),
    figureLine(
      message`field`,
      figures.fieldMm,
      (size) => `${sizeWords(size, say)}${sure.size(message`field`, (of) => of.fieldMm, 'length')}`,
    ),
    figureLine(
      message`magnification`,
      figures.magnification,
      (m) =>
        `${say.magnification(m)}${around(
          message`magnification`,
          (of) => of.magnification,
          (x) => say.magnification(x),
        )}`,
    ),
    figureLine(
      message`working distance`,
      figures.workingDistanceMm,
      (mm) =>
        `${say.length(mm)}${around(
          message`working distance`,
          (of) => of.workingDistanceMm,
          (x) => say.length(x),
        )}`,
    ),
    figureLine(message`aperture`, figures.effectiveFNumber, (n) =>
      marked.known
        ? message`${say.fNumber(marked.value)}, ${say.fNumber(n)} effective${effectiveAround()}`
        : `${say.fNumber(n)}${effectiveAround()}`,
    ),
    figureLine(message`shutter`, figures.shutterSeconds, (s) => say.shutter(s)),
    figureLine(
      message`contrast after diffraction`,
      figures.contrast,
      (share) => `${say.number(share)}${contrastAround(say, sure)}`,
    ),
    bench.subject && line(message`subject`, plain(bench.subject.name)),
    bench.rigName !== undefined && line(message`rig`, plain(bench.rigName)),
  ]);
  return paragraphs(rows, missing.length > 0 && missingList(missing));
}

/** Each missing check with what of the shot calls for it. */
const missingList = (missing: readonly CheckCalledFor[]): string =>
  missing
    .map(
      ({ name, what, because }) => `- ${code(name)}: ${inLanguage(what)} (${inLanguage(because)})`,
    )
    .join('\n');
