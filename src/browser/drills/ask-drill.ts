import { drillWords } from '../../../shared/words/en/drills.ts';
import type { ToldItem } from '../../../shared/words/told-drill.ts';
import { button, element } from '../try/element.ts';
import { askGaps } from './ask-gaps.ts';
import { askMend } from './ask-mend.ts';
import { type AskedDrill, say } from './asked-drill.ts';
import { beadCell, beadChain } from './bead-chain.ts';

/** Fills a room with a drill that can be answered. */
export function askDrill(room: HTMLElement, asked: AskedDrill): void {
  const { told, drill } = asked;
  const question = element(
    'div',
    { class: 'drill-question', tabindex: '-1' },
    ...told.question.map(text => element('p', {}, text)),
  );
  if (drill.kind === 'gaps') room.replaceChildren(question, ...askGaps(asked, drill));
  else if (drill.kind === 'arrive') room.replaceChildren(question, ...askMend(asked, drill));
  else
    room.replaceChildren(question, ...told.chains.flatMap(c => beadChain(c)), ...askItems(asked));
}

/** Questions answered by one press each; the reason is said when the last is right. */
function askItems({ told, verdict, attempted }: AskedDrill): HTMLElement[] {
  let left = told.items.length;
  const right = (item: ToldItem): void => {
    left--;
    say(verdict, drillWords.right, item.why, left === 0 ? told.why : null);
  };
  return told.items.flatMap(item => {
    let open = true;
    const answer = (i: number, mark: (text: string, isRight: boolean) => void): void => {
      attempted();
      if (i === item.right) {
        mark(drillWords.rightMark, true);
        if (open) right(item);
        open = false;
      } else if (open) {
        mark(drillWords.wrongMark, false);
        say(verdict, drillWords.wrong, item.choices[i]?.not ?? null);
      }
    };
    const ask = element('p', { class: 'drill-ask' }, item.ask);
    const group = element('div', { role: 'group', 'aria-label': item.ask });
    group.append(...choiceElements(item, answer));
    return [ask, group];
  });
}

type Answer = (choice: number, mark: (text: string, isRight: boolean) => void) => void;

function choiceElements(item: ToldItem, answer: Answer): HTMLElement[] {
  const plain = element('div', { class: 'drill-choices' });
  const row = element('div', { class: 'beads' });
  item.choices.forEach((choice, i) => {
    const [bead, ...more] = choice.beads ?? [];
    if (bead && more.length === 0) {
      const cell = beadCell(bead, 'button');
      const under = element('span', { class: 'mark-under' });
      cell.append(under);
      const point = cell.querySelector('button');
      point?.addEventListener('click', () =>
        answer(i, (text, isRight) => {
          under.textContent = text;
          point.classList.add(isRight ? 'is-right' : 'is-wrong');
        }),
      );
      row.append(cell);
      return;
    }
    const mark = element('span', { class: 'mark' });
    const pressed: HTMLButtonElement = button('', () =>
      answer(i, (text, isRight) => {
        mark.textContent = text;
        pressed.classList.add(isRight ? 'is-right' : 'is-wrong');
      }),
    );
    pressed.className = 'drill-choice';
    pressed.append(choice.label, mark);
    if (choice.beads) pressed.append(...beadChain({ name: null, beads: choice.beads }, 'span'));
    plain.append(pressed);
  });
  return [plain, row].filter(e => e.childElementCount > 0);
}
