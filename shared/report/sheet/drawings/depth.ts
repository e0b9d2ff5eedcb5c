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
  const sharpSides: Side = { front: front.value, behind: behind.value };
  const there: Side = { front: front.value * grown, behind: behind.value * grown };
  const need = needed.known && needed.value > 0 ? neededSides(shot, needed.value) : null;
  const [thereWords, neededWords] = depthPair(judged.value, needed.known ? needed.value : 0, say);
  const sharpMm = grown > 1 + 1e-9 ? total.value : null;
  const [ahead, beyond] = sidesWords(sharpMm === null ? there : sharpSides, say);
  const sides = message`${ahead} in front of the plane of focus, ${beyond} behind`;
  const words = [
    sharpMm === null
      ? message`Depth of field ${thereWords}: ${sides} it.`
      : message`${say.length(sharpMm)} is sharp by focus: ${sides} it. Over ${thereWords} the blur stays below what diffraction softens anyway.`,
    needed.known
      ? needed.value > 0
        ? message`Needed: ${neededWords}.`
        : shot.bench.stack
          ? ''
          : message`No depth of field is needed.`
      : notKnownWords([needed], message`Depth of field needed`),
    figures.travelMm.known &&
      figures.travelMm.value > 0 &&
      message`The move uses ${say.length(figures.travelMm.value)} of it.`,
    figures.stackDepthMm.known &&
      figures.stackFrames.known &&
      figures.wholeDepthMm.known &&
      message`The focus stack covers ${say.length(figures.stackDepthMm.value)} with ${figures.stackFrames.value} frames; the subject needs ${say.length(figures.wholeDepthMm.value)}.`,
    figures.pullTravelMm.known &&
      figures.wholeDepthMm.known &&
      message`The focus pull covers ${say.length(Math.min(figures.pullTravelMm.value, figures.wholeDepthMm.value))} of ${say.length(figures.wholeDepthMm.value)}.`,
  ];
  return {
    ...drawing,
    words: words.filter((one) => one).join(' '),
    picture: isEndless
      ? null
      : picture(
          there,
          sharpMm === null ? null : sharpSides,
          need,
          sharpMm === null
            ? message`sharp: ${thereWords}`
            : message`sharp: ${say.length(sharpMm)} (${thereWords} by diffraction)`,
          needed.known ? neededWords : '',
        ),
  };
}

/** A bubble is focused a little ahead of its middle; all else in the middle. */
function neededSides({ figures }: SaidShot, needed: number): Side {
  const { focusBehindNearestMm: focus, wholeDepthMm: whole } = figures;
  const share = focus.known && whole.known ? focus.value / whole.value : 1 / 2;
  return { front: needed * share, behind: needed * (1 - share) };
}

/** Both sides so that they add up to the whole as it is said, the longer never said as the shorter. */
function sidesWords({ front, behind }: Side, say: SaidShot['say']): readonly [string, string] {
  const whole = Number.parseFloat(say.length(front + behind));
  const ahead = say.length(front);
  const places = say.length(front + behind).match(/\.(\d+)/)?.[1]?.length ?? 0;
  const unit = ahead.replace(/^[\d.]+ /, '');
  const isOneUnit = say.length(front + behind).endsWith(` ${unit}`);
  if (!isOneUnit || !Number.isFinite(whole)) return [ahead, say.length(behind)];
  const first = Number(Number.parseFloat(ahead).toFixed(places));
  const rest = Number((whole - first).toFixed(places));
  const isTurned = front <= behind !== first <= rest;
  const [near, far] = isTurned ? [rest, first] : [first, rest];
  return [`${near} ${unit}`, `${far} ${unit}`];
}

/** `sharp`: what is sharp by focus alone, where that is less. */
function picture(
  there: Side,
  sharp: Side | null,
  need: Side | null,
  thereWords: string,
  neededWords: string,
): Drawing['picture'] {
  const front = Math.max(there.front, need?.front ?? 0);
  const behind = Math.max(there.behind, need?.behind ?? 0);
  const mmPerUnit = (front + behind) / ROOM;
  const focus = MARGIN + front / mmPerUnit;
  const bar = (tone: 'there' | 'needed' | 'paper', side: Side, y: number, depth: string = tone) =>
    rect(tone, focus - side.front / mmPerUnit, y, (side.front + side.behind) / mmPerUnit, BAR, {
      'data-depth': depth,
    });
  const low = TOP + BAR + 26;
  return {
    height: low + BAR + 40,
    mmPerUnit,
    shapes: [
      label(message`toward the lens`, MARGIN, 14, 'start'),
      label(message`away`, WIDTH - MARGIN, 14, 'end'),
      bar(sharp ? 'paper' : 'there', there, TOP, 'there'),
      ...(sharp ? [bar('there', sharp, TOP, 'sharp')] : []),
      ...(need ? [bar('needed', need, low)] : []),
      // In pieces, so that it runs through no label.
      line('axis', focus, 20, focus, TOP + BAR + 2, { 'data-mark': 'focus' }),
      ...(need ? [line('axis', focus, low - 4, focus, low + BAR + 2)] : []),
      label(thereWords, WIDTH / 2, TOP + BAR + 14),
      ...(need ? [label(message`needed: ${neededWords}`, WIDTH / 2, low + BAR + 14)] : []),
      ...scaleBar(mmPerUnit, MARGIN, low + BAR + 32),
    ],
  };
}
