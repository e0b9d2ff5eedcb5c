/** Beside a light and its distance: how evenly the frame is lit. */
import { message } from '../../../words/message.ts';
import { line, paragraphs, plain, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

export function evennessHover({ bench, figures, say, sure }: SaidShot): string {
  const { unevennessStops: uneven } = figures;
  if (!uneven.known || (figures.reflectance.known && uneven.value === 0)) return '';
  return paragraphs(
    table([
      line(
        message`uneven over the frame of ${plain(bench.shot)}`,
        Number.isFinite(uneven.value)
          ? `**${say.stops(uneven.value)}**${sure.behind(
              message`unevenness`,
              (of) => of.unevennessStops,
              (stops) => say.stops(stops),
            )}`
          : message`**part of the frame gets no light**`,
      ),
    ]),
    message`From the brightest to the darkest place of the subject in the frame, edges included; the faces of the lights are summed at each (Lambert). A nearer light is brighter and less even.`,
  );
}
