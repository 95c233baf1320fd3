import { searchWords } from '../../../shared/words/en/search.ts';

/** The strings as a grid of buttons: what was touched so far, in base 12 above C. */
export interface TouchedStrings {
  readonly touched: () => string;
}

/** Listens to the grid; `changed` is called when a note is added, taken back, or all are cleared. */
export function listenToStrings(form: HTMLFormElement, changed: () => void): TouchedStrings {
  const notes: { readonly semitone: string; readonly sign: string }[] = [];
  const output = form.querySelector('[data-touched]');
  const show = (): void => {
    if (output) {
      output.textContent =
        notes.length === 0 ? searchWords.noneTouched : notes.map(n => n.sign).join(' ');
    }
    changed();
  };
  form.addEventListener('click', event => {
    const button = event.target instanceof Element ? event.target.closest('button') : null;
    if (!button) return;
    const { touch, sign } = button.dataset;
    if (touch !== undefined) notes.push({ semitone: touch, sign: sign ?? '' });
    else if ('takeBack' in button.dataset) notes.pop();
    else if ('startAgain' in button.dataset) notes.length = 0;
    else return;
    show();
  });
  return { touched: () => notes.map(n => n.semitone).join('') };
}
