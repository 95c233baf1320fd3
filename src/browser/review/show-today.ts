import { type Day, dayDate } from '../../../shared/review/day.ts';
import { isDone, planSession, type Turn } from '../../../shared/review/plan-session.ts';
import type { ReviewRecord } from '../../../shared/review/review-file.ts';
import { dueDay, stateOf } from '../../../shared/review/review-state.ts';
import { halfMinutes } from '../../../shared/words/amounts.ts';
import { reviewWords as words } from '../../../shared/words/en/review.ts';
import { dayName } from '../../../shared/words/long-date.ts';
import { pageLocale } from '../page-words.ts';
import { element, part } from './elements.ts';
import type { ListedTune } from './read-tunes.ts';

/** Puts today's turns on the page, and a pair of buttons for each tune of today. */
export function showToday(
  page: HTMLElement,
  tunes: ReadonlyMap<string, ListedTune>,
  { minutes, tunes: state }: ReviewRecord,
  today: Day,
  tick: (id: string, wasThere: boolean) => void,
): void {
  const all = [...tunes.values()];
  const session = planSession(all, state, today, minutes);
  const named = (id: string): ListedTune[] => [tunes.get(id) ?? []].flat();
  part(page, 'today').textContent = words.today(dayName(dayDate(today), pageLocale(), 'long'));
  const playsToday = session.turns.length > 0;
  part(page, 'idle').textContent = playsToday ? '' : restWords(all, state, today);
  part(page, 'turns-intro').hidden = !playsToday;
  part(page, 'turns').replaceChildren(...session.turns.map(turn => turnItem(turn, tunes)));
  part(page, 'waiting').textContent =
    session.waiting.length === 0
      ? ''
      : words.waiting(session.waiting.flatMap(named).map(tune => tune.title));
  part(page, 'tick-section').hidden = session.tunes.length === 0;
  part(page, 'ticks').replaceChildren(
    ...session.tunes.flatMap(named).map(tune => tickItem(tune, tick)),
  );
}

/** Nothing to play: all done, or nothing due; and what comes next. */
function restWords(tunes: readonly ListedTune[], state: ReviewRecord['tunes'], today: Day): string {
  const done = tunes.some(tune => isDone(tune, state, today));
  const coming = tunes
    .flatMap(tune => {
      const at = stateOf(tune, state, today);
      return at && dueDay(at) > today ? [{ tune, day: dueDay(at) }] : [];
    })
    .sort((a, b) => a.day - b.day)[0];
  const next = coming
    ? ` ${words.next(coming.tune.title, dayName(dayDate(coming.day), pageLocale(), 'long'))}`
    : '';
  return (done ? words.allDone : words.nothingDue) + next;
}

function turnItem(turn: Turn, tunes: ReadonlyMap<string, ListedTune>): HTMLElement {
  const length = element(
    'span',
    { className: 'turn-length' },
    words.turnLength(halfMinutes(turn.seconds), turn.seconds > 60),
  );
  const row = (...what: readonly (Node | string)[]): HTMLElement =>
    element('span', { className: 'review-turn' }, element('span', {}, ...what), length);
  if (turn.kind === 'rest') return element('li', { className: 'rest' }, row(words.rest));
  const tune = tunes.get(turn.tune);
  const name = turn.part === null ? undefined : tune?.parts[turn.part]?.name;
  const what = `, ${name === undefined ? words.whole : words.part(name)}`;
  const link = element('a', { href: tune?.href ?? '' }, tune?.title ?? turn.tune);
  return element('li', {}, row(link, what));
}

function tickItem(
  { id, title }: ListedTune,
  tick: (id: string, wasThere: boolean) => void,
): HTMLElement {
  const button = (wasThere: boolean): HTMLButtonElement => {
    const made = element(
      'button',
      { type: 'button', className: 'review-button' },
      wasThere ? words.wasThere : words.hadGone,
    );
    made.setAttribute('aria-label', wasThere ? words.wasThereOf(title) : words.hadGoneOf(title));
    made.addEventListener('click', () => tick(id, wasThere));
    return made;
  };
  return element(
    'li',
    {},
    element('span', { className: 'name' }, title),
    element('span', { className: 'pair' }, button(true), button(false)),
  );
}
