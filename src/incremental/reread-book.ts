import { hashOf } from '../pipeline/hash-of.ts';
import type { Book } from '../read/book.ts';
import type { PageNames } from '../read/page-names.ts';
import type { PageReader } from '../read/page-reader.ts';
import { type BookFiles, readBookFiles } from '../read/read-book-files.ts';
import type { FinishedPage } from '../read/read-page.ts';
import { type Asked, sameAnswers, traceNames } from './traced-names.ts';

/** What a reading of the book leaves for the next one. Plain data. */
export interface ReadState {
  /** Hash of all files of the book. */
  readonly filesHash: string;
  readonly book: Book;
  /** Pages by file. */
  readonly pages: ReadonlyMap<string, PageState>;
}

/** A page as it was read, with the hash of its text. */
interface PageState {
  readonly textHash: string;
  readonly names: PageNames;
  /** null where the page is unfinished and not shown. */
  readonly read: ReadPage | null;
}

/** A finished page with its inputs besides the text: its look-ups of the book's names, and the settings. */
interface ReadPage {
  readonly asked: Asked;
  readonly settingsHash: string;
  readonly finished: FinishedPage;
}

/**
 * Reads the book in the folder `root` as `readBook` does, and takes over each page whose text, settings and
 * look-ups of the book's names give the same as last time. Returns `last` itself where no file has changed:
 * then nothing is parsed, and the Markdown parser, the slowest module to load, is not imported.
 */
export async function rereadBook(
  root: string,
  options: { readonly unfinished?: boolean },
  last: ReadState | null,
): Promise<ReadState> {
  const files = await readBookFiles(root);
  const filesHash = hashOfFiles(files);
  if (last?.filesHash === filesHash) return last;
  const { bookOf } = await import('../read/book-of.ts');
  const { pageReader } = await import('../read/page-reader.ts');
  const { reader, pages } = rememberingReader(pageReader(), last?.pages ?? new Map());
  return { filesHash, book: bookOf(root, files, { ...options, reader }), pages };
}

/** Wraps `reader` so that it reads only the pages that `known` lacks; `pages` fills as pages are read. */
function rememberingReader(
  reader: PageReader,
  known: ReadonlyMap<string, PageState>,
): { readonly reader: PageReader; readonly pages: ReadonlyMap<string, PageState> } {
  const pages = new Map<string, PageState>();
  return {
    pages,
    reader: {
      names(page) {
        const { file, text } = page;
        const textHash = hashOf(text);
        const before = known.get(file);
        const isSame = before?.textHash === textHash;
        const names = isSame ? before.names : reader.names(page);
        pages.set(file, { textHash, names, read: isSame ? before.read : null });
        return names;
      },
      finish(page, names, settings) {
        const settingsHash = hashOf(JSON.stringify(settings));
        const state = pages.get(page.file);
        if (!state) throw new Error(`${page.file} is finished before its names are read`);
        const { read } = state;
        if (read?.settingsHash === settingsHash && sameAnswers(read.asked, names)) {
          return read.finished;
        }
        const trace = traceNames(names);
        const finished = reader.finish(page, trace.names, settings);
        const asked = trace.asked();
        pages.set(page.file, { ...state, read: { asked, settingsHash, finished } });
        return finished;
      },
    },
  };
}

const hashOfFiles = ({ texts, media, unread = [], problems = [] }: BookFiles): string =>
  hashOf(...[...texts].flat(), JSON.stringify({ media, unread, problems }));
