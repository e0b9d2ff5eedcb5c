/** Test files share a process: what one of them left in force would change what the next one tests. */
import { afterAll } from 'vitest';
import { languageInForce, setTranslation } from '../../shared/words/message.ts';

const before = {
  cwd: process.cwd(),
  env: JSON.stringify(process.env),
  language: languageInForce(),
};

afterAll(() => {
  const after = {
    cwd: process.cwd(),
    env: JSON.stringify(process.env),
    language: languageInForce(),
  };
  setTranslation(null);
  process.chdir(before.cwd);
  for (const what of ['cwd', 'env', 'language'] as const)
    if (after[what] !== before[what])
      throw new Error(`left behind: ${what} is ${after[what]} and was ${before[what]}`);
});
