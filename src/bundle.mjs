// Bundles the command for Node, which runs no TypeScript, and the pages' scripts for browsers.
import { readdirSync } from 'node:fs';
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

// Each file that stands in src/browser itself is a script of the pages; the folders are its parts.
const scripts = readdirSync('src/browser').filter(name => /^[^.]+\.ts$/.test(name));
await build({
  entryPoints: scripts.map(name => `src/browser/${name}`),
  outdir: 'dist/browser',
  bundle: true,
  minify: true,
  format: 'iife',
  target: 'es2020',
});
