/** What a move adds to the depth needed. */
import { figureLine, paragraphs, table } from '../markdown.ts';
import { depthLines } from './aperture.ts';
import type { SaidShot } from './view.ts';

export function moveHover(shot: SaidShot): string {
  const { figures, say } = shot;
  return paragraphs(
    table([
      figureLine('travel along the axis', figures.travelMm, (mm) => `**${say.length(mm)}**`),
      ...depthLines(shot),
    ]),
    'A slide along a tilted plane adds speed·time·sin(tilt − rail) to the depth needed, a push speed·time.',
  );
}
