import { type LinkedTrial, readTrialLink } from '../../shared/trying/trial-link.ts';
import { tryWaits } from '../../shared/words/en/try-link.ts';
import { element } from './try/element.ts';
import { soundsEvent } from './try/hear-way.ts';
import { openRoom } from './try/open-room.ts';
import { loadTune } from './tune-data.ts';

/**
 * The place to try strokes. `page.ts` loads this script when the first fold of the page that holds
 * one is opened; from then on it fills every such fold as it opens.
 */
async function fill(fold: HTMLDetailsElement): Promise<void> {
  const room = fold.querySelector<HTMLElement>('.try-room');
  if (!room || fold.dataset.filled !== undefined) return;
  fold.dataset.filled = '';
  room.replaceChildren(element('p', {}, tryWaits.wait));
  const { tune = '', root = '' } = fold.dataset;
  try {
    const data = await loadTune(tune, root);
    openRoom(fold, data, linkTo(fold));
  } catch (error) {
    delete fold.dataset.filled; // so that opening it again tries again
    room.replaceChildren(element('p', { class: 'notice' }, tryWaits.failed));
    console.error(error);
  }
}

/** The bowing that the address asks for in this fold. */
function linkTo(fold: HTMLDetailsElement): LinkedTrial | null {
  const link = readTrialLink(location.hash.slice(1));
  return typeof link === 'object' && link?.anchorId === fold.dataset.try ? link : null;
}

const folds = [...document.querySelectorAll<HTMLDetailsElement>('details[data-try]')];
for (const fold of folds) {
  if (fold.open) void fill(fold);
  fold.addEventListener('toggle', () => {
    if (fold.open) void fill(fold);
  });
}
addEventListener('hashchange', () => {
  const fold = folds.find(f => f.open && linkTo(f));
  if (!fold) return;
  document.dispatchEvent(new CustomEvent(soundsEvent, { detail: null }));
  delete fold.dataset.filled;
  void fill(fold);
});
