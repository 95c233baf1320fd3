// Bundles the command for Node, which runs no TypeScript, and the pages' scripts for browsers.
import { existsSync } from 'node:fs';
import { build } from 'esbuild';

await build({
  entryPoints: ['src/cli.ts'],
  outdir: 'dist',
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  packages: 'external',
  banner: { js: '#!/usr/bin/env node' },
});

if (existsSync('src/browser/page.ts')) {
  await build({
    entryPoints: ['src/browser/page.ts'],
    outdir: 'dist/browser',
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2020',
  });
}
