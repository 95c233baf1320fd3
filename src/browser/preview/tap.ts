/** The preview's page to tap along with a recording, which writes the line to copy into a lesson. */
import { type PreviewBook, previewPaths } from '../../../shared/preview-news.ts';
import { previewWords } from '../../../shared/words/en/preview.ts';
import { openTapping } from './tap-page.ts';

const { tap: words } = previewWords;

async function start(): Promise<void> {
  const main = document.querySelector('main');
  if (!main) return;
  const back = document.createElement('p');
  const link = document.createElement('a');
  link.href = '/';
  link.textContent = words.back;
  back.append(link);
  main.prepend(back);
  const book = (await (await fetch(previewPaths.book)).json()) as PreviewBook;
  const missing =
    book.tunes.length === 0
      ? words.noTunes
      : book.recordings.length === 0
        ? words.noRecordings
        : null;
  if (missing === null) {
    openTapping(main, book);
    return;
  }
  const notice = document.createElement('p');
  notice.className = 'tap-notice';
  notice.textContent = missing;
  main.append(notice);
}

void start();
