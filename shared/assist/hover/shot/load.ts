/** What the rig weighs, where it balances, and what that asks of what carries it. */
import { message } from '../../../words/message.ts';
import { figureLine, line, paragraphs, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

export function loadHover({ bench, figures, say, sure }: SaidShot): string {
  const { massKg, centreOfGravityMm, footMm, momentAtFootNewtonMetres, momentAtMountNewtonMetres } =
    figures;
  const { stabilityFactor: tipping } = figures;
  if (!massKg.known && !centreOfGravityMm.known) return '';
  const newtonMetres = (value: number) => `${say.number(Math.abs(value))} N·m`;
  return paragraphs(
    table([
      figureLine(
        message`the rig weighs`,
        massKg,
        (kg) =>
          `**${say.kilograms(kg)}**${sure.behind(
            message`the rig weighs`,
            (of) => of.massKg,
            (x) => say.kilograms(x),
          )}`,
      ),
      figureLine(
        message`centre of gravity`,
        centreOfGravityMm,
        (mm) =>
          message`**${say.length(mm)}**${sure.behind(
            message`centre of gravity`,
            (of) => of.centreOfGravityMm,
            (x) => say.length(x),
          )} ahead of the sensor plane`,
      ),
      footMm.known && line(message`foot`, message`${say.length(footMm.value)} ahead of it`),
      momentAtFootNewtonMetres.known &&
        line(
          message`moment at the foot`,
          `${newtonMetres(momentAtFootNewtonMetres.value)}${sure.behind(message`moment at the foot`, (of) => of.momentAtFootNewtonMetres, newtonMetres)}`,
        ),
      momentAtMountNewtonMetres.known &&
        line(
          message`moment at the mount`,
          `${newtonMetres(momentAtMountNewtonMetres.value)}${sure.behind(message`moment at the mount`, (of) => of.momentAtMountNewtonMetres, newtonMetres)}`,
        ),
      tipping.known &&
        line(
          bench.carriers.stand ? message`boom tips at` : message`stand tips at`,
          Number.isFinite(tipping.value)
            ? message`${say.number(tipping.value)}${sure.behind(
                message`tipping`,
                (of) => of.stabilityFactor,
                (x) => say.number(x),
              )} times the load`
            : message`no load`,
        ),
    ]),
    message`Parts at half their length unless \`balance\` is given (statics). Carry a long rig on a lens support, with the foot under the centre of gravity.`,
  );
}
