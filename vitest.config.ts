import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // The real editor has a configuration of its own: it needs a browser and the packed extension.
    exclude: ['tests/editor/**'],
    testTimeout: 30_000,
  },
});
