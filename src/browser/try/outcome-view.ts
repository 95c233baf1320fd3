import { pastLimits } from '../../../shared/trying/past-limits.ts';
import type { Outcome, Trial } from '../../../shared/trying/trial.ts';
import type { WayThere } from '../../../shared/trying/way-there.ts';
import { tryWords } from '../../../shared/words/en/try.ts';
import { arrivals, pastLimitTold, strokesTold } from '../../../shared/words/try.ts';
import { element, strokeSign } from './element.ts';
import { tryLanguage } from './try-language.ts';

/** What comes of a bowing, in words and signs; it stays in sight while the chain is worked on. */
export interface OutcomeView {
  readonly root: HTMLElement;
  /** What the last step did and turned. */
  readonly said: HTMLElement;
  /** What the bowing goes past; empty of words where it keeps within the limits. */
  readonly limits: HTMLElement;
  /** `said`: what the last step did, and what it turned. Returns all of it, to be read out. */
  readonly show: (outcome: Outcome, way: WayThere, said: string) => string;
}

/** Share of the screen's height that it may keep. */
const mostOfScreen = 0.27;

export function outcomeView(trial: () => Trial): OutcomeView {
  const root = element('div', { class: 'try-outcome' });
  // With large text on a small screen it would hide the chain: there it scrolls with the page.
  new ResizeObserver(() => {
    root.classList.toggle('stays', root.offsetHeight < innerHeight * mostOfScreen);
  }).observe(root);
  const said = element('p', { class: 'try-said' });
  const limits = element('div', { class: 'try-limits' });
  return {
    root,
    said,
    limits,
    show(outcome, way, step) {
      const { anchor } = outcome;
      const arrive = arrivals(tryLanguage, anchor);
      const count = strokesTold(
        tryLanguage,
        way.leadIn.notes.length,
        way.leadIn.strokes,
        way.leadIn.start,
      );
      root.replaceChildren(
        ...arrive.map(a =>
          element(
            'p',
            { class: `arrival ${a.agrees ? 'agrees' : 'misses'}` },
            strokeSign(a.direction),
            ' ',
            a.sentence,
          ),
        ),
        element('p', { class: 'try-count' }, count),
      );
      said.textContent = step;
      const past = limitsTold(trial(), outcome, way);
      limits.replaceChildren(
        ...(past.length === 0
          ? []
          : [
              element('p', { class: 'plan-title' }, tryWords.limitsTitle),
              element('ul', {}, ...past.map(p => element('li', {}, p))),
              element('p', { class: 'try-note' }, tryWords.limitsHow),
            ]),
      );
      const beyond = past.length === 0 ? [] : [`${tryWords.limitsTitle}: ${past.join(' ')}`];
      return [step, count, ...arrive.map(a => a.sentence), ...beyond].filter(Boolean).join(' ');
    },
  };
}

function limitsTold(trial: Trial, outcome: Outcome, way: WayThere): readonly string[] {
  const { bowing, anchors } = trial.request;
  const level = anchors.find(a => a.id === trial.anchorId)?.level ?? bowing.level;
  return pastLimits(outcome, trial.request, way.leadIn).map(limit =>
    pastLimitTold(tryLanguage, outcome.study.tune, limit, level),
  );
}
