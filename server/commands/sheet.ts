import type { Core } from '../../shared/api/facade.ts';
import type { PageFrame } from '../../shared/api/frame.ts';
import type { Sheet } from '../../shared/api/sheet.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { sheetDocument } from '../../shared/report/sheet/document.ts';
import { later, message } from '../../shared/words/message.ts';
import { isPlanName } from '../files/plan-files.ts';
import { pageFrame } from '../handlers/frame.ts';
import { pageWith } from '../handlers/sheet-page.ts';
import { FRAME_WIDTH } from '../page-parts.ts';
import { FORCE, LENGTHS, OUTPUT, ROOT, sayIn } from './command.ts';
import { planCommand } from './open-plan.ts';
import { WrongUse } from './options.ts';
import { writeOutput } from './write-output.ts';

export const sheet = planCommand({
  name: 'sheet',
  usage: ['lamella sheet FILE [-o sheet.html] [options]'],
  about: later`Makes the shot sheet: settings, checks and what to watch for, traced frames, and drawings to scale. Fill it in on set, or print it.`,
  options: {
    output: OUTPUT,
    force: FORCE,
    format: {
      oneOf: ['html', 'md'],
      about: later`html, one self-contained page (default), or md, Markdown with the drawings in words`,
    },
    root: ROOT,
    lengths: { ...LENGTHS, about: later`Unit in which lengths are shown: mm (default) or inches.` },
  },
  refuse({ output }) {
    if (typeof output === 'string' && isPlanName(output))
      throw new WrongUse(
        message`--output ${output} is the name of a plan, and would overwrite it.`,
      );
  },
  async run({ plans, id }, { options }, { terminal, sheetScript }) {
    const { output, format } = options;
    const say = sayIn(options);
    const made = plans.core.sheet(id, { isWrittenOn: true });
    const isMarkdown = (format ?? (/\.(md|markdown)$/i.test(String(output)) && 'md')) === 'md';
    const text = isMarkdown
      ? markdownText(sheetDocument(made, say))
      : await pageWith(made, { say, frames: framesOf(plans.core, id, made) }, sheetScript());
    return writeOutput(terminal, options, message`The sheet`, isMarkdown ? 'md' : 'html', text);
  },
});

/** The frames of all shots that can be drawn. */
const framesOf = (core: Core, id: FileId, { shots }: Sheet): ReadonlyMap<string, PageFrame> =>
  new Map(
    shots.flatMap(({ name }) => {
      const frame = core.frame(id, name, FRAME_WIDTH);
      return frame?.ok ? [[name, pageFrame(frame)] as const] : [];
    }),
  );
