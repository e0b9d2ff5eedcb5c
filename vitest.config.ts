import { readdirSync, readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

/** What a test may do that others in its process would feel: modules exchanged for other ones. */
const ALONE = /\bvi\.(?:doMock|mock|stubEnv|stubGlobal|useFakeTimers)\(/;

const tests = readdirSync(new URL('tests', import.meta.url), { recursive: true, encoding: 'utf8' })
  .map((file) => `tests/${file.replaceAll('\\', '/')}`)
  // Configurations of their own: the real editor needs a browser, a library has to be fetched and built.
  .filter((file) => file.endsWith('.test.ts') && !/^tests\/(?:editor|readers)\//.test(file));
const alone = tests.filter((file) =>
  ALONE.test(readFileSync(new URL(file, import.meta.url), 'utf8')),
);

export default defineConfig({
  test: {
    // One test tries a law on all its cases, maybe beside other work on the same machine.
    testTimeout: 600_000,
    hookTimeout: 120_000,
    // Left to itself, vitest keeps a core free for the watcher that a run hasn't got.
    maxWorkers: '100%',
    // A snapshot that is missing fails, here as in CI; `-u` writes it.
    update: 'none',
    projects: [
      {
        extends: true,
        test: {
          name: 'together',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/editor/**', 'tests/readers/**', ...alone],
          // The core has no state: loading it anew for every file was half of the time.
          isolate: false,
          // Modules of Node itself: calls between modules of the runner cost a third of the rest.
          experimental: { viteModuleRunner: false, nodeLoader: false },
          execArgv: ['--enable-source-maps', '--import', './tests/support/native/register.mjs'],
          restoreMocks: true,
          setupFiles: ['tests/support/same-seed.ts', 'tests/support/nothing-left.ts'],
        },
      },
      {
        extends: true,
        test: { name: 'alone', include: alone, setupFiles: ['tests/support/same-seed.ts'] },
      },
    ],
  },
});
