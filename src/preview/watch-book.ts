import { relative, sep } from 'node:path';
import { watch } from 'chokidar';

/** Milliseconds without a change before a build begins: a save may touch a file more than once. */
const pause = 15;

/** The names at the head of a book's folder that a build looks at. */
const ofBook = new Set(['bowbook.yaml', 'lessons', 'tunes', 'pages', 'media']);

export interface BookWatch {
  readonly close: () => Promise<void>;
}

/** Watches the files of a book, and tells when some have changed. Resolves once it watches. */
export async function watchBook(root: string, onChange: () => void): Promise<BookWatch> {
  let waiting: NodeJS.Timeout | undefined;
  const watcher = watch(root, {
    ignoreInitial: true,
    ignored: path => !isOfBook(relative(root, path).split(sep)),
  });
  watcher.on('all', () => {
    clearTimeout(waiting);
    waiting = setTimeout(onChange, pause);
  });
  await new Promise<void>((resolve, reject) => {
    watcher.once('ready', resolve).once('error', reject);
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
