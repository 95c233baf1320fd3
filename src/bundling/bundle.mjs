// Bundles the command for Node, which runs no TypeScript, and the pages' scripts for browsers.
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { build } from 'esbuild';
import { licencesOf, packagesIn } from './licences.mjs';
import { templatesForEsbuild } from './templates-plugin.mjs';

// Code compiled of another bundle would be taken for that of this one.
rmSync('dist/bowbook.code', { force: true });

// The program as one script, which its entries load with compiled code.
const { metafile } = await build({
  entryPoints: { bowbook: 'src/bundling/bundled.ts' },
  outdir: 'dist',
  outExtension: { '.js': '.cjs' },
  bundle: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  minifyWhitespace: true, // the longer it is, the longer it takes to read
  lineLimit: 160, // of which Node shows one where it fails
  define: { 'import.meta.url': 'bundleUrl' },
  plugins: [templatesForEsbuild],
  // Packages are bundled too: Node takes longer to find and open their files than to run them.
  external: ['@myriaddreamin/typst-ts-node-compiler', 'esbuild', 'fontkit'],
  metafile: true,
});
writeFileSync('dist/licences.txt', `${licencesOf(packagesIn(metafile))}\n`);
// What Node runs first is CommonJS, for which it need not set up its loader of modules.
await build({
  entryPoints: ['cli', 'load-bundle', 'practise', 'tune-worker'].map(
    name => `src/start/${name}.ts`,
  ),
  outdir: 'dist',
  bundle: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  define: { 'import.meta.url': 'entryUrl' },
  banner: {
    js: `#!/usr/bin/env node
'use strict';
const entryUrl = require('node:url').pathToFileURL(__filename).href;`,
  },
});
writeFileSync('dist/package.json', '{ "type": "commonjs" }\n');

// Each file that stands in src/browser itself is a script of the pages, unless it exports what the
// others share; the folders are their parts.
const scripts = readdirSync('src/browser')
  .filter(name => /^[^.]+\.ts$/.test(name))
  .filter(name => !/^export /m.test(readFileSync(`src/browser/${name}`, 'utf8')));
// Styles, each by itself, since the build puts some of its own between them.
await build({
  entryPoints: readdirSync('templates/styles').map(name => `templates/styles/${name}`),
  outdir: 'dist/styles',
  minify: true,
});

const forBrowsers = { bundle: true, minify: true, format: 'iife', target: 'es2020' };
/**
 * Puts the words of another language in place of the English ones that a script imports. The
 * types hold each language to the same names, and a file that it lacks fails here.
 */
const wordsIn = language => ({
  name: `words-${language}`,
  setup: ({ onResolve, resolve }) => {
    onResolve({ filter: /\/words\/en\// }, ({ path, resolveDir, kind }) =>
      resolve(path.replace('/words/en/', `/words/${language}/`), { resolveDir, kind }),
    );
  },
});
// One bundle a language: `player.js`, `player.de.js`. A page asks for that of its book.
const languages = readdirSync('shared/words', { withFileTypes: true })
  .filter(entry => entry.isDirectory())
  .map(entry => entry.name);
for (const language of languages) {
  const ending = language === 'en' ? '' : `.${language}`;
  await build({
    ...forBrowsers,
    entryPoints: scripts.map(name => ({
      in: `src/browser/${name}`,
      out: name.replace(/\.ts$/, ending),
    })),
    outdir: 'dist/browser',
    plugins: language === 'en' ? [] : [wordsIn(language)],
  });
}
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

// Last, since it builds a book: keeps what the program compiles to.
execFileSync(process.execPath, ['dist/practise.js', 'content'], { stdio: 'pipe' });
