/** What a mirror-like subject shows: lens, light, background; what a bubble shows of rim and lights. */
import { isGloss } from '../../../figures/mirror-kind.ts';
import { message } from '../../../words/message.ts';
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
      message`least tilt, lens not in the mirror`,
      figures.leastTiltRad,
      (rad) => `**${say.angle(rad)}**`,
    ),
    figureLine(message`greatest by depth`, figures.greatestTiltByDepthRad, (rad) => say.angle(rad)),
    figureLine(message`window`, figures.tiltWindow, ({ leastRad, greatestRad, openRad }) =>
      openRad > 0
        ? message`${say.angle(leastRad)} to ${say.angle(greatestRad)}`
        : message`shut, ${say.angle(-openRad)} from open`,
    ),
  ];
}

export const mirrorTiltWords = (shot: SaidShot): string | false =>
  isFlatMirror(shot) &&
  message`Least tilt: the smallest at which no visible point throws any part of the entrance pupil back into the rim (law of reflection). It about halves with twice the working distance, and saves that depth.`;

/** Beside a light of the shot: what a mirror-like subject needs of it. */
export function mirrorLightHover({ figures, say }: SaidShot): string {
  const { darkFrame, shade, neededLight, strayRatio } = figures;
  if (!darkFrame.known && !neededLight.known) return '';
  return paragraphs(
    table([
      neededLight.known &&
        line(
          message`the frame needs`,
          message`**${say.length(neededLight.value.widthMm)} x ${say.length(neededLight.value.heightMm)}**, ${say.angle(neededLight.value.upRad)} up, ${say.angle(neededLight.value.acrossRad)} across`,
        ),
      darkFrame.known &&
        shade.known &&
        line(message`stays black`, shareIn(shade.value.blackShare, darkFrame.value.side, say)),
      darkFrame.known &&
        shade.known &&
        line(message`dims`, shareIn(shade.value.dimShare, darkFrame.value.side, say)),
      strayRatio.known && line(message`background over film`, say.percent(strayRatio.value)),
    ]),
    message`A mirror shows what stands at twice its tilt (family of angles).`,
  );
}

const shareIn = (share: number, side: string, say: SaidShot['say']): string =>
  share > 0.001 ? `${say.percent(share)} (${side})` : message`nothing`;
/** Beside the name of a glossy subject in a shot: what nothing is said about. */
export const glossWords = ({ bench }: SaidShot): string =>
  isGloss(bench)
    ? message`It is glossy: whether it mirrors lens or lights is not judged. Look for that in the picture.`
    : '';

/** Beside a bubble's name in a shot: where to focus, and what can't be tilted away. */
export function bubbleHover({ figures, say }: SaidShot): string {
  const { focusBehindNearestMm, bubbleImages } = figures;
  if (!focusBehindNearestMm.known) return '';
  const images = bubbleImages.known ? bubbleImages.value : [];
  return paragraphs(
    table([
      line(
        message`focus behind the nearest point`,
        `**${say.length(focusBehindNearestMm.value)}**`,
      ),
      ...images.map(({ of, wall, xPx, yPx, widthPx, heightPx, blurPx }) =>
        line(
          wall === 'front' ? message`${plain(of)}, front` : message`${plain(of)}, rear`,
          message`${Math.round(widthPx)} x ${Math.round(heightPx)} px at ${Math.round(xPx)}, ${Math.round(yPx)}; blur ${Math.round(blurPx)}`,
        ),
      ),
    ]),
    images.length > 0 &&
      message`From the middle of the frame, up and right positive. The near wall shows them upright, the far wall upside down; they can be placed or masked, not tilted away (mirror equation).`,
  );
}

/** Beside a level film's name: what it saves by being flat. */
export function levelFilmHover({ figures, say }: SaidShot): string {
  const { domeDepthMm, flatSavesStops } = figures;
  if (!domeDepthMm.known || !flatSavesStops.known) return '';
  return table([
    line(message`a dome would need`, message`${say.length(domeDepthMm.value)} of depth`),
    line(message`lying flat saves`, message`**${say.stops(flatSavesStops.value)}** of light`),
  ]);
}
