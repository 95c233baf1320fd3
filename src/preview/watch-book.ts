import { basename, join, relative, sep } from 'node:path';
import { watch } from 'chokidar';
import { previewWords } from '../../shared/words/en/preview.ts';
import { UsageError } from '../app/usage-error.ts';

/** Milliseconds without a change before a build starts: editors may write a file several times. */
const pause = 15;

/** Names in a book's folder that a build reads. */
const ofBook = new Set(['bowbook.yaml', 'lessons', 'tunes', 'pages', 'media']);

/** A running watch. */
export interface BookWatch {
  readonly close: () => Promise<void>;
}

/**
 * Watches the files of a book and calls `onChange` after each burst of changes. Resolves once it
 * watches. Throws `UsageError` where the system refuses to watch so many files.
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
  // Of two changes to a file within 50 ms chokidar reports only the first, so that a save which first
  // empties a file would be built empty. Raw events of the system report every change.
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

/**
 * Whether a build depends on a path, given as its steps from the book's folder. Hidden files do not
 * count; pages beside `bowbook.yaml` do, since a build reports them as misplaced.
 */
function isOfBook(steps: readonly string[]): boolean {
  const [first = '', ...rest] = steps;
  if (first === '') return true;
  if (steps.some(step => step.startsWith('.'))) return false;
  return ofBook.has(first) || (rest.length === 0 && first.endsWith('.md'));
}
