// Bundles the command for Node, which runs no TypeScript, and the pages' scripts for browsers.
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { build } from 'esbuild';

const { metafile } = await build({
  metafile: true,
  entryPoints: ['src/cli.ts', 'src/tune-worker.ts'],
  outdir: 'dist',
  bundle: true,
  splitting: true,
  chunkNames: 'parts/[name]-[hash]',
  platform: 'node',
  format: 'esm',
  target: 'node20',
  packages: 'external',
  banner: { js: '#!/usr/bin/env node' },
});

// Parts of an earlier bundle, which nothing imports any more.
for (const name of readdirSync('dist/parts')) {
  if (!metafile.outputs[`dist/parts/${name}`]) rmSync(`dist/parts/${name}`);
}

// Each file that stands in src/browser itself is a script of the pages, unless it exports what the
// others share; the folders are their parts.
const scripts = readdirSync('src/browser')
  .filter(name => /^[^.]+\.ts$/.test(name))
  .filter(name => !/^export /m.test(readFileSync(`src/browser/${name}`, 'utf8')));
const forBrowsers = { bundle: true, minify: true, format: 'iife', target: 'es2020' };
await build({
  ...forBrowsers,
  entryPoints: scripts.map(name => `src/browser/${name}`),
  outdir: 'dist/browser',
});
await build({
  ...forBrowsers,
  entryPoints: ['src/offline/keep-site.ts'],
  outdir: 'dist/offline',
});
// The preview's scripts stand apart: what is in dist/browser is in every site.
await build({
  ...forBrowsers,
  entryPoints: ['src/browser/preview/refresh.ts', 'src/browser/preview/tap.ts'],
  outdir: 'dist/preview',
});
