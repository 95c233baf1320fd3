import type { Day } from '../../../shared/review/day.ts';
import { type ReviewRecord, readReview, writeReview } from '../../../shared/review/review-file.ts';
import { reviewWords as words } from '../../../shared/words/en/review.ts';
import { element, part } from './elements.ts';
import type { ListedTune } from './read-tunes.ts';

export interface FileActions {
  readonly record: () => ReviewRecord;
  readonly today: () => Day;
  /** Takes a whole record over. */
  readonly replace: (record: ReviewRecord) => void;
}

/** The buttons that save the ticks as a file, take them over from one, and forget them. */
export function fileButtons(
  page: HTMLElement,
  tunes: ReadonlyMap<string, ListedTune>,
  { record, today, replace }: FileActions,
): void {
  const say = (text: string): void => {
    part(page, 'file-said').textContent = text;
  };
  part(page, 'save').addEventListener('click', () => saveFile(writeReview(record())));

  const input = part<HTMLInputElement>(page, 'load');
  input.addEventListener('change', async () => {
    const [file] = input.files ?? [];
    if (!file) return;
    const text = await file.text().catch(() => null);
    input.value = ''; // the same file may be chosen again
    if (text === null) return say(words.unreadable);
    const read = readReview(text, today());
    if (!read.ok) return say(words.notLoaded(read.fault, read.at));
    const entries = Object.entries(read.record.tunes);
    const known = entries.filter(([id]) => tunes.has(id));
    replace({ ...read.record, tunes: Object.fromEntries(known) });
    say(words.loaded(known.length, entries.length - known.length));
  });

  const forget = part<HTMLButtonElement>(page, 'forget');
  forget.addEventListener('click', () => {
    if (forget.dataset.sure === undefined) {
      forget.dataset.sure = '';
      forget.textContent = words.reallyForget;
      return;
    }
    replace({ ...record(), tunes: {} });
    say(words.forgotten);
    calm();
  });
  const calm = (): void => {
    delete forget.dataset.sure;
    forget.textContent = words.forget;
  };
  forget.addEventListener('blur', calm);
}

/** Hands the browser a file to keep. */
function saveFile(text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = element('a', { href: address, download: words.fileName });
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 1000);
}
