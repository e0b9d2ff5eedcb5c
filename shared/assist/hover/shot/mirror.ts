/** What a mirror-like subject shows: lens, light, background; what a bubble shows of rim and lights. */
import { derive } from '../../../figures/figure.ts';
import { isGloss } from '../../../figures/mirror-kind.ts';
import { saidInFrame } from '../../../say/in-frame.ts';
import { message } from '../../../words/message.ts';
import { figureLine, type Line, last, line, paragraphs, plain, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

/** The subject is a flat mirror as far as is known: its lines are worth showing. */
const isFlatMirror = ({ figures }: SaidShot): boolean =>
  figures.leastTiltRad.known ||
  (figures.leastTiltRad.needs.length > 0 && figures.reflectance.known);

/** Beside the tilt: the window that is left, and the limits that the mirror and the depth set. */
export function mirrorTiltLines(
  shot: SaidShot,
): readonly [window: readonly Line[], limits: readonly Line[]] {
  if (!isFlatMirror(shot)) return [[], []];
  const { figures, say, sure } = shot;
  const angle = (rad: number): string => say.angle(rad);
  const window = [
    figureLine(message`tilt window`, figures.tiltWindow, ({ leastRad, greatestRad, openRad }) =>
      openRad > 0
        ? message`**${say.angle(leastRad)} to ${say.angle(greatestRad)}**`
        : message`**none**, short by ${say.angle(-openRad)}`,
    ),
  ];
  const limits = [
    figureLine(
      message`minimum tilt (lens not reflected)`,
      figures.leastTiltRad,
      (rad) =>
        `${say.angle(rad)}${sure.behind(message`minimum tilt`, (of) => of.leastTiltRad, angle)}`,
    ),
    figureLine(
      message`maximum tilt by depth of field`,
      figures.greatestTiltByDepthRad,
      (rad) =>
        `${say.angle(rad)}${sure.behind(message`maximum tilt`, (of) => of.greatestTiltByDepthRad, angle)}`,
    ),
  ];
  return [window, limits];
}

export const mirrorTiltWords = (shot: SaidShot): string | false =>
  isFlatMirror(shot) &&
  last(
    message`Formula: minimum tilt by the law of reflection, from the entrance pupil and the front diameter. Twice the working distance needs about half the minimum tilt, which saves depth of field.`,
  );

/** Beside a light of the shot: what a mirror-like subject needs of it. */
export function mirrorLightHover({ figures, say, sure }: SaidShot): string {
  const { darkFrame, shade, neededLight, strayRatio } = figures;
  if (!darkFrame.known && !neededLight.known) return '';
  return paragraphs(
    table([
      neededLight.known &&
        line(
          message`light needed to fill the frame`,
          message`**${say.length(neededLight.value.widthMm)} × ${say.length(neededLight.value.heightMm)}**, ${say.angle(neededLight.value.upRad)} above, ${say.angle(neededLight.value.acrossRad)} to the side`,
        ),
      darkFrame.known &&
        shade.known &&
        line(
          message`black part of the frame`,
          shareIn(shade.value.blackShare, darkFrame.value.side, say),
        ),
      darkFrame.known &&
        shade.known &&
        line(
          message`dimmed part of the frame`,
          shareIn(shade.value.dimShare, darkFrame.value.side, say),
        ),
      strayRatio.known &&
        line(
          message`background against film`,
          `${say.percent(strayRatio.value)}${sure.behind(
            message`background against film`,
            (of) => of.strayRatio,
            (share) => say.percent(share),
          )}`,
        ),
    ]),
    message`A mirror shows objects at twice its tilt (family of angles).`,
  );
}

const shareIn = (share: number, side: string, say: SaidShot['say']): string =>
  share > 0.001 ? `${say.percent(share)} (${side})` : message`nothing`;

/** Beside the name of a glossy subject in a shot: the image of its lights, and what is not said. */
export function glossHover({ bench, figures, say, sure }: SaidShot): string {
  if (!isGloss(bench)) return '';
  const { highlight, highlightPlace, highlightLatitudeStops, reflectance } = figures;
  return paragraphs(
    table([
      figureLine(
        message`highlight over mid-grey`,
        highlight,
        ({ stops }) =>
          `**${say.stopsSigned(stops)}**${sure.behind(
            message`highlight`,
            (of) => derive([of.highlight], (one) => one.stops),
            (value) => say.stopsSigned(value),
          )}`,
      ),
      figureLine(
        message`highlight latitude`,
        highlightLatitudeStops,
        (stops) =>
          `${say.stops(stops)}${sure.behind(
            message`highlight latitude`,
            (of) => of.highlightLatitudeStops,
            (value) => say.stops(value),
          )}`,
      ),
      highlight.known && line(message`light`, plain(highlight.value.light)),
      highlight.known &&
        figureLine(message`flat face shows it`, highlightPlace, (place) => saidInFrame(place)),
      figureLine(message`reflectance R`, reflectance, (share) => say.percent(share)),
    ]),
    highlightPlace.known && !highlightPlace.value.isFlat && message`Relief may show it anywhere.`,
    last(
      message`Formula: log2(R·C/(K·Ω)) and the exposure error by this light; Ω is its projected solid angle (ISO 2720).`,
    ),
  );
}

/** Beside a bubble's name in a shot: where to focus, and what can't be tilted away. */
export function bubbleHover({ figures, say, sure }: SaidShot): string {
  const { focusBehindNearestMm, bubbleImages } = figures;
  if (!focusBehindNearestMm.known) return '';
  const images = bubbleImages.known ? bubbleImages.value : [];
  return paragraphs(
    table([
      line(
        message`focus beyond the nearest point`,
        `**${say.length(focusBehindNearestMm.value)}**${sure.behind(
          message`focus`,
          (of) => of.focusBehindNearestMm,
          (mm) => say.length(mm),
        )}`,
      ),
      ...images.map(({ of, wall, xPx, yPx, widthPx, heightPx, blurPx }) =>
        line(
          wall === 'front' ? message`${plain(of)}, front` : message`${plain(of)}, rear`,
          message`${Math.round(widthPx)} × ${Math.round(heightPx)} px at ${Math.round(xPx)}, ${Math.round(yPx)}; blur ${Math.round(blurPx)}`,
        ),
      ),
    ]),
    images.length > 0 &&
      message`From the middle of the frame, up and right positive. The near wall shows them upright, the far wall upside down (mirror equation). Place or mask them; tilting does not remove them.`,
  );
}

/** Beside a level film's name: what it saves by being flat. */
export function levelFilmHover({ figures, say, sure }: SaidShot): string {
  const { domeDepthMm, flatSavesStops } = figures;
  if (!domeDepthMm.known || !flatSavesStops.known) return '';
  return table([
    line(
      message`a dome needs`,
      message`${say.length(domeDepthMm.value)}${sure.behind(
        message`a dome`,
        (of) => of.domeDepthMm,
        (mm) => say.length(mm),
      )} depth of field`,
    ),
    line(
      message`lying flat saves`,
      message`**${say.stops(flatSavesStops.value)}**${sure.behind(
        message`lying flat`,
        (of) => of.flatSavesStops,
        (stops) => say.stops(stops),
      )} of light`,
    ),
  ]);
}
