// `npm run fuzz -- [--count n] [--seed n] [--kind abc] [--case n]`: bundles the fuzzer for Node,
// which runs no TypeScript, and runs it. The same seed tries the same inputs.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { templatesForEsbuild } from '../../src/bundling/templates-plugin.mjs';

const here = import.meta.dirname;
const out = join(here, '../../dist/fuzz');
const entryPoints = ['fuzz.ts', 'try-cases.ts'].map(name => join(here, name));
const plugins = [templatesForEsbuild];
const options = { bundle: true, platform: 'node', format: 'esm', packages: 'external', plugins };
await build({
  entryPoints,
  outdir: out,
  outExtension: { '.js': '.mjs' },
  target: 'node20',
  splitting: true,
  ...options,
});
await import(pathToFileURL(join(out, 'fuzz.mjs')).href);
