/** Beside a clear subject that is lit from behind: what passes, and its colours between polarisers. */
import { derive } from '../../../figures/figure.ts';
import { message } from '../../../words/message.ts';
import { figureLine, last, line, paragraphs, plain, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

/** Every so many of the swatches are named. */
const NAMED = 6;

export function throughHover({ figures, say, sure }: SaidShot): string {
  const { backlight, passedShare, retardationNm, retardationColours } = figures;
  if (!backlight.known) return '';
  const { light, share } = backlight.value;
  const nm = (value: number): string => `${say.number(value)} nm`;
  const colours = retardationColours.known ? retardationColours.value : undefined;
  return paragraphs(
    table([
      line(
        message`frame lit from behind`,
        message`**${say.percent(share)}** by ${plain(light)}${sure.behind(
          message`frame lit from behind`,
          (of) => derive([of.backlight], (one) => one.share),
          (value) => say.percent(value),
        )}`,
      ),
      figureLine(message`light that passes`, passedShare, (value) => say.percent(value)),
      retardationNm.known &&
        line(
          message`retardation`,
          message`${nm(retardationNm.value[0])} to ${nm(retardationNm.value[1])}`,
        ),
      colours &&
        line(
          message`orders of colour`,
          message`${say.number(colours.orders[0])} to ${say.number(colours.orders[1])}`,
        ),
    ]),
    colours &&
      message`Colours at 45°, by retardation: ${colours.swatches
        .filter((_, at) => at % NAMED === 0 || at === colours.swatches.length - 1)
        .map(({ retardationNm: at, hex }) => `${nm(at)} ${hex}`)
        .join(', ')}.`,
    retardationNm.known
      ? last(
          message`Formula: sin²2θ·sin²(π·Δn·d/λ) between crossed polarisers, θ 45° (Born and Wolf, Principles of Optics). Dark every 90°.`,
        )
      : message`The face of the light is seen through the subject: luminance times transmittance, at any distance.`,
  );
}
