import { defineConfig } from 'vitest/config';

/**
 * The quick tests of the musical core: those that each mutant is held to, so none that reads a
 * corpus, builds a book or starts a browser.
 */
export default defineConfig({
  test: {
    isolate: false,
    include: ['tests/{bowing,music,sections,fingering,try,sets}/**/*.test.ts'],
    exclude: ['**/*corpus*', 'tests/sets/demo-joins.test.ts'],
  },
});
