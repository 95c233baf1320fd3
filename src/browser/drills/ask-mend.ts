import type { Direction } from '../../../shared/bowing/bowing.ts';
import { turned } from '../../../shared/bowing/lead-in-model.ts';
import type { ArriveDrill } from '../../../shared/drills/drill.ts';
import { judgeMend } from '../../../shared/drills/judge-mend.ts';
import { at, got } from '../../../shared/must.ts';
import { drillWords, mendVerdicts } from '../../../shared/words/en/drills.ts';
import { button, element, svgElement } from '../try/element.ts';
import { type AskedDrill, say } from './asked-drill.ts';
import { beadCell, showStroke } from './bead-chain.ts';

/** Between two notes: the bow changes, they share a stroke, or the bow lifts. */
type Join = 'change' | 'slur' | 'lift';

/**
 * A lead-in that arrives on the wrong stroke, to be corrected. A press on the link between two beads
 * goes from bow change to slur, to lift where the bow may lift, and back. The stroke signs disappear at
 * the first change, since counting the strokes is the exercise, and come back with the verdict.
 */
export function askMend(asked: AskedDrill, drill: ArriveDrill): HTMLElement[] {
  const { told, verdict, attempted, source } = asked;
  const { notes, first, joined, lifts } = drill;
  const { name, beads } = got(told.chains.at(-1), 'chain of the drill');
  const chain = element('div', { class: 'beads' });
  const cells = beads.map(bead => beadCell(bead, 'div'));
  const written = [...notes, first].map((_, i): Join => (joined[i] ? 'slur' : 'change'));
  const state = [...written];
  const links = beads.map((bead, i) => {
    if (i === 0) return null;
    const mayLift = lifts.includes(bead.event) && !joined[i];
    const ways: readonly Join[] = [
      'change',
      ...(i < notes.length ? (['slur'] as const) : []),
      ...(mayLift ? (['lift'] as const) : []),
    ];
    if (ways.length < 2) return null;
    return linkButton(drillWords.join(at(beads, i - 1).said, bead.said), () => {
      const next = at(ways, (ways.indexOf(at(state, i)) + 1) % ways.length);
      set(i, next);
      say(verdict, drillWords.joins[next]);
      hideSigns();
    });
  });
  const set = (i: number, join: Join): void => {
    state[i] = join;
    cells[i]?.classList.toggle('threaded', join === 'slur');
    links[i]?.show(join);
  };
  const hideSigns = (): void => {
    cells.forEach((cell, i) => {
      if (i > 0 && i < notes.length) showStroke(cell, null, false);
    });
  };
  const showSigns = (): void => {
    let direction: Direction = drill.start;
    cells.slice(0, -1).forEach((cell, i) => {
      if (i > 0 && state[i] === 'change') direction = turned(direction);
      showStroke(cell, direction, state[i] === 'slur');
    });
  };
  cells.forEach((cell, i) => {
    const link = links[i];
    if (link) cell.append(link.root);
    set(i, at(state, i));
    chain.append(cell);
  });
  const check = (): void => {
    attempted();
    const events = [...notes, first];
    const tried = {
      joined: notes.map((_, i) => state[i] === 'slur'),
      lifts: events.filter((_, i) => state[i] === 'lift'),
    };
    const found = judgeMend(source, drill, tried);
    showSigns();
    say(verdict, mendVerdicts[found], found === 'mends' ? told.why : null);
  };
  const asItWas = (): void => {
    for (const [i, join] of written.entries()) set(i, join);
    showSigns();
    verdict.replaceChildren();
  };
  return [
    element('p', { class: 'drill-ask' }, got(name, 'name of the chain')),
    chain,
    element(
      'div',
      { class: 'drill-tools' },
      button(drillWords.check, check, { class: 'check' }),
      button(drillWords.clear, asItWas),
    ),
  ];
}

interface Link {
  readonly root: HTMLButtonElement;
  readonly show: (join: Join) => void;
}

function linkButton(name: string, press: () => void): Link {
  const picture = svgElement('svg', { viewBox: '0 0 44 26', 'aria-hidden': 'true' });
  picture.append(
    svgElement('path', { class: 'way-slur', d: 'M4 5C9 23 35 23 40 5C34 16 10 16 4 5Z' }),
    svgElement('path', { class: 'way-open', d: 'M5 6C6 11 9 14 14 16M39 6C38 11 35 14 30 16' }),
    svgElement('path', {
      class: 'way-lift',
      d: 'M5 6C6 11 9 14 14 16M39 6C38 11 35 14 30 16M22 20V6M17 11L22 6L27 11',
    }),
  );
  const word = element('span', { 'aria-hidden': 'true' });
  const root = button('', press, { class: 'link' });
  root.append(picture, word);
  return {
    root,
    show(join) {
      root.dataset.state = join;
      word.textContent = join === 'change' ? '' : drillWords.joins[join];
      root.setAttribute('aria-label', `${name}: ${drillWords.joins[join]}`);
    },
  };
}
