import type { GapsDrill } from '../../../shared/drills/drill.ts';
import { at } from '../../../shared/must.ts';
import { drillWords } from '../../../shared/words/en/drills.ts';
import { button, element } from '../try/element.ts';
import { type AskedDrill, say } from './asked-drill.ts';
import { beadCell } from './bead-chain.ts';

/** Left-out notes: each is chosen from the pitches of the tune, and all are checked together. */
export function askGaps(asked: AskedDrill, drill: GapsDrill): HTMLElement[] {
  const { told, verdict, attempted } = asked;
  const chain = element('div', { class: 'beads' });
  const fills: HTMLSelectElement[] = [];
  for (const bead of at(told.chains, 0).beads) {
    const cell = beadCell(bead, 'div');
    const item = told.items[drill.gaps.indexOf(bead.event)];
    if (item) {
      const fill = element(
        'select',
        { class: 'fill', 'aria-label': item.ask },
        element('option', { value: '' }, '?'),
        ...item.choices.map((c, i) => element('option', { value: String(i) }, c.label)),
      );
      fill.addEventListener('change', () => fill.classList.remove('is-right', 'is-wrong'));
      fills.push(fill);
      cell.querySelector('.bead')?.replaceWith(fill);
      cell.querySelector('.unseen')?.remove();
      cell.append(element('span', { class: 'mark-under' }));
    }
    chain.append(cell);
  }
  const check = button(
    drillWords.check,
    () => {
      attempted();
      let right = 0;
      fills.forEach((fill, i) => {
        const isRight = fill.value === String(told.items[i]?.right);
        if (isRight) right++;
        fill.classList.toggle('is-right', isRight);
        fill.classList.toggle('is-wrong', !isRight);
        fill.setAttribute('aria-invalid', String(!isRight));
        const mark = fill.parentElement?.querySelector('.mark-under');
        mark?.replaceChildren(isRight ? drillWords.rightMark : drillWords.wrongMark);
      });
      const all = right === fills.length;
      say(verdict, drillWords.gapsLeft(right, fills.length), all ? told.why : null);
    },
    { class: 'check' },
  );
  return [chain, element('div', { class: 'drill-tools' }, check)];
}
