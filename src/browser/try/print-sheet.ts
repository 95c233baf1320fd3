import { barRangeText } from '../../../shared/music/bar-range.ts';
import type { Outcome, Trial } from '../../../shared/trying/trial.ts';
import { tryWords } from '../../../shared/words/en/try.ts';
import { element } from './element.ts';
import type { NotationView } from './notation-view.ts';
import type { OutcomeView } from './outcome-view.ts';

/**
 * Prints the chain, the notation and what comes of the slurs, and nothing else of the page: a copy
 * of them stands alone in the body while the sheet is being printed.
 */
export function printSheet(
  title: string,
  trial: Trial,
  outcome: Outcome,
  pass: number,
  told: OutcomeView,
  chain: HTMLElement,
  notation: NotationView | null,
): void {
  const bars = trial.request.anchors.find(a => a.id === trial.anchorId)?.bars;
  const several = outcome.anchor.leadIns.length > 1;
  const sheet = element(
    'div',
    { class: 'try-sheet', 'aria-hidden': 'true', inert: true },
    element('h1', {}, tryWords.sheetTitle(title)),
    element(
      'p',
      {},
      `${tryWords.wayTo(bars ? barRangeText(bars) : '')}${several ? ` ${tryWords.passName(pass)}.` : ''}`,
    ),
    told.root.cloneNode(true),
    chain.cloneNode(true),
    ...(notation ? [notation.root.cloneNode(true)] : []),
    told.limits.cloneNode(true),
  );
  document.body.append(sheet);
  document.documentElement.classList.add('prints-try');
  addEventListener(
    'afterprint',
    () => {
      sheet.remove();
      document.documentElement.classList.remove('prints-try');
    },
    { once: true },
  );
  print();
}
