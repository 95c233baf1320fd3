// `npm run bench`: bundles the benchmarks for Node, which runs no TypeScript, and runs them in turn.
// Figures are this machine's; compare the ratios, which are taken within one run.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { templatesForEsbuild } from '../../src/bundling/templates-plugin.mjs';

const here = import.meta.dirname;
const out = join(here, '../../dist/bench');
const entryPoints = readdirSync(here)
  .filter(name => name.endsWith('.bench.ts'))
  .map(name => join(here, name));
const plugins = [templatesForEsbuild];
const options = { bundle: true, platform: 'node', format: 'esm', packages: 'external', plugins };
await build({
  entryPoints,
  outdir: out,
  outExtension: { '.js': '.mjs' },
  target: 'node20',
  ...options,
});
for (const name of readdirSync(out)
  .filter(n => n.endsWith('.bench.mjs'))
  .toSorted()) {
  await import(pathToFileURL(join(out, name)).href);
}
