import type { Drill } from '../../../shared/drills/drill.ts';
import type { DrillSource } from '../../../shared/drills/drill-source.ts';
import type { ToldDrill } from '../../../shared/words/told-drill.ts';
import { element } from '../try/element.ts';

/** A drill on the page, the element for its verdicts, and a function to call at each attempt. */
export interface AskedDrill {
  readonly source: DrillSource;
  readonly drill: Drill;
  readonly told: ToldDrill;
  readonly verdict: HTMLElement;
  readonly attempted: () => void;
}

/** Shows a verdict: `word` in bold, then the further sentences; null and empty ones are left out. */
export function say(verdict: HTMLElement, word: string, ...more: readonly (string | null)[]): void {
  const rest = more.filter(text => text !== null && text !== '').join(' ');
  verdict.replaceChildren(element('b', {}, word), rest === '' ? '' : ` ${rest}`);
}
