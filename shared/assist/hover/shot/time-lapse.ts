/** A time-lapse: its frames and real time, how it plays, and what exposure and battery leave. */
import { message } from '../../../words/message.ts';
import { figureLine, last, paragraphs, table } from '../markdown.ts';
import { filmLifeHover } from './film.ts';
import type { SaidShot } from './view.ts';

export function timeLapseHover(shot: SaidShot): string {
  const { bench, figures, say, sure } = shot;
  const interval = bench.timeLapse?.intervalS;
  return paragraphs(
    table([
      figureLine(message`frames`, figures.timeLapseFrames, (count) => `**${say.number(count)}**`),
      figureLine(message`plays`, figures.playingS, (seconds) => `**${say.seconds(seconds)}**`),
      figureLine(message`real time`, figures.timeLapseS, (seconds) =>
        interval?.known
          ? message`${say.seconds(seconds)}; last frame ${say.seconds(interval.value)} before its end`
          : say.seconds(seconds),
      ),
      figureLine(message`recorded data`, figures.recordedBytes, (bytes) => say.bytes(bytes)),
      figureLine(
        message`growth per frame`,
        figures.growthPx,
        (px) =>
          `${say.pixels(px)}${sure.behind(
            message`growth per frame`,
            (of) => of.growthPx,
            (x) => say.pixels(x),
          )}`,
      ),
      figureLine(message`of one battery`, figures.batteryShare, (share) => say.percent(share)),
    ]),
    last(
      message`Formula: frames = real time ÷ interval; playing time = frames ÷ rate of the clip.`,
    ),
    message`The exposure is the shot's \`shutter\`, the same for every frame; a bulb ramp is not calculated.`,
    filmLifeHover(shot),
  );
}
