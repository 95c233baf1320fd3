import { type Level, levels } from '../../../shared/bowing/settings.ts';
import type { Trial } from '../../../shared/trying/trial.ts';
import { tryWords } from '../../../shared/words/en/try.ts';
import { element } from './element.ts';

export interface Choices {
  readonly pass: (to: number) => void;
  readonly level: (to: Level) => void;
  readonly together: (to: boolean) => void;
}

/** Which time through, whose limits, and whether phrases that are the same are changed together. */
export function choicesView(trial: Trial, pass: number, choose: Choices): HTMLElement {
  const { anchorId, request, written, alike } = trial;
  const passes = written.anchor.arrivals
    .map(a => a.pass)
    .filter(p => written.anchor.leadIns.some(l => l.passes.includes(p)));
  const level = request.anchors.find(a => a.id === anchorId)?.level ?? request.bowing.level;
  const name = (what: string): string => `try-${anchorId}-${what}`;
  const tied = [...alike.values()].some(places => places.length > 1);
  return element(
    'div',
    { class: 'try-choices' },
    ...(passes.length > 1
      ? [
          radios(
            tryWords.pass,
            name('pass'),
            passes.map(p => ({
              label: tryWords.passName(p),
              chosen: p === pass,
              choose: () => choose.pass(p),
            })),
          ),
        ]
      : []),
    radios(
      tryWords.level,
      name('level'),
      levels.map(l => ({
        label: tryWords.levels[l],
        chosen: l === level,
        choose: () => choose.level(l),
      })),
    ),
    ...(tied ? [checkbox(tryWords.together, name('together'), choose.together)] : []),
  );
}

function radios(
  legend: string,
  name: string,
  options: readonly {
    readonly label: string;
    readonly chosen: boolean;
    readonly choose: () => void;
  }[],
): HTMLElement {
  const labels = options.map(({ label, chosen, choose }) => {
    const input = element('input', { type: 'radio', name, checked: chosen });
    input.addEventListener('change', choose);
    return element('label', {}, input, label);
  });
  return element('fieldset', {}, element('legend', {}, legend), ...labels);
}

function checkbox(label: string, name: string, choose: (to: boolean) => void): HTMLElement {
  const input = element('input', { type: 'checkbox', name, checked: true });
  input.addEventListener('change', () => choose(input.checked));
  return element('label', { class: 'try-together' }, input, label);
}
