/**
 * The script that a preview puts before all others of a page: it hears when the book has been built
 * again, brings the page up to date where the reader is, and shows what is wrong with the book.
 */
import type { PreviewNews } from '../../../shared/preview-news.ts';
import { hearNews } from './hear-news.ts';
import { reloadHere, returnHere } from './keep-place.ts';
import { problemPanel } from './problem-panel.ts';
import { keepTwins, patchPage } from './refresh-page.ts';

const page = keepTwins(document.body);
const panel = problemPanel();
const path = decodeURIComponent(location.pathname).slice(1);
const own = path + (path === '' || path.endsWith('/') ? 'index.html' : '');
/** It is no page of the book, but says why there is none. */
const isStopgap = 'own' in document.documentElement.dataset;
let buildNumber = Number(document.currentScript?.dataset.buildNumber);
let run: string | null = null;
let updating = Promise.resolve();

/** Files of the site that the page has taken in besides its own text. */
function takenIn(): ReadonlySet<string> {
  const from = [...document.querySelectorAll<HTMLElement>('[src], link[href]')];
  const addresses = from.map(e => e.getAttribute('src') ?? e.getAttribute('href') ?? '');
  return new Set(
    addresses
      .map(address => new URL(address, location.href))
      .filter(({ origin }) => origin === location.origin)
      .map(({ pathname }) => decodeURIComponent(pathname.slice(1))),
  );
}

/** Scripts and style sheets of a page, as it names them. */
const headOf = (of: Document): string =>
  [...of.head.querySelectorAll('script[src], link')]
    .map(e => e.getAttribute('src') ?? e.getAttribute('href'))
    .join(' ');

/** As it was read: scripts bring in others. */
const head = headOf(document);

async function bringUpToDate(): Promise<void> {
  const answer = await fetch(location.pathname);
  const next = new DOMParser().parseFromString(await answer.text(), 'text/html');
  if (!answer.ok || headOf(next) !== head || !patchPage(page, next.body)) {
    reloadHere();
    return;
  }
  document.title = next.title;
}

function hear(news: PreviewNews): void {
  panel.show(news);
  const isOtherRun = run !== null && run !== news.run;
  run = news.run;
  if (news.buildNumber === buildNumber && !isOtherRun) return;
  // A page that has missed a build cannot go by what the last one changed.
  const changed = news.buildNumber === buildNumber + 1 ? news.changed : null;
  buildNumber = news.buildNumber;
  const files = takenIn();
  const isTakenIn = changed?.some(file => files.has(file)) ?? false;
  if (isOtherRun || isTakenIn || (isStopgap && news.outcome === 'built')) reloadHere();
  // One after another: an older text must not be put in after a newer one.
  else if (changed?.includes(own) ?? true) updating = updating.then(bringUpToDate);
}

returnHere();
hearNews(hear, panel.lose);
