import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/bundle-once.ts'],
    maxWorkers: '100%',
    // The browser tests build the demo book and start Chromium; two cores are shared by all.
    testTimeout: 60_000,
    hookTimeout: 180_000,
  },
});
