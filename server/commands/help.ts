/** What `--help` shows, made from what the commands say of themselves. */
import { wrap } from '../../shared/report/wrap.ts';
import type { Command } from './command.ts';

/** What a command says of itself. */
type Described = Omit<Command, 'run'>;

const WIDTH = 88;

const STATUS = `Exit status
  0  nothing found at or above the bar
  1  findings
  2  could not run: wrong use, or a file that can't be read
`;

export function overview(commands: readonly Described[]): string {
  const rows = commands.map(
    ({ usage, about }) => `  ${usage.join('\n  ')}\n${wrap(about, WIDTH, '      ')}`,
  );
  return `lamella: shoot plans for very small things very close, checked.

${rows.join('\n\n')}

  lamella COMMAND --help
      What a command takes.

  lamella --version

${STATUS}`;
}

export function helpOf({ usage, about, options }: Described): string {
  const parts = [usage.join('\n'), wrap(about, WIDTH)];
  if (options.length > 0)
    parts.push(
      [
        'Options',
        ...options.map(([option, said]) => `  ${option}\n${wrap(said, WIDTH, '      ')}`),
      ].join('\n'),
    );
  return `${parts.join('\n\n')}\n\n${STATUS}`;
}
