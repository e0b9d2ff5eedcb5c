import { createHash } from 'node:crypto';
import { sheetPage } from '../../shared/report/sheet/html.ts';
import { sheetMarkdown } from '../../shared/report/sheet/markdown.ts';
import { SHEET_STYLE } from '../../shared/report/sheet/style.ts';
import { type LengthUnit, Say } from '../../shared/say/say.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, NOTHING_FOUND } from '../exit-status.ts';
import { isPlanName } from '../files/plan-files.ts';
import { type Command, LENGTHS, ROOT_HELP } from './command.ts';
import { openPlan } from './open-plan.ts';
import { parseOptions, WrongUse } from './options.ts';
import { writeOutput } from './write-output.ts';

const SHEETS = ['html', 'md'] as const;

const OPTIONS = {
  output: { value: later`file`, short: 'o' },
  format: { oneOf: SHEETS },
  root: { value: later`folder` },
  lengths: { oneOf: LENGTHS },
};

export const sheet: Command = {
  name: 'sheet',
  usage: ['lamella sheet FILE [-o sheet.html] [options]'],
  about: later`Makes the sheet for the day: what to set, check and watch in every shot, with drawings to scale; to be read on a screen or printed.`,
  options: [
    ['-o, --output FILE', later`Where to write it; left out, to standard output.`],
    [
      '--format html|md',
      later`One page that needs nothing else (default), or Markdown, which has the drawings in words.`,
    ],
    ROOT_HELP,
    ['--lengths mm|inches', later`The unit that lengths are shown in.`],
  ],
  async run(args, surroundings) {
    const parsed = parseOptions(args, OPTIONS);
    const { terminal } = surroundings;
    const { output, lengths } = parsed.options;
    if (typeof output === 'string' && isPlanName(output))
      throw new WrongUse(
        message`--output ${output} is a plan’s name; a sheet would take its place.`,
      );
    const opened = await openPlan('sheet', parsed, surroundings);
    if (opened === null) return COULD_NOT_RUN;
    const { plans, id } = opened;
    const say = new Say(() => (lengths as LengthUnit | undefined) ?? 'mm');
    const made = plans.core.sheet(id);
    const isMarkdown = (parsed.options.format ?? formatOf(output)) === 'md';
    const text = isMarkdown ? sheetMarkdown(made, say) : sheetPage(made, { say }, styleHash());
    if (typeof output !== 'string') {
      terminal.out(text);
      return NOTHING_FOUND;
    }
    return writeOutput(terminal, output, message`The sheet`, text);
  },
};

const formatOf = (output: string | true | undefined): string =>
  typeof output === 'string' && /\.(md|markdown)$/i.test(output) ? 'md' : 'html';

/** By which the page's policy allows its own style and no other. */
const styleHash = (): string =>
  `sha256-${createHash('sha256').update(SHEET_STYLE).digest('base64')}`;
