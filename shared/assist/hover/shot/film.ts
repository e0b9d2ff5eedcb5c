/** The film's life beside the take, and its colours beside its thickness. */
import type { FilmBandShare } from '../../../film/returned.ts';
import { bandWords } from '../../../report/film-words.ts';
import { message } from '../../../words/message.ts';
import { figureLine, last, line, paragraphs, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

/** Beside the take; empty where there is no film. */
export function filmLifeHover({ figures, say, sure }: SaidShot): string {
  const { lifeS, shareOfLife } = figures;
  if (!lifeS.known && !shareOfLife.known) return '';
  return paragraphs(
    table([
      figureLine(message`take and wait`, shareOfLife, (share) =>
        lifeS.known ? `**${say.seconds(share * lifeS.value)}**` : say.percent(share),
      ),
      figureLine(
        message`film lifetime`,
        lifeS,
        (seconds) =>
          `${say.seconds(seconds)}${sure.behind(
            message`film lifetime`,
            (of) => of.lifeS,
            (x) => say.seconds(x),
          )}`,
      ),
    ]),
    last(
      message`By \`lifetime\` of the subject, else by its orientation and holder (common practice).`,
    ),
  );
}

/** Every so many of the swatches are named. */
const NAMED = 4;

export function filmColoursHover({ figures, say }: SaidShot): string {
  const { filmColours, filmBands, reflectance } = figures;
  if (!filmColours.known) return '';
  const { swatches, bands } = filmColours.value;
  const nm = (value: number) => `${Math.round(value)} nm`;
  return paragraphs(
    filmBands.known &&
      reflectance.known &&
      table([
        line(message`mean reflectance`, `**${say.percent(reflectance.value)}**`),
        ...(
          [
            [message`brightest band`, filmBands.value.brightest],
            [message`darkest band`, filmBands.value.darkest],
          ] as const
        ).map(([words, band]) =>
          line(words, bandShare(band, reflectance.value, nm(band.thicknessNm), say)),
        ),
      ]),
    message`Colours, first maximum near white: ${swatches
      .filter((_, index) => index % NAMED === 0 || index === swatches.length - 1)
      .map(({ thicknessNm, hex }) => `${nm(thicknessNm)} ${hex}`)
      .join(', ')}.`,
    bands
      .map(({ band, fromNm, toNm }) => message`${bandWords(band)}: ${nm(fromNm)} to ${nm(toNm)}`)
      .join(' · '),
    last(
      message`Reflectance by the Airy sum, in air or on the liquid, n of water (Daimon and Masumura 2007) unless given, under the shot's light and white balance; CIE 1931 2°.`,
    ),
  );
}

/** Share of the light in one band, and how many stops it lies from the film's mean. */
function bandShare(
  { reflectance }: FilmBandShare,
  mean: number,
  thickness: string,
  say: SaidShot['say'],
): string {
  const share = message`${say.percent(reflectance)} at ${thickness}`;
  return reflectance > 0
    ? message`${share}, ${say.stopsSigned(Math.log2(reflectance / mean))}`
    : share;
}
