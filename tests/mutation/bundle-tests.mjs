import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

/**
 * Makes one script of the quick tests of the musical core, so that thousands of mutants can be tried
 * in one process that loads everything once. Left out are tests that go through many tunes or build a book.
 */
const rooms = ['bowing', 'music', 'sections', 'fingering', 'try', 'sets'];
const leftOut = /-of-tunes|named-parts|demo-joins/;

const files = rooms
  .flatMap(room => readdirSync(join('tests', room)).map(name => `./tests/${room}/${name}`))
  .filter(file => file.endsWith('.test.ts') && !leftOut.test(file));

/** Puts our own module in the place of a package, for all but that module itself. */
const standIn = (name, file) => ({
  name,
  setup: ({ onResolve }) =>
    onResolve({ filter: new RegExp(`^${name}$`) }, ({ importer }) =>
      importer.endsWith(file) ? undefined : { path: join(process.cwd(), 'tests/mutation', file) },
    ),
});

await build({
  stdin: {
    contents: ['./tests/seed.ts', ...files].map(f => `import '${f}';`).join('\n'),
    resolveDir: '.',
  },
  plugins: [standIn('vitest', 'vitest-in-mocha.ts'), standIn('fast-check', 'fewer-runs.ts')],
  // Whatever looks for files beside itself finds none, and is skipped.
  define: { 'import.meta.dirname': '"no/such/folder"' },
  bundle: true,
  platform: 'node',
  format: 'cjs',
  outfile: 'mutation-tests.cjs',
  logLevel: 'error',
});
