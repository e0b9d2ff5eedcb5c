/** What a move adds to the depth needed, and what it and the flow smear. */

import { derive } from '../../../figures/figure.ts';
import { durationOf } from '../../../figures/needed-depth.ts';
import type { PullEnd } from '../../../figures/shot-figures.ts';
import { ifKnown } from '../../../plan/field.ts';
import type { Move } from '../../../plan/generated/types.ts';
import { significant } from '../../../say/say.ts';
import { message } from '../../../words/message.ts';
import { figureLine, type Line, last, paragraphs, table } from '../markdown.ts';
import { depthLines } from './aperture.ts';
import type { SaidShot } from './view.ts';

export function moveHover(shot: SaidShot): string {
  const { bench, figures, say, sure } = shot;
  const move = ifKnown(bench.fields.move);
  if (move && ifKnown(move.kind) === 'focus-pull') return pullHover(shot, move);
  return paragraphs(
    table([
      figureLine(
        message`travel along the axis`,
        figures.travelMm,
        (mm) =>
          `**${say.length(mm)}**${sure.behind(
            message`travel along the axis`,
            (of) => of.travelMm,
            (x) => say.length(x),
          )}`,
      ),
      ...smearLines(shot),
      ...depthLines(shot),
    ]),
    message`A slide along a tilted plane adds speed·time·sin(tilt − rail angle) to the depth needed; a push-in adds speed·time.`,
  );
}

function pullHover(shot: SaidShot, move: Move): string {
  const { bench, figures, say, sure } = shot;
  const length = (mm: number): string => say.length(mm);
  const { pullEnds, pullTravelMm, usableDepthMm } = figures;
  const seconds = durationOf(move, bench);
  return paragraphs(
    table([
      figureLine(
        message`focus travel`,
        pullTravelMm,
        (mm) =>
          message`**${say.length(mm)}**${sure.behind(message`focus travel`, (of) => of.pullTravelMm, length)} along the axis`,
      ),
      figureLine(
        message`field at both ends`,
        pullEnds,
        (ends) =>
          message`**${ends.map(({ fieldMm }) => say.length(fieldMm[0])).join(message` to `)}** wide: ${breathing(ends)}`,
      ),
      figureLine(
        message`depth of field`,
        usableDepthMm,
        (mm) =>
          `${say.length(mm)}${sure.behind(message`depth of field`, (of) => of.usableDepthMm, length)}`,
      ),
      figureLine(message`depth needed beyond the pull`, figures.depthMm.needed, (mm) =>
        mm > 0 ? say.length(mm) : message`none`,
      ),
      figureLine(
        message`a detail stays sharp for`,
        derive([usableDepthMm, pullTravelMm, seconds], (depth, travel, time) =>
          travel === 0 ? Number.POSITIVE_INFINITY : Math.min(time, (time * depth) / travel),
        ),
        (time) =>
          Number.isFinite(time)
            ? message`${say.seconds(time)}, turned evenly`
            : message`all the time`,
      ),
    ]),
    last(
      message`The rig is traced with its ring at both ends; the marks are those engraved for the lens alone. Calculated, even where other ring settings were measured.`,
    ),
  );
}

/** How much the picture grows or shrinks on the way. */
function breathing([from, to]: readonly [PullEnd, PullEnd]): string {
  const change = to.fieldMm[0] / from.fieldMm[0] - 1;
  const percent = significant(Math.abs(change) * 100, 2);
  return change < 0
    ? message`focus breathing ${percent}%, closer`
    : message`focus breathing ${percent}%, wider`;
}

export const flowHover = (shot: SaidShot): string =>
  paragraphs(
    table([...smearLines(shot)]),
    last(
      message`Formula: blur = (subject speed + move)·m·t / pixel, all of it across the axis and against each other (geometry).`,
    ),
  );

const smearLines = ({ figures, say, sure }: SaidShot): readonly Line[] => [
  figureLine(
    message`motion blur`,
    figures.smearPx,
    (px) =>
      message`**${say.pixels(px)}**${sure.behind(
        message`motion blur`,
        (of) => of.smearPx,
        (x) => say.pixels(x),
      )} per frame`,
  ),
  figureLine(
    message`speed in the frame`,
    figures.subjectSpeedMmPerS,
    (speed) =>
      message`${say.length(speed)}/s${sure.behind(
        message`speed in the frame`,
        (of) => of.subjectSpeedMmPerS,
        (x) => say.speed(x),
      )} at the subject, at most`,
  ),
];
