import { cueTime, type TapPoint } from '../../../shared/clips/tap-cues.ts';
import { previewWords } from '../../../shared/words/en/preview.ts';
import { button, element } from './tap-parts.ts';

const { tap: words } = previewWords;

/** How far one press moves a cue, in seconds. */
const nudge = 0.05;

/** A tapped point, by its index among all. */
export interface ShownTap {
  readonly index: number;
  readonly point: TapPoint;
  readonly seconds: number;
}

/** The cues so far, each to be moved a little or listened to. */
export function tapCueList(does: {
  readonly move: (tap: ShownTap, to: number) => void;
  readonly hear: (tap: ShownTap) => void;
}) {
  const list = element('ol', 'tap-cues');
  const row = (tap: ShownTap): HTMLElement => {
    const { index, point, seconds } = tap;
    const step = (sign: string, label: string, by: number): HTMLButtonElement => {
      const made = button('');
      const shown = element('span', '', sign);
      shown.setAttribute('aria-hidden', 'true');
      made.append(shown, element('span', 'unseen', label));
      made.dataset.moves = `${index} ${by}`;
      made.addEventListener('click', () => {
        does.move(tap, Math.max(0, seconds + by));
        // The row is a new one: the focus goes on in it.
        list.querySelector<HTMLElement>(`[data-moves="${index} ${by}"]`)?.focus();
      });
      return made;
    };
    const hear = button(words.hear(point.bar));
    hear.addEventListener('click', () => does.hear(tap));
    const made = document.createElement('li');
    made.append(
      element('b', '', point.bar),
      element('span', 'tap-letter', point.label),
      element('span', 'tap-time', cueTime(seconds)),
      step('−', words.earlier(point.bar), -nudge),
      step('+', words.later(point.bar), nudge),
      hear,
    );
    return made;
  };
  return {
    list,
    show: (taps: readonly ShownTap[]): void => list.replaceChildren(...taps.map(row)),
  };
}
