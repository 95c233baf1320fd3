import { openingText, type SearchEntry } from '../../../shared/search/search-entry.ts';
import { keys } from '../../../shared/words/en/keys.ts';
import { searchWords } from '../../../shared/words/en/search.ts';
import { kindName } from '../../../shared/words/keys.ts';
import { noteNames } from '../page-words.ts';
import { drawOpenings } from './draw-openings.ts';
import type { TuneQuery } from './find-tunes.ts';

/** Tunes shown before one asks for more: a phone should not lay out ten thousand. */
const firstShown = 40;

/** Puts what was found in place of the whole list; with nothing asked the list comes back. */
export function showFound(
  form: HTMLFormElement,
  query: TuneQuery,
  found: readonly SearchEntry[],
): void {
  const list = document.querySelector<HTMLElement>('[data-found]');
  const all = document.querySelector<HTMLElement>('[data-all]');
  const more = document.querySelector<HTMLElement>('[data-more]');
  const count = form.querySelector('[data-count]');
  if (!list || !all || !more || !count) return;
  const asked = Object.values(query).some(value => value);
  all.hidden = asked;
  list.hidden = !asked;
  more.hidden = !asked || found.length <= firstShown;
  count.textContent = asked ? searchWords.count(found.length, all.childElementCount) : '';
  const items = found.slice(0, firstShown).map(tuneItem);
  list.replaceChildren(...items);
  drawOpenings(items);
  const button = more.querySelector('button');
  if (button) {
    button.onclick = () => {
      const rest = found.slice(firstShown).map(tuneItem);
      list.append(...rest);
      drawOpenings(rest);
      more.hidden = true;
      rest[0]?.querySelector('a')?.focus();
    };
  }
}

function tuneItem(entry: SearchEntry): HTMLLIElement {
  const item = document.createElement('li');
  const heading = document.createElement('h2');
  const link = document.createElement('a');
  link.href = `${entry.id}.html`;
  link.textContent = entry.title;
  heading.append(link);
  item.append(heading);
  if (entry.aliases.length > 0) item.append(paragraph('aliases', entry.aliases.join(', ')));
  item.append(paragraph('kind', kindName({ keys }, entry.type, entry.key)));
  const opening =
    entry.letters === '' ? searchWords.withheld : openingText(entry.letters, 7, noteNames());
  item.append(paragraph('kind', `${searchWords.opens} ${opening}`));
  const listed = document.querySelector<HTMLElement>(
    `[data-all] [data-tune="${CSS.escape(entry.id)}"]`,
  );
  item.dataset.tune = entry.id;
  item.dataset.openings = listed?.dataset.openings ?? '';
  return item;
}

function paragraph(className: string, text: string): HTMLParagraphElement {
  const made = document.createElement('p');
  made.className = className;
  made.textContent = text;
  return made;
}
