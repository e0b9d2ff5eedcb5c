import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** One worker: the machine that runs these has to draw a whole workbench for each. */
const common = {
  root: fileURLToPath(new URL('../../', import.meta.url)),
  globalSetup: 'tests/editor/install.ts',
  fileParallelism: false,
  testTimeout: 180_000,
  hookTimeout: 180_000,
  // A key that is pressed while a slow machine still draws is lost; what is broken fails twice.
  retry: 1,
};

export default defineConfig({
  test: {
    projects: [
      { test: { ...common, name: 'editor', include: ['tests/editor/**/*.test.ts'] } },
      { test: { ...common, name: 'pictures', include: ['tests/editor/pictures.ts'] } },
      { test: { ...common, name: 'activation', include: ['tests/editor/activation.ts'] } },
    ],
  },
});
