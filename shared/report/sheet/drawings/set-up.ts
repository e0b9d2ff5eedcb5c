/**
 * Subject, lens and light in the plane of the tilt, and the same set from the other side. Rays run
 * from the pupil over both edges of the frame and are thrown back by a mirror-like subject: where
 * they end, the light has to be.
 */

import type { Drawing } from '../../../api/drawing.ts';
import { frontDiameter } from '../../../figures/assumed.ts';
import { sourceOf } from '../../../figures/light-source.ts';
import { supportOf } from '../../../figures/load.ts';
import { isGloss } from '../../../figures/mirror-kind.ts';
import { natureOf } from '../../../figures/subject-kinds.ts';
import type { Source } from '../../../mirror/source.ts';
import { ifKnown } from '../../../plan/field.ts';
import { saidInFrame } from '../../../say/in-frame.ts';
import { allOf } from '../../../words/listed.ts';
import { inLanguage, later, message } from '../../../words/message.ts';
import { type SaidShot, settable, undrawn } from '../said.ts';
import { scenePicture } from './set-up-picture.ts';
import { planPicture } from './set-up-plan.ts';
import { type PlacedLight, sceneOf } from './set-up-scene.ts';

export function setUpDrawing(shot: SaidShot): Drawing | null {
  const { bench, figures, say } = shot;
  const { workingDistanceMm: room, fieldMm: field, trace } = figures;
  const isTurned = bench.tiltAxis === 'upright';
  const isOverhead = hangsOver(bench);
  const drawing = {
    id: 'set-up',
    title: isTurned && !isOverhead ? inLanguage(FROM_ABOVE) : inLanguage(FROM_THE_SIDE),
    key: 'tilt',
  } as const;
  if (!bench.subject) return null;
  const rim = bench.lens ? frontDiameter(bench.lens) : null;
  if (!room.known || !field.known || !trace.known || !rim?.known)
    return undrawn(drawing, [room, field, trace, ...(rim ? [rim] : [])]);
  if (!Number.isFinite(room.value) || !(room.value > 0)) return null;
  const lights = bench.lights.known ? bench.lights.value : [];
  const placed = placedLights(shot);
  const unplaced = lights.length - placed.length;
  const words = [
    message`Working distance ${say.length(room.value)}; front diameter ${say.length(rim.value)}.`,
    isOverhead && message`The rig is overhead and drawn looking down.`,
    isOverhead && liesLevel(bench) && bench.tiltRad.known && bench.tiltRad.value !== 0
      ? message`It leans ${say.angle(bench.tiltRad.value)} from straight down.`
      : bench.tiltRad.known && bench.tiltRad.value !== 0
        ? isTurned
          ? message`The subject is turned ${say.angle(bench.tiltRad.value)}.`
          : ifKnown(bench.subject.fields.kind) === 'film'
            ? message`The film leans back ${say.angle(bench.tiltRad.value)}.`
            : message`The subject leans back ${say.angle(bench.tiltRad.value)}.`
        : message`The subject faces the lens.`,
    isGloss(bench) && glossWords(shot),
    ...placed.map(({ name, source }) => `\`${name}\`: ${placeWords(source, say)}.`),
    neededWords(shot),
    unplaced > 0 &&
      (unplaced === 1
        ? message`The position of one light is unknown.`
        : message`The positions of ${unplaced} lights are unknown.`),
  ];
  const scene = sceneOf(shot, room.value, rim.value, field.value, placed, bench.tiltAxis);
  return {
    ...drawing,
    words: words.filter((one) => one).join(' '),
    picture: scene && scenePicture(scene, room.value, say, isOverhead ? hangingTurn(bench) : 0),
  };
}

/** Where a glossy subject shows its brightest light. */
function glossWords({ figures: { highlight, highlightPlace } }: SaidShot): string {
  if (!highlight.known || !highlightPlace.known)
    return message`Where it reflects the lights is not known.`;
  const where = saidInFrame(highlightPlace.value);
  return message`Its flat face shows \`${highlight.value.light}\` ${where}.`;
}

/** The same set from the other side; null where no light stands anywhere, or the first can't be drawn. */
export function otherViewDrawing(shot: SaidShot): Drawing | null {
  const { bench, figures, say } = shot;
  const { workingDistanceMm: room, fieldMm: field, trace } = figures;
  const rim = bench.lens ? frontDiameter(bench.lens) : null;
  if (!bench.subject || !room.known || !field.known || !trace.known || !rim?.known) return null;
  if (!Number.isFinite(room.value) || !(room.value > 0)) return null;
  const placed = placedLights(shot);
  if (placed.length === 0 || !field.value.every(Number.isFinite)) return null;
  const isOverhead = hangsOver(bench);
  const fromAbove = isOverhead || bench.tiltAxis === 'level';
  const other = bench.tiltAxis === 'level' ? 'upright' : 'level';
  const words = isOverhead
    ? message`The same set from above, along the lens axis: lens, frame and lights.`
    : fromAbove
      ? message`The same set from above, to scale.`
      : message`The same set from the side, to scale.`;
  const scene = sceneOf(shot, room.value, rim.value, field.value, placed, other);
  return {
    id: 'set-up-other',
    title: inLanguage(fromAbove ? FROM_ABOVE : FROM_THE_SIDE),
    key: 'light',
    words,
    picture: isOverhead
      ? planPicture(field.value, rim.value, placed)
      : scene && scenePicture(scene, room.value, say, 0),
  };
}

const FROM_ABOVE = later`Subject, lens and light from above`;
const FROM_THE_SIDE = later`Subject, lens and light from the side`;

const placedLights = ({ bench }: SaidShot): readonly PlacedLight[] =>
  (bench.lights.known ? bench.lights.value : []).flatMap((light) => {
    const source = sourceOf(light);
    return source.known ? [{ name: light.name, source: source.value }] : [];
  });

/** Whether the rig looks down: it is overhead, and its subject doesn't stand upright. */
function hangsOver(bench: SaidShot['bench']): boolean {
  const support = supportOf(bench);
  const isOverhead = support?.state === 'known' && ifKnown(support.value.overhead) === true;
  return isOverhead && (!bench.subject || ifKnown(bench.subject.fields.orientation) !== 'upright');
}

/** A quarter turn, less the tilt of what lies level: then the rig leans, not the liquid. */
function hangingTurn(bench: SaidShot['bench']): number {
  const { tiltRad, tiltAxis } = bench;
  const lean = liesLevel(bench) && tiltRad.known ? tiltRad.value : 0;
  return Math.PI / 2 - (tiltAxis === 'level' ? lean : -lean);
}

/** A liquid lies level whatever leans; so does a film that the plan says so of. */
function liesLevel({ subject }: SaidShot['bench']): boolean {
  const nature = natureOf(subject);
  return (
    (nature?.isLiquid === true && !nature.isFilm) ||
    (subject !== undefined && ifKnown(subject.fields.orientation) === 'level')
  );
}

export const placeWords = (
  { distanceMm, upRad, acrossRad }: Source,
  say: SaidShot['say'],
): string =>
  allOf([
    message`${say.length(distanceMm)} away`,
    ...(isStraightBehind(upRad, acrossRad)
      ? [message`straight behind the subject`]
      : directions(upRad, acrossRad, say)),
  ]);

/** Half a turn by one of the angles and none by the other: nobody looks for a light "180° up". */
const isStraightBehind = (upRad: number, acrossRad: number): boolean =>
  [
    [upRad, acrossRad],
    [acrossRad, upRad],
  ].some(([turned, other]) => dropped(Math.PI - Math.abs(turned!)) === 0 && dropped(other!) === 0);

/** "12° up and 3° to the right"; "on the lens axis". */
function directionWords(upRad: number, acrossRad: number, say: SaidShot['say']): string {
  const words = directions(dropped(upRad), dropped(acrossRad), say);
  return words.length === 0 ? message`on the lens axis` : allOf(words);
}

/** Less than a tenth of a degree is none. */
const dropped = (radians: number): number => (Math.abs(radians) < 0.0017 ? 0 : radians);

const directions = (upRad: number, acrossRad: number, say: SaidShot['say']): readonly string[] => [
  ...(upRad === 0
    ? []
    : [`${say.angle(Math.abs(upRad))} ${upRad > 0 ? message`up` : message`down`}`]),
  ...(acrossRad === 0
    ? []
    : [
        acrossRad > 0
          ? message`${say.angle(Math.abs(acrossRad))} to the right`
          : message`${say.angle(Math.abs(acrossRad))} to the left`,
      ]),
];

/** Less of the frame than this nobody sees. */
const LEAST_DARK = 0.001;

const neededWords = (shot: SaidShot): string | null => {
  const { figures, say } = shot;
  const { neededLight: light, darkFrame } = figures;
  if (!light.known) return null;
  const { upRad, acrossRad, widthMm, heightMm } = light.value;
  const size = [widthMm, heightMm].map((mm) => settable(mm, shot, Math.ceil));
  const [width = '', height = ''] = size;
  const unit = height.replace(/^[\d.]+/, '');
  const sides = `${width.endsWith(unit) ? width.slice(0, width.length - unit.length) : width} × ${height}`;
  const place = directionWords(upRad, acrossRad, say);
  const covers = !darkFrame.known
    ? ''
    : darkFrame.value.share < LEAST_DARK
      ? message`; \`${darkFrame.value.light}\` covers it`
      : message`; \`${darkFrame.value.light}\` leaves part of the frame dark`;
  return message`Light needed: a lit area of at least ${sides}, centred ${place}${covers}.`;
};
