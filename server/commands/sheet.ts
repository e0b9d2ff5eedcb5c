import { createHash } from 'node:crypto';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { sheetDocument } from '../../shared/report/sheet/document.ts';
import { sheetPage } from '../../shared/report/sheet/html.ts';
import { SHEET_STYLE } from '../../shared/report/sheet/style.ts';
import { later, message } from '../../shared/words/message.ts';
import { isPlanName } from '../files/plan-files.ts';
import { LENGTHS, OUTPUT, ROOT, sayIn } from './command.ts';
import { planCommand } from './open-plan.ts';
import { WrongUse } from './options.ts';
import { writeOutput } from './write-output.ts';

export const sheet = planCommand({
  name: 'sheet',
  usage: ['lamella sheet FILE [-o sheet.html] [options]'],
  about: later`Makes the sheet for the day: what to set, check and watch in every shot, with drawings to scale; to be read on a screen or printed.`,
  options: {
    output: OUTPUT,
    format: {
      oneOf: ['html', 'md'],
      about: later`One page that needs nothing else (default), or Markdown, which has the drawings in words.`,
    },
    root: ROOT,
    lengths: { ...LENGTHS, about: later`The unit that lengths are shown in.` },
  },
  refuse({ output }) {
    if (typeof output === 'string' && isPlanName(output))
      throw new WrongUse(
        message`--output ${output} is a plan’s name; a sheet would take its place.`,
      );
  },
  async run({ plans, id }, { options }, { terminal }) {
    const { output, format } = options;
    const say = sayIn(options);
    const made = plans.core.sheet(id);
    const isMarkdown = (format ?? (/\.(md|markdown)$/i.test(String(output)) && 'md')) === 'md';
    const text = isMarkdown
      ? markdownText(sheetDocument(made, say))
      : sheetPage(made, { say }, styleHash());
    return writeOutput(terminal, output, message`The sheet`, text);
  },
});

/** By which the page's policy allows its own style and no other. */
const styleHash = (): string =>
  `sha256-${createHash('sha256').update(SHEET_STYLE).digest('base64')}`;
