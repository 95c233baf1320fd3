import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { engraveTune } from '../engrave/engrave-tune.ts';
import { packageRoot } from '../pages/package-root.ts';
import { printBook } from '../print/print-book.ts';
import type { PrintInput, PrintOptions, PrintTune } from '../print/print-input.ts';
import type { Book } from '../read/book.ts';
import { noteChain } from './note-chain.ts';

/** Makes one PDF of a book. Options that are left out follow the book's settings. */
export function print(
  book: Book,
  tunes: ReadonlyMap<string, PrintTune>,
  options: Partial<PrintOptions>,
): ReturnType<typeof printBook> {
  const input: PrintInput = {
    book,
    tunes,
    draw: (study, cellWidth) =>
      engraveTune(study, { cellWidth, noteNames: book.settings.noteNames }),
    noteChain: block => noteChain(block, book.settings),
    picture: path => readPicture(join(book.root, path)),
  };
  return printBook(input, { ...defaultPrint(book), ...options }, packageRoot());
}

const defaultPrint = (book: Book): PrintOptions => ({
  what: 'book',
  paper: book.settings.paper,
  audience: 'adults',
  steps: book.settings.steps,
  marks: 'all',
  fingers: null,
  letters: null,
  order: 'lessons',
  only: null,
});

function readPicture(path: string): Buffer | null {
  try {
    return readFileSync(path);
  } catch {
    return null;
  }
}
