import { type Day, dayDate, dayText } from '../../../shared/review/day.ts';
import { type PlannedDay, planWeeks } from '../../../shared/review/plan-weeks.ts';
import type { ReviewRecord } from '../../../shared/review/review-file.ts';
import { reviewWords as words } from '../../../shared/words/en/review.ts';
import { dayName } from '../../../shared/words/long-date.ts';
import { pageLocale } from '../page-words.ts';
import { element, part } from './elements.ts';
import type { ListedTune } from './read-tunes.ts';

/** Puts the plan for four weeks on the page: a table a week, a row a day, a box to tick a tune. */
export function showWeeks(
  page: HTMLElement,
  tunes: ReadonlyMap<string, ListedTune>,
  { minutes, tunes: state }: ReviewRecord,
  today: Day,
): void {
  const days = planWeeks([...tunes.values()], state, today, minutes);
  const weeks = [0, 1, 2, 3].map(week => days.slice(week * 7, week * 7 + 7));
  part(page, 'weeks').replaceChildren(...weeks.map((week, i) => weekTable(week, i + 1, tunes)));
}

function weekTable(
  days: readonly PlannedDay[],
  number: number,
  tunes: ReadonlyMap<string, ListedTune>,
): HTMLElement {
  const head = [words.day, words.tunesColumn].map(name =>
    element('th', { scope: 'col' }, element('span', { className: 'unseen' }, name)),
  );
  return element(
    'table',
    { className: 'week' },
    element('caption', {}, words.week(number)),
    element('thead', {}, element('tr', {}, ...head)),
    element('tbody', {}, ...days.map(day => dayRow(day, tunes))),
  );
}

function dayRow({ day, tunes: ids }: PlannedDay, tunes: ReadonlyMap<string, ListedTune>) {
  const date = element(
    'time',
    { dateTime: dayText(day) },
    dayName(dayDate(day), pageLocale(), 'short'),
  );
  const items = ids.map(id => element('span', { className: 'box' }, tunes.get(id)?.title ?? id));
  const none = element('span', { className: 'none' }, words.nothing);
  return element(
    'tr',
    {},
    element('th', { scope: 'row' }, date),
    element('td', {}, ...(items.length === 0 ? [none] : items)),
  );
}
