/** A shot at a glance, for its name. */

import { isJudged, missingChecks } from '../../../rules/checks-called-for.ts';
import { isoRangeOf, neededIso } from '../../../rules/needed-iso.ts';
import { exposureError, sizeWords } from '../../../say/figures.ts';
import { message } from '../../../words/message.ts';
import { figureLine, line, plain, table } from '../markdown.ts';
import { depthLines } from './aperture.ts';
import type { SaidShot } from './view.ts';

export function shotSummary(shot: SaidShot): string {
  const { bench, figures, say } = shot;
  const { marked, iso } = bench;
  const missing = isJudged(bench) ? missingChecks(bench) : [];
  return table([
    line(`**${plain(bench.shot)}**`, message`shot`),
    bench.subject && line(message`subject`, plain(bench.subject.name)),
    bench.rigName !== undefined && line(message`rig`, plain(bench.rigName)),
    figureLine(message`field`, figures.fieldMm, (size) => sizeWords(size, say)),
    figureLine(message`magnification`, figures.magnification, (m) => say.magnification(m)),
    figureLine(message`working distance`, figures.workingDistanceMm, (mm) => say.length(mm)),
    figureLine(message`aperture`, figures.effectiveFNumber, (n) =>
      marked.known
        ? message`${say.fNumber(marked.value)}, ${say.fNumber(n)} effective`
        : say.fNumber(n),
    ),
    figureLine(message`shutter`, figures.shutterSeconds, (s) => say.shutter(s)),
    iso.known && iso.value === 'auto'
      ? figureLine(message`ISO needed`, figures.isoNeeded, (needed) =>
          neededIso(needed, isoRangeOf(bench), say),
        )
      : figureLine(message`exposure`, figures.exposureErrorStops, (stops) =>
          exposureError(stops, say),
        ),
    ...depthLines(shot),
    figureLine(message`contrast after diffraction`, figures.contrast, (share) => say.number(share)),
    missing.length > 0 && line(message`checks missing`, missing.map(({ name }) => name).join(', ')),
  ]);
}
