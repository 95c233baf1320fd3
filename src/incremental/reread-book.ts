import { hashOf } from '../pipeline/hash-of.ts';
import type { Book } from '../read/book.ts';
import type { PageNames } from '../read/page-names.ts';
import type { PageReader } from '../read/page-reader.ts';
import { type BookFiles, readBookFiles } from '../read/read-book-files.ts';
import type { FinishedPage } from '../read/read-page.ts';
import { type Asked, sameAnswers, traceNames } from './traced-names.ts';

/** What a reading of a book leaves for the next one. Plain data. */
export interface ReadState {
  /** Hash of all files of the book. */
  readonly filesHash: string;
  readonly book: Book;
  /** By file. */
  readonly pages: ReadonlyMap<string, PageState>;
}

/** A page as read, with the hash of its text. */
interface PageState {
  readonly textHash: string;
  readonly names: PageNames;
  /** null where it is unfinished and not shown. */
  readonly read: ReadPage | null;
}

/** A finished page with what it was made from besides its text: the book's names that it asked for, and the settings. */
interface ReadPage {
  readonly asked: Asked;
  readonly settingsHash: string;
  readonly finished: FinishedPage;
}

/**
 * Reads the book in a folder as `readBook` does, and takes over from the last reading each page whose
 * text, settings and answers of the book's names are the same. Returns `last` itself where no file has changed:
 * then nothing is parsed, and the parser, which takes longer to load than all else, is not loaded.
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

/** A reader that asks `reader` only for what `known` does not have; `pages` fills as it is asked. */
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
