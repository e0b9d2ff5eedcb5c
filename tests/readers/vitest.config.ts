import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: fileURLToPath(new URL('../../', import.meta.url)),
    include: ['tests/readers/**/*.test.ts'],
    globalSetup: 'client/build/otio-reader.mjs',
    setupFiles: ['tests/support/same-seed.ts'],
    testTimeout: 1_200_000,
  },
});
