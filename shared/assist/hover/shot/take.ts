/** What the takes record, beside how long the film lasts. */
import { figureLine, paragraphs, table } from '../markdown.ts';
import { filmLifeHover } from './film.ts';
import type { SaidShot } from './view.ts';

export function takeHover(shot: SaidShot): string {
  const { recordedS, recordedBytes } = shot.figures;
  const { say } = shot;
  return paragraphs(
    table([
      figureLine('all takes', recordedS, (seconds) => `**${say.seconds(seconds)}**`),
      figureLine('they take up', recordedBytes, (bytes) => say.bytes(bytes)),
    ]),
    filmLifeHover(shot),
  );
}
