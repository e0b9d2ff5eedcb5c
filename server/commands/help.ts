/** What `--help` shows, made from what the commands say of themselves. */
import { wrap } from '../../shared/report/wrap.ts';
import { inLanguage, message } from '../../shared/words/message.ts';
import type { Command } from './command.ts';

/** What a command says of itself. */
type Described = Omit<Command, 'run'>;

const WIDTH = 88;

const statusWords = (): string =>
  [
    message`Exit status`,
    `  0  ${message`nothing found at or above the bar`}`,
    `  1  ${message`findings`}`,
    `  2  ${message`could not run: wrong use, or a file that can't be read`}`,
    '',
  ].join('\n');

export function overview(commands: readonly Described[]): string {
  const rows = commands.map(
    ({ usage, about }) => `  ${usage.join('\n  ')}\n${wrap(inLanguage(about), WIDTH, '      ')}`,
  );
  return `lamella: ${message`shoot plans for very small things very close, checked.`}

${rows.join('\n\n')}

  lamella COMMAND --help
      ${message`What a command takes.`}

  lamella --version

${statusWords()}`;
}

export function helpOf({ usage, about, options }: Described): string {
  const parts = [usage.join('\n'), wrap(inLanguage(about), WIDTH)];
  if (options.length > 0)
    parts.push(
      [
        message`Options`,
        ...options.map(
          ([option, said]) => `  ${option}\n${wrap(inLanguage(said), WIDTH, '      ')}`,
        ),
      ].join('\n'),
    );
  return `${parts.join('\n\n')}\n\n${statusWords()}`;
}
