/** The catalogue for translators is what the sources say. */
import { expect, it } from 'vitest';
import { keysIn, MESSAGES_PATH, messagesText } from '../../client/build/messages.ts';
import { ROOT, read } from './support/project.ts';

it('the catalogue is what the sources say', () => {
  const isCurrent = read(MESSAGES_PATH) === messagesText(ROOT);
  expect(isCurrent, 'stale: run node client/build/messages.mjs').toBe(true);
});

it('messages are found wherever they stand, one in another too', () => {
  // biome-ignore lint/suspicious/noTemplateCurlyInString: a source as it is written
  const one = '${n} {b}${n > 2 ? message` \\`more\\`` : later`less`}.';
  const source = `const a = (n: number): string => (n > 1 ? message\`${one}\` : \`x\`);`;
  expect(keysIn('a.ts', source)).toEqual(['{0} {{b}}{1}.', ' `more`', 'less']);
});
