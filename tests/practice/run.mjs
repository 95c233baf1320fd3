// `npm run practice`: bundles the counting script for Node, which runs no TypeScript, and runs it.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const outfile = join(import.meta.dirname, '../../dist/practice/count.mjs');
await build({
  entryPoints: [join(import.meta.dirname, 'count.ts')],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  packages: 'external',
  target: 'node20',
});
await import(pathToFileURL(outfile).href);
