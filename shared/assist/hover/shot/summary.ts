/** A shot at a glance, for its name. */
import { exposureWords, sizeWords } from '../../words.ts';
import { figureLine, line, plain, table } from '../markdown.ts';
import { depthLines } from './aperture.ts';
import type { SaidShot } from './view.ts';

export function shotSummary(shot: SaidShot): string {
  const { bench, figures, say } = shot;
  const { marked, iso } = bench;
  return table([
    line(`**${plain(bench.shot)}**`, 'shot'),
    bench.subject && line('subject', plain(bench.subject.name)),
    bench.rigName !== undefined && line('rig', plain(bench.rigName)),
    figureLine('field', figures.fieldMm, (size) => sizeWords(size, say)),
    figureLine('magnification', figures.magnification, (m) => say.magnification(m)),
    figureLine('working distance', figures.workingDistanceMm, (mm) => say.length(mm)),
    figureLine('aperture', figures.effectiveFNumber, (n) =>
      marked.known ? `${say.fNumber(marked.value)}, works as ${say.fNumber(n)}` : say.fNumber(n),
    ),
    figureLine('shutter', figures.shutterSeconds, (s) => say.shutter(s)),
    iso.known && iso.value === 'auto'
      ? figureLine('ISO needed', figures.isoNeeded, (needed) => say.iso(needed))
      : figureLine('exposure', figures.exposureErrorStops, (stops) =>
          exposureWords(stops, say).replace('exposure ', ''),
        ),
    ...depthLines(shot),
    figureLine('contrast left', figures.contrast, (share) => say.number(share)),
  ]);
}
