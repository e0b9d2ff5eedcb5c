import path from 'node:path';
import { messageOf } from '../../shared/assist/located.ts';
import { figuresText } from '../../shared/report/figures-text.ts';
import { figuresReport } from '../../shared/report/json.ts';
import type { LengthUnit } from '../../shared/rules/say.ts';
import { isPlanName, PLAN_SUFFIX } from '../files/plan-files.ts';
import { planSet } from './check.ts';
import {
  COULD_NOT_RUN,
  type Command,
  FORMAT_HELP,
  FORMATS,
  LENGTHS,
  LENGTHS_HELP,
  NOTHING_FOUND,
  ROOT_HELP,
} from './command.ts';
import { nearest, parseOptions, WrongUse } from './options.ts';

const OPTIONS = {
  shot: { value: 'shot’s name' },
  format: { oneOf: FORMATS },
  root: { value: 'folder' },
  lengths: { oneOf: LENGTHS },
};

export const figures: Command = {
  name: 'figures',
  usage: ['lamella figures FILE [--shot NAME] [options]'],
  about: 'Says what every shot of a plan comes to, and why where a figure is not known.',
  options: [['--shot NAME', 'Only this shot.'], FORMAT_HELP, ROOT_HELP, LENGTHS_HELP],
  async run(args, surroundings) {
    const parsed = parseOptions(args, OPTIONS);
    const { options, rest } = parsed;
    const { terminal } = surroundings;
    const [file] = rest;
    if (file === undefined || rest.length > 1)
      throw new WrongUse(`figures takes one plan, but got ${rest.length}.`);
    if (!isPlanName(file))
      throw new WrongUse(`${file}: not a plan; plans are named *${PLAN_SUFFIX}.`);
    const plans = await planSet(parsed, surroundings);
    const problem = await plans.add(path.resolve(terminal.cwd, file));
    if (problem !== null) {
      terminal.err(`lamella: ${problem}\n`);
      return COULD_NOT_RUN;
    }
    const id = plans.files[0]!;
    const unread = plans.unread(id);
    if (unread) {
      terminal.err(`lamella: ${plans.nameOf(id)}: ${messageOf(unread)}\n`);
      return COULD_NOT_RUN;
    }
    await plans.follow();
    const shots = chosen(plans.core.figures(id), options.shot, file);
    const name = plans.nameOf(id);
    const lengths = options.lengths as LengthUnit | undefined;
    terminal.out(
      options.format === 'json'
        ? figuresReport(name, shots)
        : figuresText(name, shots, { colour: terminal.colour, ...(lengths && { lengths }) }),
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
  const near = nearest(name, [...shots.keys()]);
  const help = near ? ` Did you mean ${near}?` : ` Its shots: ${[...shots.keys()].join(', ')}.`;
  throw new WrongUse(`${file} has no shot "${name}".${shots.size === 0 ? '' : help}`);
}
