// Bundles the command for Node, which runs no TypeScript, and the pages' scripts for browsers.
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { build } from 'esbuild';
import { licencesOf, packagesIn } from './licences.mjs';
import { templatesForEsbuild } from './templates-plugin.mjs';

// V8 could take the compiled code of an older bundle for that of this one.
rmSync('dist/bowbook.code', { force: true });

// The program as one script, which the files in `src/start/` load with compiled code.
const { metafile } = await build({
  entryPoints: { bowbook: 'src/bundling/bundled.ts' },
  outdir: 'dist',
  outExtension: { '.js': '.cjs' },
  bundle: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  minifyWhitespace: true, // the longer it is, the longer it takes to read
  lineLimit: 160, // Node prints the line where an error is thrown
  define: { 'import.meta.url': 'bundleUrl' },
  plugins: [templatesForEsbuild],
  // Packages are bundled too: Node takes longer to find and open their files than to run them.
  external: ['@myriaddreamin/typst-ts-node-compiler', 'esbuild', 'fontkit'],
  metafile: true,
});
writeFileSync('dist/licences.txt', `${licencesOf(packagesIn(metafile))}\n`);
// The files that Node starts with are CommonJS, so that it does not load its ES module loader.
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

// Each file directly in src/browser is a script of the pages, unless it has exports, which the scripts
// share; the folders contain their parts.
const scripts = readdirSync('src/browser')
  .filter(name => /^[^.]+\.ts$/.test(name))
  .filter(name => !/^export /m.test(readFileSync(`src/browser/${name}`, 'utf8')));
// Each style sheet by itself, since a build puts the book's own colours between them.
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
// One bundle per language: `player.js`, `player.de.js`. A page loads the one in its book's language.
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
// The preview's scripts have a folder of their own, since dist/browser is copied into every site.
await build({
  ...forBrowsers,
  entryPoints: ['src/browser/preview/refresh.ts', 'src/browser/preview/tap.ts'],
  outdir: 'dist/preview',
});

// Last, since it builds a book with the bundle: saves the compiled code.
execFileSync(process.execPath, ['dist/practise.js', 'content'], { stdio: 'pipe' });
