import { figuresText } from '../../shared/report/figures-text.ts';
import { figuresReport } from '../../shared/report/json.ts';
import type { LengthUnit } from '../../shared/say/say.ts';
import { later } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, NOTHING_FOUND } from '../exit-status.ts';
import type { Command } from './command.ts';
import { openPlan } from './open-plan.ts';
import { noSuchShot, parseOptions } from './options.ts';
import { SHOT_OPTIONS, shotHelp } from './shot-options.ts';

export const figures: Command = {
  name: 'figures',
  usage: ['lamella figures FILE [--shot NAME] [options]'],
  about: later`Says what every shot of a plan and its edit come to, and why where a figure is not known.`,
  options: shotHelp(later`Only this shot.`),
  async run(args, surroundings) {
    const parsed = parseOptions(args, SHOT_OPTIONS);
    const { options } = parsed;
    const { terminal } = surroundings;
    const opened = await openPlan('figures', parsed, surroundings);
    if (opened === null) return COULD_NOT_RUN;
    const { plans, id, file } = opened;
    const shots = chosen(plans.core.figures(id), options.shot, file);
    // Of one shot alone the sums of the plan say nothing.
    const isWhole = options.shot === undefined;
    const recording = isWhole ? plans.core.recording(id) : [];
    const edit = isWhole ? plans.core.editFigures(id) : null;
    const name = plans.nameOf(id);
    const lengths = options.lengths as LengthUnit | undefined;
    terminal.out(
      options.format === 'json'
        ? figuresReport(name, shots, recording, edit)
        : figuresText(name, shots, recording, edit, {
            colour: terminal.colour,
            ...(lengths && { lengths }),
          }),
    );
    return NOTHING_FOUND;
  },
};

function chosen<T>(
  shots: ReadonlyMap<string, T>,
  name: string | true | undefined,
  file: string,
): ReadonlyMap<string, T> {
  if (typeof name !== 'string') return shots;
  const shot = shots.get(name);
  if (shot !== undefined) return new Map([[name, shot]]);
  throw noSuchShot(name, [...shots.keys()], file);
}
