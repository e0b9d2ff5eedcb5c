/** What a move adds to the depth needed, and what it and the flow smear. */
import { figureLine, type Line, paragraphs, table } from '../markdown.ts';
import { depthLines } from './aperture.ts';
import type { SaidShot } from './view.ts';

export function moveHover(shot: SaidShot): string {
  const { figures, say } = shot;
  return paragraphs(
    table([
      figureLine('travel along the axis', figures.travelMm, (mm) => `**${say.length(mm)}**`),
      ...smearLines(shot),
      ...depthLines(shot),
    ]),
    'A slide along a tilted plane adds speed·time·sin(tilt − rail) to the depth needed, a push speed·time.',
  );
}

export const flowHover = (shot: SaidShot): string =>
  paragraphs(
    table([...smearLines(shot)]),
    'Smear = (flow + move)·m·t / pixel, all of it across the axis and against each other (geometry).',
  );

const smearLines = ({ figures, say }: SaidShot): readonly Line[] => [
  figureLine('smears', figures.smearPx, (px) => `**${say.pixels(px)}** in each exposure`),
  figureLine(
    'moves past at',
    figures.subjectSpeedMmPerS,
    (speed) => `${say.length(speed)}/s at the subject, at most`,
  ),
];
