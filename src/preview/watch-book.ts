import { basename, join, relative, sep } from 'node:path';
import { watch } from 'chokidar';
import { previewWords } from '../../shared/words/en/preview.ts';
import { UsageError } from '../app/usage-error.ts';

/** Milliseconds without a change before a build begins: a save may touch a file more than once. */
const pause = 15;

/** The names at the head of a book's folder that a build looks at. */
const ofBook = new Set(['bowbook.yaml', 'lessons', 'tunes', 'pages', 'media']);

export interface BookWatch {
  readonly close: () => Promise<void>;
}

/**
 * Watches the files of a book, and tells when some have changed. Resolves once it watches; throws
 * `UsageError` where the system will not have so many files watched.
 */
export async function watchBook(root: string, onChange: () => void): Promise<BookWatch> {
  let waiting: NodeJS.Timeout | undefined;
  const watcher = watch(root, {
    ignoreInitial: true,
    ignored: path => !isOfBook(relative(root, path).split(sep)),
  });
  const changed = (): void => {
    clearTimeout(waiting);
    waiting = setTimeout(onChange, pause);
  };
  watcher.on('all', changed);
  // Of two changes to a file within 50 ms chokidar tells the first alone, and a save that empties a
  // file before it fills it would be built empty. What the system itself says is told each time.
  watcher.on('raw', (_, name, at) => {
    const under = relative(root, (at as { readonly watchedPath: string }).watchedPath);
    const path = basename(under) === name ? under : join(under, name ?? '');
    if (isOfBook(path.split(sep))) changed();
  });
  await new Promise<void>((resolve, reject) => {
    watcher.once('ready', resolve).once('error', reject);
  }).catch(async (error: NodeJS.ErrnoException) => {
    await watcher.close();
    throw new UsageError(previewWords.notWatched(error.code ?? error.message));
  });
  return {
    async close() {
      clearTimeout(waiting);
      await watcher.close();
    },
  };
}

/** Hidden files are none of a book's; pages that stand beside `bowbook.yaml` are told of as strays. */
function isOfBook(steps: readonly string[]): boolean {
  const [first = '', ...rest] = steps;
  if (first === '') return true;
  if (steps.some(step => step.startsWith('.'))) return false;
  return ofBook.has(first) || (rest.length === 0 && first.endsWith('.md'));
}
