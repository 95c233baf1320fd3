import { readTrialLink } from '../../../shared/trying/trial-link.ts';
import { linkFaults, tryWaits } from '../../../shared/words/en/try-link.ts';
import { scriptFile } from '../../../shared/words/script-file.ts';

/**
 * What every page does about the places to try strokes: fetches their script when the first is
 * opened, and follows a link to somebody's slurs, or says why it cannot.
 */
export function openTries(): void {
  const folds = [...document.querySelectorAll<HTMLDetailsElement>('details[data-try]')];
  for (const fold of folds) {
    fold.addEventListener('toggle', () => {
      if (fold.open) fetchScript(fold);
    });
  }
  const follow = (): void => {
    const link = readTrialLink(location.hash.slice(1));
    if (link === null) return;
    const fold = folds.find(f => typeof link === 'object' && f.dataset.try === link.anchorId);
    if (!fold) {
      sayAbove(linkFaults[typeof link === 'string' ? link : 'no-passage']);
      return;
    }
    fold.open = true;
    fold.scrollIntoView();
  };
  follow();
  addEventListener('hashchange', follow);
}

let fetching = false;

function fetchScript(fold: HTMLDetailsElement): void {
  if (fetching) return;
  fetching = true;
  const room = fold.querySelector('.try-room');
  if (room) room.textContent = tryWaits.wait;
  const script = document.createElement('script');
  script.src = `${fold.dataset.root ?? ''}assets/${scriptFile('try', document.documentElement.lang)}.js`;
  script.onerror = () => {
    fetching = false; // so that opening it again tries again
    script.remove();
    if (room) room.textContent = tryWaits.failed;
  };
  document.head.append(script);
}

/** A notice before everything else of the page. */
function sayAbove(text: string): void {
  const notice = document.createElement('p');
  notice.className = 'notice';
  notice.setAttribute('role', 'status');
  notice.textContent = text;
  document.querySelector('main')?.prepend(notice);
}
