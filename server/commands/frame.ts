import { inertLine } from '../../shared/report/inert.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN } from '../exit-status.ts';
import { isPlanName } from '../files/plan-files.ts';
import { complain } from '../terminal.ts';
import { FORCE, OUTPUT, ROOT } from './command.ts';
import { planCommand, shotOf } from './open-plan.ts';
import { type Parsed, WrongUse } from './options.ts';
import { writeOutput } from './write-output.ts';

const USUAL_WIDTH = 480;
const LEAST_WIDTH = 16;
/** A wider picture has no more to show, and takes minutes. */
const MOST_WIDTH = 1920;

export const frame = planCommand({
  name: 'frame',
  usage: ['lamella frame FILE --shot NAME [-o frame.png] [options]'],
  about: later`Draws a shot's frame as PNG, traced from the plan: colours of a film, reflections of lens and lights, black parts, exposure and sharpness.`,
  options: {
    shot: { value: later`shot's name`, shown: 'NAME', about: later`Shot to draw.` },
    output: OUTPUT,
    force: FORCE,
    width: {
      value: later`width in pixels`,
      shown: 'N',
      about: later`Width in pixels, 16 to 1920. Default: 480.`,
    },
    root: ROOT,
  },
  refuse({ shot, output, width }) {
    if (typeof shot !== 'string') throw new WrongUse(message`frame needs --shot NAME.`);
    if (typeof output === 'string' && isPlanName(output))
      throw new WrongUse(
        message`--output ${output} is the name of a plan, and would overwrite it.`,
      );
    widthOf({ width: width ?? String(USUAL_WIDTH) });
  },
  async run(opened, { options }, { terminal }) {
    const { plans, id, file } = opened;
    const shot = shotOf(opened, String(options.shot));
    const drawn = plans.core.frame(id, shot, widthOf(options));
    if (!drawn?.ok) {
      const why = drawn?.why ?? message`see: lamella check ${file}`;
      complain(terminal, message`${shot} can't be drawn: ${why}`);
      return COULD_NOT_RUN;
    }
    const status = await writeOutput(terminal, options, message`The frame`, 'png', drawn.png);
    // Beside the picture, so that what is piped is the picture alone.
    if (status !== COULD_NOT_RUN)
      for (const line of drawn.caption) terminal.err(`${inertLine(line)}\n`);
    return status;
  },
});

function widthOf({ width }: Parsed['options']): number {
  if (width === undefined) return USUAL_WIDTH;
  const pixels = Number(width);
  if (!/^\d+$/.test(String(width)) || pixels < LEAST_WIDTH || pixels > MOST_WIDTH)
    throw new WrongUse(
      message`--width takes whole pixels from ${LEAST_WIDTH} to ${MOST_WIDTH}, not "${String(width)}".`,
    );
  return pixels;
}
