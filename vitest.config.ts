import { defineConfig } from 'vitest/config';
import { templatesForVite } from './src/bundling/templates-plugin.mjs';

/** Tests that put a module of their own in another's place, and so share none with other files. */
const alone = ['tests/rules/drawing-failed.test.ts', 'tests/rules/past-limits.test.ts'];

// The browser tests build the demo book and start Chromium; two cores are shared by all.
const timeouts = { testTimeout: 60_000, hookTimeout: 180_000 };

const plugins = [templatesForVite];

export default defineConfig({
  test: {
    globalSetup: ['tests/bundle-once.ts'],
    maxWorkers: '100%',
    projects: [
      {
        // Files that share what they import load it once a worker, which halves the time of most.
        plugins,
        test: {
          ...timeouts,
          name: 'together',
          isolate: false,
          include: ['tests/**/*.test.ts'],
          exclude: alone,
        },
      },
      { plugins, test: { ...timeouts, name: 'alone', include: alone } },
    ],
  },
});
