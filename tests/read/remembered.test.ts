import { expect, it } from 'vitest';
import type { BookFiles } from '../../src/read/book-files.ts';
import { bookOf } from '../../src/read/book-of.ts';
import { readMemo } from '../../src/read/read-memo.ts';

/** A book read again, with what the first reading remembers of it, is the same as read for the first time. */
const settings = 'title: Tuesday Fiddles\npicture: media/quay.jpg\n';
const page = '# The quay\n\nWhere we meet.\n';
const book = (text: string, media: readonly string[]): BookFiles => ({
  texts: new Map([
    ['bowbook.yaml', text],
    ['pages/quay.md', page],
  ]),
  media,
});

it.each([
  ['nothing', book(settings, ['media/quay.jpg'])],
  ['the settings', book(settings.replace('Tuesday', 'Friday'), ['media/quay.jpg'])],
  ['a picture that the settings name', book(settings, [])],
])('with a change of %s', (_, now) => {
  const memo = readMemo();
  bookOf('book', book(settings, ['media/quay.jpg']), { memo });
  expect(bookOf('book', now, { memo })).toEqual(bookOf('book', now));
});

it('its settings are taken over where their file and the media are the same', () => {
  const memo = readMemo();
  const files = book(settings, ['media/quay.jpg']);
  const first = bookOf('book', files, { memo });
  const longer = new Map([...files.texts, ['pages/quay.md', `${page}\nAnd play.\n`] as const]);
  const next = bookOf('book', { ...files, texts: longer }, { memo });
  expect(next.settings).toBe(first.settings);
  expect(next.settings.theme?.picture).toBe('media/quay.jpg');
});
