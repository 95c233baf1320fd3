import type { SearchEntry } from '../../shared/search/search-entry.ts';
import { noteNames } from './page-words.ts';
import { drawOpenings } from './search/draw-openings.ts';
import { makeTuneFinder, type TuneFinder, type TuneQuery } from './search/find-tunes.ts';
import { showFound } from './search/show-found.ts';
import { listenToStrings } from './search/touch-strings.ts';

/**
 * Finding a tune on the page of what we play. The form is hidden until this runs. The tunes are
 * fetched, as a classic script so that it works from a folder, when the form is first entered;
 * what is asked for is kept in the address, so that going back finds it again.
 */
declare global {
  interface Window {
    bowbookEntries?: (entries: readonly SearchEntry[]) => void;
  }
}

function loadEntries(address: string): Promise<readonly SearchEntry[]> {
  return new Promise((resolve, reject) => {
    window.bowbookEntries = resolve;
    const script = document.createElement('script');
    script.src = address;
    script.onerror = () => reject(new Error(`${address} could not be loaded`));
    document.head.append(script);
  });
}

function start(form: HTMLFormElement): void {
  const field = (name: string): string => {
    const input = form.elements.namedItem(name);
    return input instanceof HTMLInputElement || input instanceof HTMLSelectElement
      ? input.value
      : '';
  };
  const strings = listenToStrings(form, answer);
  let finder: Promise<TuneFinder> | null = null;
  const ready = (): Promise<TuneFinder> => {
    finder ??= loadEntries(form.dataset.entries ?? '').then(entries =>
      makeTuneFinder(entries, noteNames()),
    );
    return finder;
  };

  const query = (): TuneQuery => ({
    text: field('text'),
    touched: strings.touched(),
    type: field('type') || null,
    key: field('key') || null,
    form: field('form') || null,
  });

  async function answer(): Promise<void> {
    const asked = query();
    keepInAddress(asked);
    const find = await ready();
    // Typing went on while the tunes were fetched: a later answer is on its way.
    if (JSON.stringify(asked) === JSON.stringify(query())) showFound(form, asked, find(asked));
  }

  restoreFromAddress(form);
  form.hidden = false;
  form.addEventListener('submit', event => event.preventDefault());
  form.addEventListener('input', answer);
  form.addEventListener('focusin', () => void ready(), { once: true });
  if (Object.values(query()).some(value => value)) answer();
}

const names = ['text', 'type', 'key', 'form'] as const;

function keepInAddress(query: TuneQuery): void {
  const asked = new URLSearchParams();
  for (const name of names) if (query[name]) asked.set(name, query[name]);
  history.replaceState(null, '', asked.size === 0 ? location.pathname : `#${asked}`);
}

function restoreFromAddress(form: HTMLFormElement): void {
  const asked = new URLSearchParams(location.hash.slice(1));
  for (const name of names) {
    const input = form.elements.namedItem(name);
    if (input instanceof HTMLInputElement || input instanceof HTMLSelectElement) {
      input.value = asked.get(name) ?? '';
    }
  }
}

drawOpenings(document.querySelectorAll<HTMLElement>('[data-all] [data-tune]'));
for (const form of document.querySelectorAll<HTMLFormElement>('form[data-finder]')) start(form);
