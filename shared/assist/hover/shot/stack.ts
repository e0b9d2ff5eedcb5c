/** What a focus stack comes to: frames, step, travel, time. */
import { message } from '../../../words/message.ts';
import { figureLine, last, paragraphs, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

export function stackHover({ bench, figures, say, sure }: SaidShot): string {
  const bytes = (size: number): string => say.bytes(size);
  const length = (mm: number): string => say.length(mm);
  const seconds = (s: number): string => say.seconds(s);
  const { stackFrames, stackStepMm, stackDepthMm, stackTravelMm, stackTimeS } = figures;
  return paragraphs(
    table([
      figureLine(
        message`frames`,
        stackFrames,
        (count) => `**${count}**${sure.behind(message`frames`, (of) => of.stackFrames, String)}`,
      ),
      figureLine(
        message`step`,
        stackStepMm,
        (mm) => `${length(mm)}${sure.behind(message`step`, (of) => of.stackStepMm, length)}`,
      ),
      figureLine(message`sharp together`, stackDepthMm, length),
      figureLine(message`travel`, stackTravelMm, length),
      figureLine(
        message`time`,
        stackTimeS,
        (time) => `${seconds(time)}${sure.behind(message`time`, (of) => of.stackTimeS, seconds)}`,
      ),
      bench.stack?.isStills
        ? figureLine(
            message`recorded data`,
            figures.recordedBytes,
            (data) =>
              `${bytes(data)}${sure.behind(message`recorded data`, (of) => of.recordedBytes, bytes)}`,
          )
        : figureLine(message`depth of field`, figures.usableDepthMm, length),
    ]),
    last(
      message`Formula: step = depth of field × (1 − overlap); frames = subject depth ÷ step, rounded up, + 1; time = frames × (settling + exposure).`,
    ),
    message`Source: depth of field as in S. F. Ray, Applied Photographic Optics. An overlap of 20 to 30% is common practice.`,
  );
}
