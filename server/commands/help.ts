/** What `--help` shows, made from what the commands say of themselves. */
import { wrap } from '../../shared/report/wrap.ts';
import { inLanguage, message } from '../../shared/words/message.ts';
import type { Command } from './command.ts';
import type { OptionSpec } from './options.ts';

/** What a command says of itself. */
type Described = Omit<Command, 'run'>;

const WIDTH = 88;

const statusWords = (): string =>
  [
    message`Exit status`,
    `  0  ${message`no findings at or above --fail-on`}`,
    `  1  ${message`findings`}`,
    `  2  ${message`could not run: usage error or unreadable file`}`,
    '',
  ].join('\n');

export function overview(commands: readonly Described[]): string {
  const rows = commands.map(
    ({ usage, about }) => `  ${usage.join('\n  ')}\n${wrap(inLanguage(about), WIDTH, '      ')}`,
  );
  return `lamella: ${message`plan and check macro shoots`}

${rows.join('\n\n')}

  lamella COMMAND --help
      ${message`Shows the options of a command.`}

  lamella --version

${statusWords()}`;
}

export function helpOf({ usage, about, options }: Described): string {
  const rows = Object.entries(options).map(optionHelp);
  const parts = [usage.join('\n'), wrap(inLanguage(about), WIDTH)];
  if (rows.length > 0) parts.push([message`Options`, ...rows].join('\n'));
  return `${parts.join('\n\n')}\n\n${statusWords()}`;
}

/** "-o, --output FILE", and what it is for. */
const optionHelp = ([name, { short, oneOf, shown, about }]: [string, OptionSpec]): string =>
  `  ${short ? `-${short}, ` : ''}${[`--${name}`, oneOf?.join('|') ?? shown].filter(Boolean).join(' ')}\n${wrap(inLanguage(about), WIDTH, '      ')}`;
