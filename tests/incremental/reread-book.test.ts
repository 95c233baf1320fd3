import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { type ReadState, rereadBook } from '../../src/incremental/reread-book.ts';
import { readBook } from '../../src/read/read-book.ts';

/** A book read again, with what the first reading left, is the same as read for the first time. */
const root = mkdtempSync(join(tmpdir(), 'bowbook-reread-'));
afterAll(() => rmSync(root, { recursive: true }));

const write = (file: string, text: string): void => {
  mkdirSync(dirname(join(root, file)), { recursive: true });
  writeFileSync(join(root, file), text);
};

write('bowbook.yaml', 'title: Tuesday Fiddles\npicture: media/quay.jpg\n');
write('media/quay.jpg', 'no picture, but a file');
write('pages/quay.md', '# The quay\n\nWhere we meet. [Then](then.md) on.\n');
write('pages/then.md', '# Then\n\nOff home.\n');
write('pages/unready.md', '---\ntitle: Unready\nunfinished: true\n---\n\nNot yet.\n');

let last: ReadState | null = null;

it.each<[string, () => void]>([
  ['at first', () => {}],
  ['with nothing changed', () => {}],
  ['with other words on a page', () => write('pages/then.md', '# Then\n\nOff we go.\n')],
  ['with a name that another page asks for gone', () => rmSync(join(root, 'pages/then.md'))],
  ['with that name back', () => write('pages/then.md', '# Then\n\nBack.\n')],
  ['with other settings', () => write('bowbook.yaml', 'title: Friday\npicture: media/quay.jpg\n')],
  ['with a picture that the settings name gone', () => rmSync(join(root, 'media/quay.jpg'))],
  [
    'with an unfinished page finished',
    () => write('pages/unready.md', '---\ntitle: Unready\n---\n\nNow.\n'),
  ],
])('%s', async (_, change) => {
  change();
  last = await rereadBook(root, {}, last);
  expect(last.book).toEqual(await readBook(root));
});

it('takes over pages that nothing has changed for, and the whole where no file has changed', async () => {
  const before = await rereadBook(root, {}, last);
  write('pages/then.md', '# Then\n\nAnd once more.\n');
  const after = await rereadBook(root, {}, before);
  const page = ({ pages }: ReadState, file: string) => pages.get(file)?.read?.finished;
  expect(page(after, 'pages/quay.md')).toBe(page(before, 'pages/quay.md'));
  expect(page(after, 'pages/then.md')).not.toBe(page(before, 'pages/then.md'));
  expect(await rereadBook(root, {}, after)).toBe(after);
});
