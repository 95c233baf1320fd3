import { tryWords } from '../../../shared/words/en/try.ts';
import { button, element } from './element.ts';

export interface ShareView {
  readonly root: HTMLElement;
  readonly open: () => void;
  readonly close: () => void;
}

/** The bowing as an address, to be copied by hand or, where the browser lets a page, by a button. */
export function shareView(link: () => string): ShareView {
  const input = element('input', { type: 'text', readonly: true, spellcheck: 'false' });
  input.addEventListener('focus', () => input.select());
  const done = element('span', { role: 'status' });
  const copy = button(tryWords.copy, () => {
    navigator.clipboard.writeText(input.value).then(
      () => done.replaceChildren(tryWords.copied),
      () => input.focus(), // it may not: the whole link is marked, to be copied by hand
    );
  });
  // Only secure places give a page the clipboard; a folder is not one in every browser.
  const canCopy = 'clipboard' in navigator;
  const root = element(
    'div',
    { class: 'try-share', hidden: true },
    element('label', {}, `${tryWords.linkLabel} `, input),
    ...(canCopy ? [copy, done] : []),
    element('p', { class: 'try-note' }, tryWords.linkHow),
  );
  return {
    root,
    open() {
      const address = new URL(location.href);
      address.hash = link();
      input.value = address.href;
      done.replaceChildren();
      root.hidden = false;
      input.focus();
    },
    close() {
      root.hidden = true;
    },
  };
}
