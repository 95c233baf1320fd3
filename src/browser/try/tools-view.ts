import type { Steps } from '../../../shared/trying/steps.ts';
import { tryWords } from '../../../shared/words/en/try.ts';
import { button, element } from './element.ts';

export interface Tools {
  readonly hear: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly another: () => void;
  readonly restart: () => void;
  readonly share: () => void;
  readonly print: () => void;
}

export interface ToolsView {
  readonly root: HTMLElement;
  /** Undo and redo say when there is nothing to go to, and keep the focus. */
  readonly show: (steps: Steps) => void;
  /** Whether it is being heard, so that the button offers what comes next. */
  readonly hears: (now: boolean) => void;
}

export function toolsView(tools: Tools): ToolsView {
  const hear = button(tryWords.hear, tools.hear);
  const undo = button(tryWords.undo, tools.undo);
  const redo = button(tryWords.redo, tools.redo);
  const root = element(
    'div',
    { class: 'try-tools' },
    element('p', { class: 'try-caution' }, tryWords.caution),
    hear,
    undo,
    redo,
    button(tryWords.another, tools.another),
    button(tryWords.restart, tools.restart),
    button(tryWords.share, tools.share),
    button(tryWords.print, tools.print),
  );
  return {
    root,
    show({ past, future }) {
      undo.setAttribute('aria-disabled', String(past.length === 0));
      redo.setAttribute('aria-disabled', String(future.length === 0));
    },
    hears(now) {
      hear.textContent = now ? tryWords.hush : tryWords.hear;
    },
  };
}
