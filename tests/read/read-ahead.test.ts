import { appendFileSync, cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { BookFiles } from '../../src/read/book-files.ts';
import { bookAhead, bookOf } from '../../src/read/book-of.ts';
import { pageReader } from '../../src/read/page-reader.ts';
import type { ReadingThread } from '../../src/read/read-ahead.ts';
import { readBook } from '../../src/read/read-book.ts';
import { readMemo } from '../../src/read/read-memo.ts';

/** The demo book's pages, many times over, and one that refers to others by name. */
function manyPages(): BookFiles {
  const content = join(import.meta.dirname, '../../content');
  const texts = new Map([['bowbook.yaml', readFileSync(join(content, 'bowbook.yaml'), 'utf8')]]);
  const tunes = readdirSync(join(content, 'tunes'));
  for (let i = 0; i < 120; i++) {
    const tune = readFileSync(join(content, 'tunes', tunes[i % tunes.length] ?? ''), 'utf8');
    texts.set(`tunes/t-${i}.md`, tune.replace(/#([a-z-]+)/g, `#$1-${i}`));
    texts.set(
      `lessons/2030-01-01-${i}.md`,
      `---\ntitle: Evening ${i}\n---\n\nAs [before](2030-01-01-${(i + 7) % 120}.md), not [there](no-such.md).\n`,
    );
  }
  return { texts, media: [] };
}

/** A thread that is none: what it is handed and what it answers is copied, as between threads. */
function threadHere(): ReadingThread & { readonly read: string[] } {
  const reader = pageReader();
  const read: string[] = [];
  return {
    read,
    async names(pages) {
      read.push(...pages.map(page => page.file));
      return structuredClone(structuredClone(pages).map(reader.names));
    },
    async finish(pages, index, settings) {
      const [own, under] = structuredClone([pages, { index, settings }] as const);
      return structuredClone(own.map(page => reader.finish(page, under.index, under.settings)));
    },
  };
}

/** A thread that breaks where a page is to be given its names, or finished. */
const breaking = (at: 'names' | 'finish'): ReadingThread => ({
  ...threadHere(),
  async [at]() {
    throw new Error('broken');
  },
});

describe('pages read in several threads', () => {
  const files = manyPages();
  const alone = bookOf('book', files);

  it('make the book that one thread makes, problems and all', async () => {
    const [one, other] = [threadHere(), threadHere()];
    const ahead = await bookAhead(files, [one, other], {});
    expect(alone.problems.length).toBeGreaterThan(100);
    expect(bookOf('book', files, { ahead })).toEqual(alone);
    expect(ahead.pages.size).toBe(240);
    // All three had a share.
    expect(Math.min(one.read.length, other.read.length)).toBeGreaterThan(0);
    expect(one.read.length + other.read.length).toBeLessThan(240);
  });

  it.each(['names', 'finish'] as const)('do so where one of them breaks at its %s', async at => {
    const ahead = await bookAhead(files, [breaking(at), threadHere()], {});
    expect(bookOf('book', files, { ahead })).toEqual(alone);
  });

  it('are read again where what they asked the book for has changed since', async () => {
    const ahead = await bookAhead(files, [threadHere()], {});
    const texts = new Map(files.texts).set('lessons/no-such.md', '---\ntitle: Now\n---\n\nHere.\n');
    const now = { texts, media: [] };
    expect(bookOf('book', now, { ahead })).toEqual(bookOf('book', now));
  });

  it('are not read ahead where others are remembered', async () => {
    const root = mkdtempSync(join(tmpdir(), 'bowbook-ahead-'));
    try {
      cpSync(join(import.meta.dirname, '../../content'), root, { recursive: true });
      const [thread, memo] = [threadHere(), readMemo()];
      const read = () => readBook(root, { memo, threadsFor: () => [thread] });
      await read();
      const first = thread.read.length;
      expect(first).toBeGreaterThan(0);
      const [lesson = ''] = readdirSync(join(root, 'lessons'));
      appendFileSync(join(root, 'lessons', lesson), '\nAnd on.\n');
      expect(await read()).toEqual(await readBook(root));
      expect(thread.read.length).toBe(first);
    } finally {
      rmSync(root, { recursive: true });
    }
  });

  it('are begun anew by a thread that had begun them in a build that ended before', async () => {
    const reader = pageReader();
    const page = { kind: 'page', file: 'pages/a.md', text: '# Before\n' } as const;
    const now = { ...page, text: '# After\n\n## More\n' };
    reader.names(page);
    expect(reader.names(now)).toEqual(pageReader().names(now));
  });
});
