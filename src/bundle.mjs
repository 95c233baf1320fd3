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
  // Packages are bundled too: Node takes longer to find and open their files than to run them.
  external: ['@myriaddreamin/typst-ts-node-compiler', 'esbuild', 'jsdom'],
  // What some of them, written for CommonJS, ask Node for.
  banner: {
    js: `#!/usr/bin/env node
import { createRequire as makeRequire } from 'node:module';
const require = makeRequire(import.meta.url);`,
  },
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
