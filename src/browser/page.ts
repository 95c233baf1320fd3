import { keepBook } from './offline/keep-book.ts';
import { openTries } from './try/open-tries.ts';

/**
 * What every page's script does: remembers which marks the student wants to see, and opens what a
 * link points to. Pages are whole without it. Everything stays on the student's own device.
 */

// All local folders share one store, so the key has the program's name before it.
const key = 'bowbook.layers';

function readStore(): Record<string, string> {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(key) ?? '{}');
    return typeof read === 'object' && read !== null ? (read as Record<string, string>) : {};
  } catch {
    return {}; // no store here, or not ours: the page starts as it was written
  }
}

function keepLayers(form: HTMLFormElement): void {
  const inputs = [...form.querySelectorAll('input')];
  const kept = readStore();
  for (const input of inputs) {
    const was = kept[input.name];
    if (was !== undefined)
      input.checked = input.type === 'radio' ? input.value === was : was === 'on';
  }
  form.addEventListener('change', () => {
    const now: Record<string, string> = {};
    for (const input of inputs) {
      if (input.type === 'checkbox') now[input.name] = input.checked ? 'on' : 'off';
      else if (input.checked) now[input.name] = input.value;
    }
    try {
      localStorage.setItem(key, JSON.stringify(now));
    } catch {
      // Storing is refused: the choice lasts as long as the page.
    }
  });
  form.addEventListener('submit', event => event.preventDefault());
}

/** The name of a place in the address; a stray % in it is no code, and names nothing. */
function placeAsked(): string {
  try {
    return decodeURIComponent(location.hash.slice(1));
  } catch {
    return '';
  }
}

/** Opens the folded parts around what the address points to, so that it can be seen. */
function revealTarget(): void {
  const target = document.getElementById(placeAsked());
  for (let at = target?.closest('details'); at; at = at.parentElement?.closest('details')) {
    at.open = true;
  }
}

/**
 * Fetches the scripts of the page's own parts (the player, drills) once the page stands: on a slow
 * line they would hold up the type and the notation.
 */
function fetchLater(): void {
  const { later, assets } = document.body.dataset;
  for (const name of later?.split(' ') ?? []) {
    const script = document.createElement('script');
    script.src = `${assets}${name}.js`;
    document.head.append(script);
  }
}

for (const form of document.querySelectorAll<HTMLFormElement>('form[data-layers]'))
  keepLayers(form);
for (const place of document.querySelectorAll<HTMLElement>('[data-kept]')) keepBook(place);
revealTarget();
addEventListener('hashchange', revealTarget);
openTries();
if (document.readyState === 'complete') fetchLater();
else addEventListener('load', fetchLater);
