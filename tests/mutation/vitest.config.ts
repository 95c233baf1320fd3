import { defineConfig } from 'vitest/config';

/**
 * The quick tests of the musical core: those that each mutant is held to, so none that goes
 * through many tunes, builds a book or starts a browser.
 */
export default defineConfig({
  test: {
    isolate: false,
    setupFiles: ['tests/seed.ts'],
    include: ['tests/{bowing,music,sections,fingering,try,sets}/**/*.test.ts'],
    exclude: ['**/*-of-tunes*', 'tests/sets/demo-joins.test.ts'],
  },
});
