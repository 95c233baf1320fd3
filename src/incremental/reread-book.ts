import { hashOf } from '../pipeline/hash-of.ts';
import type { Book } from '../read/book.ts';
import { type BookFiles, bookFiles } from '../read/book-files.ts';
import type { PageReader } from '../read/page-reader.ts';
import type { FinishedPage, PageNames } from '../read/read-page.ts';
import { type Asked, sameAnswers, traceIndex } from './traced-index.ts';

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

/** A finished page with what it was made from besides its text: answers of the index, and the settings. */
interface ReadPage {
  readonly asked: Asked;
  readonly settingsHash: string;
  readonly finished: FinishedPage;
}

/**
 * Reads the book in a folder as `readBook` does, and takes over from the last reading each page whose
 * text, settings and answers of the index are the same. Returns `last` itself where no file has changed:
 * then nothing is parsed, and the parser, which takes longer to load than all else, is not loaded.
 */
export async function rereadBook(
  root: string,
  options: { readonly drafts?: boolean },
  last: ReadState | null,
): Promise<ReadState> {
  const files = await bookFiles(root);
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
      finish(page, index, settings) {
        const settingsHash = hashOf(JSON.stringify(settings));
        const state = pages.get(page.file);
        if (!state) throw new Error(`${page.file} is finished before its names are read`);
        const { read } = state;
        if (read?.settingsHash === settingsHash && sameAnswers(read.asked, index)) {
          return read.finished;
        }
        const trace = traceIndex(index);
        const finished = reader.finish(page, trace.index, settings);
        const asked = trace.asked();
        pages.set(page.file, { ...state, read: { asked, settingsHash, finished } });
        return finished;
      },
    },
  };
}

const hashOfFiles = ({ texts, media, unread = [], problems = [] }: BookFiles): string =>
  hashOf(...[...texts].flat(), JSON.stringify({ media, unread, problems }));
