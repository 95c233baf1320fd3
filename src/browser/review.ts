import { type Day, dayDate, localDay } from '../../shared/review/day.ts';
import { type ReviewRecord, readMinutes } from '../../shared/review/review-file.ts';
import {
  dueDay,
  intervalOf,
  stateOf,
  type TuneState,
  ticked,
} from '../../shared/review/review-state.ts';
import { reviewWords as words } from '../../shared/words/en/review.ts';
import { dayName } from '../../shared/words/long-date.ts';
import { pageLocale } from './page-words.ts';
import { element, part } from './review/elements.ts';
import { fileButtons } from './review/file-buttons.ts';
import { keepRecord, keptRecord, whenKeptElsewhere } from './review/kept-record.ts';
import { readTunes } from './review/read-tunes.ts';
import { showToday } from './review/show-today.ts';
import { showWeeks } from './review/show-weeks.ts';

/**
 * The page of what to play today. It reads the tunes that the page lists, keeps what the student
 * ticks in the browser's own store, and plans from both. Nothing leaves the device.
 */
function review(page: HTMLElement): void {
  const book = page.dataset.review ?? '';
  const tunes = readTunes(document);
  let record = keptRecord(book);
  let today: Day = localDay(new Date());
  /** What the last tick changed. */
  let before: { readonly id: string; readonly was: TuneState | undefined } | null = null;
  const minutes = part(page, 'minutes').querySelector('input') as HTMLInputElement;
  const undo = part<HTMLButtonElement>(page, 'undo');

  const say = (text: string): void => {
    part(page, 'said').textContent = text;
  };

  function show(): void {
    minutes.value = `${record.minutes}`;
    undo.hidden = before === null;
    showToday(page, tunes, record, today, tick);
    showWeeks(page, tunes, record, today);
    for (const button of document.querySelectorAll<HTMLElement>('[data-begin]')) {
      button.hidden = Object.hasOwn(record.tunes, button.dataset.begin ?? '');
    }
  }

  function keep(next: ReviewRecord): void {
    record = next;
    part(page, 'not-kept').hidden = keepRecord(book, next);
    show();
  }

  function change(id: string, next: TuneState): void {
    const was = Object.hasOwn(record.tunes, id) ? record.tunes[id] : undefined;
    before = { id, was };
    keep({ ...record, tunes: { ...record.tunes, [id]: next } });
  }

  function tick(id: string, wasThere: boolean): void {
    const tune = tunes.get(id);
    const from = tune && stateOf(tune, record.tunes, today);
    if (!tune || !from) return;
    const next = ticked(from, wasThere, today);
    change(id, next);
    say(
      words.comesBack(
        tune.title,
        dayName(dayDate(dueDay(next)), pageLocale(), 'long'),
        intervalOf(next.step),
      ),
    );
    // The pressed button is gone: on to the next one, or back to the head of the day.
    const on = page.querySelector<HTMLElement>('[data-ticks] button') ?? part(page, 'today');
    on.focus({ preventScroll: true });
  }

  undo.addEventListener('click', () => {
    if (before === null) return;
    const { id, was } = before;
    const { [id]: _, ...others } = record.tunes;
    before = null;
    keep({ ...record, tunes: was ? { ...others, [id]: was } : others });
    say(words.undone(tunes.get(id)?.title ?? id));
    part(page, 'today').focus({ preventScroll: true });
  });

  for (const item of document.querySelectorAll<HTMLElement>('.review-others [data-tune]')) {
    const tune = tunes.get(item.dataset.tune ?? '');
    if (!tune) continue;
    const button = element('button', { type: 'button', className: 'review-button' }, words.begin);
    button.setAttribute('aria-label', words.beginOf(tune.title));
    button.dataset.begin = tune.id;
    button.addEventListener('click', () => {
      change(tune.id, { step: 0, last: today });
      say(words.begun(tune.title));
    });
    item.append(button);
  }

  part(page, 'minutes').addEventListener('submit', event => event.preventDefault());
  minutes.addEventListener('change', () => {
    before = null;
    keep({ ...record, minutes: readMinutes(minutes.valueAsNumber) });
  });
  part(page, 'print').addEventListener('click', () => print());
  fileButtons(page, tunes, {
    record: () => record,
    today: () => today,
    replace(next) {
      before = null;
      keep(next);
    },
  });
  whenKeptElsewhere(() => {
    record = keptRecord(book);
    before = null;
    show();
  });
  // A page left open overnight shows the new day when it is looked at again.
  document.addEventListener('visibilitychange', () => {
    if (document.hidden || today === localDay(new Date())) return;
    today = localDay(new Date());
    show();
  });

  part(document, 'review-plain').hidden = true;
  page.hidden = false;
  show();
}

const page = document.querySelector<HTMLElement>('[data-review]');
if (page) review(page);
