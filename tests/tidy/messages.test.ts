/** The catalogue for translators is what the sources say. */
import { expect, it } from 'vitest';
import {
  BUNDLE_PATH,
  bundleText,
  keysIn,
  MESSAGES_PATH,
  messagesText,
  wordsIn,
} from '../../client/build/messages.ts';
import { ROOT, read } from './support/project.ts';

it.each([
  [MESSAGES_PATH, messagesText],
  [BUNDLE_PATH, bundleText],
])('%s is what the sources say', (file, textOf) => {
  const isCurrent = read(file) === textOf(ROOT);
  expect(isCurrent, 'stale: run node client/build/messages.mjs').toBe(true);
});

it('messages are found wherever they stand, one in another too', () => {
  // biome-ignore lint/suspicious/noTemplateCurlyInString: a source as it is written
  const one = '${n} {b}${n > 2 ? message` \\`more\\`` : later`less`}.';
  const source = `const a = (n: number): string => (n > 1 ? message\`${one}\` : \`x\`);`;
  expect(keysIn('a.ts', source)).toEqual(['{0} {{b}}{1}.', ' `more`', 'less']);
});

it('words of the extension are found, but for those that another list has', () => {
  const source = "const a = l10n.t('Sheet: {0}', name(l10n.t('It’s'))) + l10n.t(about) + t('no');";
  expect(wordsIn('a.ts', source)).toEqual(['Sheet: {0}', 'It’s']);
});
