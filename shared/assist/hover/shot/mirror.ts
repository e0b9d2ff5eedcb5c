/** What a mirror-like subject shows: lens, light, background; what a bubble shows of rim and lights. */
import { figureLine, type Line, line, paragraphs, plain, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

/** The subject is a flat mirror as far as is known: its lines are worth showing. */
const isFlatMirror = ({ figures }: SaidShot): boolean =>
  figures.leastTiltRad.known ||
  (figures.leastTiltRad.needs.length > 0 && figures.reflectance.known);

/** Beside the tilt: what the mirror asks of it, and the window that is left. */
export function mirrorTiltLines(shot: SaidShot): readonly Line[] {
  if (!isFlatMirror(shot)) return [];
  const { figures, say } = shot;
  return [
    figureLine(
      'least tilt, lens not in the mirror',
      figures.leastTiltRad,
      (rad) => `**${say.angle(rad)}**`,
    ),
    figureLine('greatest by depth', figures.greatestTiltByDepthRad, (rad) => say.angle(rad)),
    figureLine('window', figures.tiltWindow, ({ leastRad, greatestRad, openRad }) =>
      openRad > 0
        ? `${say.angle(leastRad)} to ${say.angle(greatestRad)}`
        : `shut, ${say.angle(-openRad)} from open`,
    ),
  ];
}

export const mirrorTiltWords = (shot: SaidShot): string | false =>
  isFlatMirror(shot) &&
  'Least tilt: the smallest at which no visible point throws any part of the entrance pupil back into the rim (law of reflection). It about halves with twice the working distance, and saves that depth.';

/** Beside a light of the shot: what a mirror-like subject needs of it. */
export function mirrorLightHover({ figures, say }: SaidShot): string {
  const { darkFrame, neededLight, strayRatio } = figures;
  if (!darkFrame.known && !neededLight.known) return '';
  return paragraphs(
    table([
      neededLight.known &&
        line(
          'the frame needs',
          `**${say.length(neededLight.value.widthMm)} x ${say.length(neededLight.value.heightMm)}**, ${say.angle(neededLight.value.upRad)} up, ${say.angle(neededLight.value.acrossRad)} across`,
        ),
      darkFrame.known &&
        line(
          'stays black',
          darkFrame.value.share > 0.001
            ? `${say.percent(darkFrame.value.share)} (${darkFrame.value.side})`
            : 'nothing',
        ),
      strayRatio.known && line('background over film', say.percent(strayRatio.value)),
    ]),
    'A mirror shows what stands at twice its tilt (family of angles).',
  );
}

/** Beside a bubble's name in a shot: where to focus, and what can't be tilted away. */
export function bubbleHover({ figures, say }: SaidShot): string {
  const { focusBehindNearestMm, bubbleImages } = figures;
  if (!focusBehindNearestMm.known) return '';
  const images = bubbleImages.known ? bubbleImages.value : [];
  return paragraphs(
    table([
      line('focus behind the nearest point', `**${say.length(focusBehindNearestMm.value)}**`),
      ...images.map(({ of, wall, xPx, yPx, widthPx, heightPx, blurPx }) =>
        line(
          `${plain(of)}, ${wall}`,
          `${Math.round(widthPx)} x ${Math.round(heightPx)} px at ${Math.round(xPx)}, ${Math.round(yPx)}; blur ${Math.round(blurPx)}`,
        ),
      ),
    ]),
    images.length > 0 &&
      'From the middle of the frame, up and right positive. The near wall shows them upright, the far wall upside down; they can be placed or masked, not tilted away (mirror equation).',
  );
}

/** Beside a level film's name: what it saves by being flat. */
export function levelFilmHover({ figures, say }: SaidShot): string {
  const { domeDepthMm, flatSavesStops } = figures;
  if (!domeDepthMm.known || !flatSavesStops.known) return '';
  return table([
    line('a dome would need', `${say.length(domeDepthMm.value)} of depth`),
    line('lying flat saves', `**${say.stops(flatSavesStops.value)}** of light`),
  ]);
}
