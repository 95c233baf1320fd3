import type { Drill } from '../../../shared/drills/drill.ts';
import type { DrillSource } from '../../../shared/drills/drill-source.ts';
import type { ToldDrill } from '../../../shared/words/told-drill.ts';
import { element } from '../try/element.ts';

/** A drill being asked: where its verdicts are said, and what to call at a first attempt. */
export interface AskedDrill {
  readonly source: DrillSource;
  readonly drill: Drill;
  readonly told: ToldDrill;
  readonly verdict: HTMLElement;
  readonly attempted: () => void;
}

/** Says a verdict: a word that stands out, and what there is to say besides. */
export function say(verdict: HTMLElement, word: string, ...more: readonly (string | null)[]): void {
  const rest = more.filter(text => text !== null && text !== '').join(' ');
  verdict.replaceChildren(element('b', {}, word), rest === '' ? '' : ` ${rest}`);
}
