import { randomInt } from 'node:crypto';
import { defineConfig } from 'vitest/config';
import { templatesForVite } from './src/bundling/templates-plugin.mjs';

/** Tests that put a module of their own in another's place, and so share none with other files. */
const alone = ['tests/rules/drawing-failed.test.ts', 'tests/rules/past-limits.test.ts'];

const plugins = [templatesForVite];

/** `npm run test:random` draws a new seed for all random tests, and says which. */
if (process.env.BOWBOOK_SEED === 'new') {
  process.env.BOWBOOK_SEED = `${randomInt(2 ** 31)}`;
  console.log(`Random tests: BOWBOOK_SEED=${process.env.BOWBOOK_SEED}`);
}

/**
 * `npm test` runs what a change needs at once: no test with the tag `slow`, and nothing on real tunes.
 * `npm run test:all` (`--mode all`) runs the rest too.
 */
export default defineConfig(({ mode }) => {
  const isAll = mode === 'all';
  const test = {
    // The browser tests build the demo book and start Chromium; two cores are shared by all.
    testTimeout: 60_000,
    hookTimeout: 180_000,
    setupFiles: ['tests/seed.ts'],
    ...(isAll ? {} : { tagsFilter: ['!slow'] }),
    env: isAll ? {} : { BOWBOOK_CORPUS: '' },
  };
  return {
    test: {
      globalSetup: ['tests/bundle-once.ts'],
      maxWorkers: '100%',
      tags: [{ name: 'slow', description: 'left to npm run test:all' }],
      projects: [
        {
          // Files that share what they import load it once a worker, which halves the time of most.
          plugins,
          test: {
            ...test,
            name: 'together',
            isolate: false,
            include: ['tests/**/*.test.ts'],
            exclude: alone,
          },
        },
        { plugins, test: { ...test, name: 'alone', include: alone } },
      ],
    },
  };
});
