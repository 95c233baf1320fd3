import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { expect, it } from 'vitest';
import { siteAssets } from '../../src/pages/assets.ts';

const root = join(import.meta.dirname, '../..');
const fileOf = (name: string): string => readFileSync(join(root, name), 'utf8');

/** Packages whose code esbuild puts into the pages' scripts, asked of esbuild itself. */
async function bundled(): Promise<readonly string[]> {
  const entryPoints = readdirSync(join(root, 'src/browser'))
    .filter(name => name.endsWith('.ts'))
    .map(name => join(root, 'src/browser', name));
  const { metafile } = await build({
    entryPoints,
    bundle: true,
    write: false,
    outdir: 'out',
    metafile: true,
    absWorkingDir: root,
  });
  const inputs = Object.values(metafile.outputs).flatMap(output => Object.keys(output.inputs));
  const names = inputs.flatMap(path => /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[1] ?? []);
  return [...new Set(names)].sort();
}

it('the licences of all that reaches a reader stand in the site', async () => {
  const assets = siteAssets({ theme: null, language: 'en' });
  const asset = assets.find(a => a.path === 'assets/licences.txt');
  const said = asset && 'content' in asset ? String(asset.content) : '';
  expect(await bundled()).toEqual(['minisearch']);
  const shipped = [
    'LICENSE',
    'node_modules/minisearch/LICENSE.txt',
    // Its signs, as outlines in every drawing.
    'node_modules/abcjs/LICENSE.md',
    'node_modules/@fontsource/brygada-1918/LICENSE',
    'node_modules/@fontsource/andika/LICENSE',
  ];
  for (const file of shipped) expect(said, file).toContain(fileOf(file).trim());
});

it('each dependency is named with its reason, and under the licence that it has', () => {
  const page = fileOf('docs/dependencies.md');
  const { dependencies, devDependencies } = JSON.parse(fileOf('package.json'));
  for (const name of Object.keys(dependencies)) {
    const row = page.split('\n').find(line => line.startsWith('|') && line.includes(`\`${name}\``));
    const { license } = JSON.parse(fileOf(`node_modules/${name}/package.json`));
    expect(row?.split('|').at(-2)?.trim(), name).toBe(license);
  }
  const types = (name: string): boolean => name.startsWith('@types/');
  for (const name of Object.keys(devDependencies).filter(n => !types(n))) {
    expect(page, name).toContain(`\`${name}\``);
  }
});

it('the bundled command has the licences of its packages beside it', () => {
  const said = fileOf('dist/licences.txt');
  for (const name of [
    'unified',
    'remark-parse',
    'yaml',
    'zod',
    'abcjs',
    'handlebars',
    'commander',
  ]) {
    const { version } = JSON.parse(fileOf(`node_modules/${name}/package.json`));
    expect(said).toContain(`${name} ${version}: `);
  }
  expect(
    said.match(/permission is hereby granted|redistribution and use|permission to use/gi)?.length,
  ).toBeGreaterThan(50);
});
