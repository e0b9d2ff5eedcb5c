/** What a move adds to the depth needed, and what it and the flow smear. */

import { derive } from '../../../figures/figure.ts';
import { durationOf } from '../../../figures/needed-depth.ts';
import type { PullEnd } from '../../../figures/shot-figures.ts';
import { ifKnown } from '../../../plan/field.ts';
import type { Move } from '../../../plan/generated/types.ts';
import { significant } from '../../../rules/say.ts';
import { figureLine, type Line, paragraphs, table } from '../markdown.ts';
import { depthLines } from './aperture.ts';
import type { SaidShot } from './view.ts';

export function moveHover(shot: SaidShot): string {
  const { bench, figures, say } = shot;
  const move = ifKnown(bench.fields.move);
  if (move && ifKnown(move.kind) === 'pull') return pullHover(shot, move);
  return paragraphs(
    table([
      figureLine('travel along the axis', figures.travelMm, (mm) => `**${say.length(mm)}**`),
      ...smearLines(shot),
      ...depthLines(shot),
    ]),
    'A slide along a tilted plane adds speed·time·sin(tilt − rail) to the depth needed, a push speed·time.',
  );
}

function pullHover(shot: SaidShot, move: Move): string {
  const { bench, figures, say } = shot;
  const { pullEnds, pullTravelMm, judgedDepthMm } = figures;
  const seconds = durationOf(move, bench);
  return paragraphs(
    table([
      figureLine('focus goes', pullTravelMm, (mm) => `**${say.length(mm)}** along the axis`),
      figureLine(
        'field at both ends',
        pullEnds,
        (ends) =>
          `**${ends.map(({ fieldMm }) => say.length(fieldMm[0])).join(' to ')}** wide: ${breathing(ends)}`,
      ),
      figureLine('depth', judgedDepthMm, (mm) => say.length(mm)),
      figureLine(
        'a detail stays sharp for',
        derive([judgedDepthMm, pullTravelMm, seconds], (depth, travel, time) =>
          travel === 0 ? Number.POSITIVE_INFINITY : Math.min(time, (time * depth) / travel),
        ),
        (time) => (Number.isFinite(time) ? `${say.seconds(time)}, turned evenly` : 'all the time'),
      ),
    ]),
    'The rig is traced with its ring at both ends; the marks are those engraved for the lens alone. By calculation, whatever was measured elsewhere on the ring.',
  );
}

/** How much the picture grows or shrinks on the way. */
function breathing([from, to]: readonly [PullEnd, PullEnd]): string {
  const change = to.fieldMm[0] / from.fieldMm[0] - 1;
  const percent = significant(Math.abs(change) * 100, 2);
  return `it breathes ${percent} %, ${change < 0 ? 'closer' : 'wider'}`;
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
