/** The shutter as time and angle, and the flicker that it leaves. */
import type { LampFlicker } from '../../../figures/shot-figures.ts';
import { message } from '../../../words/message.ts';
import { figureLine, last, line, paragraphs, plain, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

export function shutterHover({ bench, figures, say, sure }: SaidShot): string {
  const { shutterSeconds, shutterAngleDeg, worstFlicker } = figures;
  const lamp = worstFlicker.known && worstFlicker.value.lampHz > 0 ? worstFlicker.value : null;
  const flickerAround = (): string =>
    sure.behind(
      message`flicker left`,
      (of) => of.flickerResidual,
      (share) => say.percent(share),
    );
  return paragraphs(
    table([
      figureLine(message`shutter speed`, shutterSeconds, (s) => `**${say.shutter(s)}**`),
      figureLine(message`shutter angle`, shutterAngleDeg, (deg) => `**${say.number(deg)}°**`),
      figureLine(message`flicker left`, worstFlicker, ({ lampHz, residual, course }) =>
        lampHz === 0
          ? message`none: no light flickers`
          : course === 'unknown' && residual > 0
            ? message`**${say.percent(residual)}** at most${flickerAround()}`
            : `**${say.percent(residual)}**${flickerAround()}`,
      ),
      bench.timeLapse
        ? figureLine(message`interval`, bench.timeLapse.intervalS, (s) => say.seconds(s))
        : figureLine(
            message`frame`,
            bench.recordRate,
            (rate) => `${say.shutter(1 / rate)} at ${say.number(rate)} fps`,
          ),
      lamp && line(plain(lamp.light), message`pulses at ${say.number(lamp.lampHz)} Hz`),
      lamp &&
        shutterSeconds.known &&
        line(message`cycles`, say.number(lamp.lampHz * shutterSeconds.value)),
      lamp &&
        lamp.residual > 0 &&
        lamp.rollHz !== null &&
        line(message`bands`, bandWords(lamp, say)),
    ]),
    shutterAngleDeg.known &&
      (bench.timeLapse
        ? last(message`Formula: angle = 360°·t ÷ interval.`)
        : last(message`Formula: angle = 360°·t·rate.`)),
    lamp &&
      `${courseWords(lamp)}${
        lamp.depthAssumed && lamp.residual > 0
          ? message` \`modulation-depth\` of ${plain(lamp.light)} is unknown and assumed to be 100%.`
          : ''
      }`,
  );
}

function courseWords({ course, light }: LampFlicker): string {
  if (course === 'sine')
    return last(
      message`Formula: flicker = depth of modulation·|sin(π·f·t)/(π·f·t)|: none over whole cycles of the lamp.`,
    );
  const most = last(
    message`Formula: flicker of pulses = 1/(2·f·t) at most: none over whole cycles of the lamp.`,
  );
  return course === 'pulsed'
    ? most
    : message`${most} \`waveform\` of ${plain(light)} is not known.`;
}

function bandWords({ rollHz, bandsInFrame }: LampFlicker, say: SaidShot['say']): string {
  const moving = rollHz ? message`roll at ${say.number(rollHz)} Hz` : message`stand still`;
  return bandsInFrame === null
    ? moving
    : message`${say.number(bandsInFrame)} in the frame, ${moving}`;
}
