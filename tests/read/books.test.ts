import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readingMessages } from '../../shared/words/en/reading.ts';
import { readBook } from '../../src/read/read-book.ts';
import { formatProblems } from '../../src/report/format-problems.ts';

/**
 * Each folder of `tests/books` is a book that a teacher could have written; its `expected.txt` is
 * what the terminal says of its reading, word for word.
 */
const books = join(import.meta.dirname, '..', 'books');

const cases = readdirSync(books).filter(name => existsSync(join(books, name, 'expected.txt')));

const expected = (name: string): string => readFileSync(join(books, name, 'expected.txt'), 'utf8');

describe('books', () => {
  test.each(cases)('%s', async name => {
    const root = join(books, name);
    const { problems } = await readBook(root);
    const said = formatProblems(problems, file => {
      const path = join(root, file);
      return existsSync(path) ? readFileSync(path, 'utf8') : null;
    });
    expect(said).toBe(expected(name));
  });

  test('every rule of reading has a book that breaks it', () => {
    const said = cases.map(expected).join('\n');
    const broken = Object.keys(readingMessages).filter(rule => said.includes(`, ${rule}\n`));
    expect(broken).toEqual(Object.keys(readingMessages));
  });
});
