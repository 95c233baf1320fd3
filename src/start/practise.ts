import { appendFileSync, cpSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { codeFile, loadBundle } from './load-bundle.ts';

/**
 * The last step of bundling: builds a book, builds it again after a change to a lesson, and saves the code
 * that V8 has compiled meanwhile. Argument: the folder of the book, of which it uses a copy. Throws where
 * the book has errors.
 */
async function practise(book: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'bowbook-'));
  const { program, script } = loadBundle();
  try {
    const copy = join(folder, 'book');
    cpSync(book, copy, { recursive: true });
    const [site, cache] = [join(folder, 'site'), join(folder, 'cache')];
    process.argv.splice(2, 1, 'build', copy, '--quick', '--out', site, '--cache', cache);
    await program.runCommand();
    const [lesson = ''] = readdirSync(join(copy, 'lessons'));
    appendFileSync(join(copy, 'lessons', lesson), '\nOnce more.\n');
    await program.runCommand();
    if (process.exitCode) throw new Error('the book for practice has errors');
    writeFileSync(codeFile, script.createCachedData());
  } finally {
    rmSync(folder, { recursive: true });
  }
}

void practise(process.argv[2] ?? '');
