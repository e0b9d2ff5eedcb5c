/** The recorded frame: the subject in it, what stays black, and what a bubble shows. */

import type { Drawing } from '../../../api/drawing.ts';
import type { BubbleImage } from '../../../figures/shot-figures.ts';
import { natureOf } from '../../../figures/subject-kinds.ts';
import type { FrameSide } from '../../../mirror/coverage.ts';
import { ifKnown } from '../../../plan/field.ts';
import { sizeWords } from '../../../say/figures.ts';
import { allOf } from '../../../words/listed.ts';
import { inLanguage, later, message } from '../../../words/message.ts';
import { el } from '../../markup.ts';
import { label, MARGIN, rect, scaleBar, WIDTH } from '../canvas.ts';
import { type SaidShot, undrawn } from '../said.ts';

const MOST_HEIGHT = 160;
/** Less than this share nobody sees. */
const LEAST_BLACK = 0.001;

export function frameDrawing(shot: SaidShot): Drawing | null {
  const { bench, figures, say } = shot;
  const { fieldMm: field, darkFrame, shade, bubbleImages } = figures;
  const drawing = { id: 'frame', title: message`Frame`, key: 'field' } as const;
  if (!field.known) return undrawn(drawing, [field]);
  const [width, height] = field.value;
  if (!Number.isFinite(width)) return null;
  const extent = extentOf(shot);
  const blackShare = shade.known ? shade.value.blackShare : 0;
  const dimShare = shade.known ? shade.value.dimShare : 0;
  const black =
    darkFrame.known && blackShare >= LEAST_BLACK
      ? { share: blackShare, side: darkFrame.value.side }
      : null;
  const images = bubbleImages.known ? bubbleImages.value : [];
  const words = [
    message`Field of view ${sizeWords([width, height], say)}.`,
    extent && extentWords(extent, [width, height], bench.subject!.name, say),
    black
      ? message`Without light: ${say.percent(black.share)} of it, ${inLanguage(SIDE_WORDS[black.side])}.`
      : shade.known && dimShare < LEAST_BLACK && message`The light fills it.`,
    dimShare >= LEAST_BLACK &&
      message`Dimmed, since the light fills only part of the aperture: ${say.percent(dimShare)}.`,
    images.length > 0 &&
      message`Outlined: ${allOf([...new Set(images.map(({ of }) => of))])}, upright in the bubble's front wall, upside down (dashed) in its rear wall.`,
  ];
  return {
    ...drawing,
    words: words.filter((one) => one).join(' '),
    picture: picture(shot, [width, height], extent, black, images),
  };
}

interface Extent {
  readonly width: number;
  readonly height: number;
  readonly isRound: boolean;
}

/** The subject as the lens sees it: shortened along its tilt. */
function extentOf({ bench }: SaidShot): Extent | null {
  const { subject, tiltRad, tiltAxis } = bench;
  if (!subject) return null;
  const size = ifKnown(subject.fields.size);
  const diameter = ifKnown(subject.fields.diameter);
  const cos = tiltRad.known ? Math.cos(tiltRad.value) : 1;
  const isRound = diameter !== undefined;
  const [width, height] = isRound
    ? [diameter, diameter]
    : size
      ? [size.width, size.height]
      : [0, 0];
  if (width === 0) return null;
  const isBall = natureOf(subject)?.shape === 'ball';
  if (isBall) return { width, height, isRound };
  return tiltAxis === 'level'
    ? { width, height: height * cos, isRound }
    : { width: width * cos, height, isRound };
}

const extentWords = (
  { width, height }: Extent,
  [across, down]: readonly [number, number],
  name: string,
  say: SaidShot['say'],
): string =>
  width >= across && height >= down
    ? message`\`${name}\` fills it.`
    : message`\`${name}\` is ${sizeWords([width, height], say)} as the lens sees it.`;

const SIDE_WORDS: Readonly<Record<FrameSide, string>> = {
  none: later`nowhere`,
  all: later`all over`,
  around: later`around its edges`,
  left: later`on its left`,
  right: later`on its right`,
  bottom: later`at its bottom`,
  top: later`at its top`,
};

function picture(
  { bench, say }: SaidShot,
  [widthMm, heightMm]: readonly [number, number],
  extent: Extent | null,
  black: { readonly share: number; readonly side: FrameSide } | null,
  images: readonly BubbleImage[],
): Drawing['picture'] {
  const perMm = Math.min((WIDTH - 2 * MARGIN) / widthMm, MOST_HEIGHT / heightMm);
  const [width, height] = [widthMm * perMm, heightMm * perMm];
  const [left, top] = [(WIDTH - width) / 2, MARGIN];
  const [cx, cy] = [left + width / 2, top + height / 2];
  const subject = extent && subjectShape(extent, perMm, cx, cy, [width, height]);
  const pixels = bench.recordedPixels.known ? bench.recordedPixels.value.width : null;
  return {
    height: top + height + 30,
    mmPerUnit: 1 / perMm,
    shapes: [
      rect('paper', left, top, width, height),
      subject,
      ...(black ? blackShapes(black, left, top, width, height) : []),
      ...(pixels === null
        ? []
        : images.flatMap((image) =>
            imageShape(image, width / pixels, cx, cy, [left, top, width, height]),
          )),
      el('path', {
        class: 'axis',
        d: `M${cx - 7} ${cy} H${cx + 7} M${cx} ${cy - 7} V${cy + 7}`,
      }),
      rect('frame', left, top, width, height, { 'data-frame': 'true' }),
      ...scaleBar(1 / perMm, MARGIN, top + height + 18),
      label(sizeWords([widthMm, heightMm], say), WIDTH - MARGIN, top + height + 22, 'end'),
    ],
  };
}

/** The subject inside the frame; what reaches past it ends at its edge. */
function subjectShape(
  { width, height, isRound }: Extent,
  perMm: number,
  cx: number,
  cy: number,
  [most, high]: readonly [number, number],
) {
  const [w, h] = [width * perMm, height * perMm];
  if (!isRound || Math.hypot(most, high) <= Math.min(w, h)) {
    const [shownW, shownH] = [Math.min(w, most), Math.min(h, high)];
    return rect('subject', cx - shownW / 2, cy - shownH / 2, shownW, shownH, {
      'data-subject': 'true',
    });
  }
  return el('path', {
    class: 'subject',
    'data-subject': 'true',
    d: roundInFrame(w / 2, h / 2, cx, cy, most / 2, high / 2),
  });
}

const STEPS = 72;

/** An ellipse cut at the frame: its points, each drawn in to the frame's edge. */
function roundInFrame(
  rx: number,
  ry: number,
  cx: number,
  cy: number,
  halfWidth: number,
  halfHeight: number,
): string {
  const within = (value: number, most: number): number => Math.max(-most, Math.min(most, value));
  const points = Array.from({ length: STEPS }, (_, step) => {
    const turn = (2 * Math.PI * step) / STEPS;
    const x = cx + within(rx * Math.cos(turn), halfWidth);
    const y = cy + within(ry * Math.sin(turn), halfHeight);
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  });
  return `M${points.join(' L')} Z`;
}

/** A band of the black's own area on the side where it lies. */
function blackShapes(
  { share, side }: { readonly share: number; readonly side: FrameSide },
  left: number,
  top: number,
  width: number,
  height: number,
) {
  const band = (x: number, y: number, w: number, h: number) =>
    rect('black', x, y, w, h, { 'data-black': side });
  switch (side) {
    case 'none':
      return [];
    case 'all':
      return [band(left, top, width, height)];
    case 'left':
      return [band(left, top, width * share, height)];
    case 'right':
      return [band(left + width * (1 - share), top, width * share, height)];
    case 'top':
      return [band(left, top, width, height * share)];
    case 'bottom':
      return [band(left, top + height * (1 - share), width, height * share)];
    case 'around': {
      // What is lit in the middle keeps the frame's proportions.
      const rest = Math.sqrt(1 - share);
      const [w, h] = [(width * (1 - rest)) / 2, (height * (1 - rest)) / 2];
      return [
        band(left, top, width, h),
        band(left, top + height - h, width, h),
        band(left, top + h, w, height - 2 * h),
        band(left + width - w, top + h, w, height - 2 * h),
      ];
    }
  }
}

function imageShape(
  { of, wall, xPx, yPx, widthPx, heightPx }: BubbleImage,
  perPixel: number,
  cx: number,
  cy: number,
  [left, top, width, height]: readonly [number, number, number, number],
) {
  const [w, h] = [widthPx * perPixel, heightPx * perPixel];
  const [x, y] = [cx + xPx * perPixel - w / 2, cy - yPx * perPixel - h / 2];
  const isInside = x < left + width && x + w > left && y < top + height && y + h > top;
  if (!isInside) return [];
  const [x1, y1] = [Math.max(left, x), Math.max(top, y)];
  const [x2, y2] = [Math.min(left + width, x + w), Math.min(top + height, y + h)];
  return [
    rect(
      wall === 'front' ? 'image' : 'image-rear',
      x1,
      y1,
      Math.max(1, x2 - x1),
      Math.max(1, y2 - y1),
      {
        'data-image': of,
      },
    ),
  ];
}
