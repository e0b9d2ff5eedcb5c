/** Depth along the lens axis: what is sharp, and what the shot needs to be. */

import type { Drawing } from '../../../api/drawing.ts';
import { depthPair } from '../../../say/figures.ts';
import { message } from '../../../words/message.ts';
import { label, line, MARGIN, rect, scaleBar, WIDTH } from '../canvas.ts';
import { notKnownWords, type SaidShot, undrawn } from '../said.ts';

interface Side {
  readonly front: number;
  readonly behind: number;
}

const ROOM = WIDTH - 2 * MARGIN;
const TOP = 30;
const BAR = 22;

export function depthDrawing(shot: SaidShot): Drawing | null {
  const { figures, say } = shot;
  const { usableDepthMm: judged } = figures;
  const { front, behind, total, needed } = figures.depthMm;
  const drawing = {
    id: 'depth',
    title: message`Depth of field: available and needed`,
    key: 'aperture',
  } as const;
  if (!judged.known || !front.known || !behind.known || !total.known)
    return undrawn(drawing, [judged, front, behind, total]);
  const isEndless = !Number.isFinite(judged.value);
  // Where the Airy disk is larger than the blur that geometry allows, both sides grow alike.
  const grown = isEndless ? 1 : judged.value / total.value;
  const there: Side = { front: front.value * grown, behind: behind.value * grown };
  const need = needed.known && needed.value > 0 ? neededSides(shot, needed.value) : null;
  const [thereWords, neededWords] = depthPair(judged.value, needed.known ? needed.value : 0, say);
  const words = [
    message`Depth of field ${thereWords}: ${say.length(there.front)} in front of the plane of focus, ${say.length(there.behind)} behind it.`,
    needed.known
      ? needed.value > 0
        ? message`Needed: ${neededWords}.`
        : message`No depth of field is needed.`
      : notKnownWords([needed], message`Depth of field needed`),
    figures.travelMm.known &&
      figures.travelMm.value > 0 &&
      message`The move uses ${say.length(figures.travelMm.value)} of it.`,
    figures.pullTravelMm.known &&
      figures.wholeDepthMm.known &&
      message`The focus pull covers ${say.length(Math.min(figures.pullTravelMm.value, figures.wholeDepthMm.value))} of ${say.length(figures.wholeDepthMm.value)}.`,
  ];
  return {
    ...drawing,
    words: words.filter((one) => one).join(' '),
    picture: isEndless ? null : picture(there, need, thereWords, needed.known ? neededWords : ''),
  };
}

/** A bubble is focused a little ahead of its middle; all else in the middle. */
function neededSides({ figures }: SaidShot, needed: number): Side {
  const { focusBehindNearestMm: focus, wholeDepthMm: whole } = figures;
  const share = focus.known && whole.known ? focus.value / whole.value : 1 / 2;
  return { front: needed * share, behind: needed * (1 - share) };
}

function picture(
  there: Side,
  need: Side | null,
  thereWords: string,
  neededWords: string,
): Drawing['picture'] {
  const front = Math.max(there.front, need?.front ?? 0);
  const behind = Math.max(there.behind, need?.behind ?? 0);
  const mmPerUnit = (front + behind) / ROOM;
  const focus = MARGIN + front / mmPerUnit;
  const bar = (tone: 'there' | 'needed', side: Side, y: number) =>
    rect(tone, focus - side.front / mmPerUnit, y, (side.front + side.behind) / mmPerUnit, BAR, {
      'data-depth': tone,
    });
  const low = TOP + BAR + 26;
  return {
    height: low + BAR + 40,
    mmPerUnit,
    shapes: [
      label(message`toward the lens`, MARGIN, 14, 'start'),
      label(message`away`, WIDTH - MARGIN, 14, 'end'),
      bar('there', there, TOP),
      ...(need ? [bar('needed', need, low)] : []),
      line('axis', focus, 20, focus, low + BAR + 4, { 'data-mark': 'focus' }),
      label(message`sharp: ${thereWords}`, WIDTH / 2, TOP + BAR + 14),
      ...(need ? [label(message`needed: ${neededWords}`, WIDTH / 2, low + BAR + 14)] : []),
      ...scaleBar(mmPerUnit, MARGIN, low + BAR + 32),
    ],
  };
}
