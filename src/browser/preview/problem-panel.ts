import {
  type PreviewNews,
  previewPaths,
  type WordedProblem,
} from '../../../shared/preview-news.ts';
import { previewWords } from '../../../shared/words/en/preview.ts';

/** What is wrong with the book, over the page, at its foot; it can be folded away. */
export interface ProblemPanel {
  readonly show: (news: PreviewNews) => void;
  /** The preview cannot be reached. */
  readonly lose: () => void;
}

const key = 'bowbook.preview.folded';

/** It stands beside the body, so that bringing the page up to date passes it by. */
export function problemPanel(): ProblemPanel {
  const panel = element('aside', 'preview-panel');
  panel.setAttribute('aria-label', previewWords.panel);
  const fold = document.createElement('details');
  const summary = document.createElement('summary');
  const state = element('span', 'preview-state', previewWords.working);
  state.setAttribute('role', 'status');
  summary.append(element('b', 'preview-name', previewWords.panel), ' ', state);
  const inside = element('div', 'preview-inside');
  fold.append(summary, inside);
  panel.append(fold);
  document.documentElement.append(panel);

  let told = '';
  // Folded by hand, it stays so until other errors come.
  summary.addEventListener('click', () => {
    if (fold.open) sessionStorage.setItem(key, told);
    else sessionStorage.removeItem(key);
  });
  return {
    show({ outcome, problems, counted }) {
      panel.dataset.outcome = outcome;
      panel.dataset.severity = problems[0]?.severity ?? 'none';
      const errors = problems.filter(p => p.severity === 'error');
      told = JSON.stringify(errors.map(p => [p.rule, p.file, p.at]));
      state.textContent =
        outcome === 'working'
          ? previewWords.working
          : problems.length > 0
            ? counted
            : previewWords.fine;
      const lead =
        outcome === 'failed' ? [element('p', 'preview-lead', previewWords.asBefore)] : [];
      inside.replaceChildren(...lead, problemList(problems), tapLink());
      fold.open =
        errors.length > 0 ? sessionStorage.getItem(key) !== told : fold.open && problems.length > 0;
    },
    lose() {
      panel.dataset.outcome = 'lost';
      state.textContent = previewWords.lost;
    },
  };
}

function problemList(problems: readonly WordedProblem[]): HTMLElement {
  const list = element('ul', 'preview-problems');
  list.append(
    ...problems.map(p => {
      const item = document.createElement('li');
      item.className = `is-${p.severity}`;
      const where = element('p', 'preview-where');
      where.append(
        element('b', '', previewWords.severity[p.severity]),
        ` ${[p.file ?? previewWords.wholeBook, ...(p.at === null ? [] : [p.at])].join(', ')}`,
        element('span', 'preview-rule', p.rule),
      );
      item.append(where, withCode(p.message), withCode(p.mend));
      if (p.excerpt.length > 0) {
        const lines = element('pre', 'preview-line', p.excerpt.join('\n'));
        lines.tabIndex = 0; // a long line is scrolled, by keyboard too
        item.append(lines);
      }
      return item;
    }),
  );
  return list;
}

/** A sentence in which names of the book stand between backticks. */
function withCode(sentence: string): HTMLElement {
  const line = document.createElement('p');
  line.append(
    ...sentence.split('`').map((part, i) => (i % 2 === 0 ? part : element('code', '', part))),
  );
  return line;
}

function tapLink(): HTMLElement {
  const line = element('p', 'preview-more');
  const link = document.createElement('a');
  link.href = previewPaths.tap;
  link.textContent = previewWords.toTap;
  line.append(link);
  return line;
}

function element(name: string, className: string, text = ''): HTMLElement {
  const made = document.createElement(name);
  if (className !== '') made.className = className;
  if (text !== '') made.textContent = text;
  return made;
}
