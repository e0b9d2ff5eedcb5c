/** What the takes record, beside how long the film lasts. */
import { message } from '../../../words/message.ts';
import { figureLine, paragraphs, table } from '../markdown.ts';
import { filmLifeHover } from './film.ts';
import type { SaidShot } from './view.ts';

export function takeHover(shot: SaidShot): string {
  const { recordedS, recordedBytes } = shot.figures;
  const { say, sure } = shot;
  return paragraphs(
    table([
      figureLine(
        message`all takes`,
        recordedS,
        (seconds) =>
          `**${say.seconds(seconds)}**${sure.behind(
            message`all takes`,
            (of) => of.recordedS,
            (x) => say.seconds(x),
          )}`,
      ),
      figureLine(
        message`recorded data`,
        recordedBytes,
        (bytes) =>
          `${say.bytes(bytes)}${sure.behind(
            message`recorded data`,
            (of) => of.recordedBytes,
            (x) => say.bytes(x),
          )}`,
      ),
    ]),
    filmLifeHover(shot),
  );
}
