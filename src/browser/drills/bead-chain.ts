import type { Direction } from '../../../shared/music/tune.ts';
import type { Bead, ToldChain } from '../../../shared/words/told-drill.ts';
import { element, strokeSign } from '../try/element.ts';

/** A chain of beads as the build writes it, with its name over it. */
export function beadChain({ name, beads }: ToldChain, as: 'ol' | 'span' = 'ol'): HTMLElement[] {
  const chain = element(as, { class: 'beads' });
  chain.append(...beads.map(bead => beadCell(bead, as === 'ol' ? 'li' : 'span')));
  return name === null ? [chain] : [element('p', { class: 'drill-ask' }, name), chain];
}

/** One note. As a button it can be pointed to, and is named in words. */
export function beadCell(bead: Bead, as: 'li' | 'span' | 'div' | 'button'): HTMLElement {
  const cell = element(as === 'button' ? 'div' : as, { class: 'bead-cell' });
  cell.classList.toggle('threaded', bead.slurred);
  cell.classList.toggle('anchored', bead.anchored);
  if (as !== 'button') cell.append(element('span', { class: 'unseen' }, bead.said));
  if (bead.bar !== null) {
    cell.append(element('span', { class: 'bead-bar', 'aria-hidden': 'true' }, bead.bar));
  }
  cell.append(
    element('span', { class: 'bead-sign', 'aria-hidden': 'true' }),
    as === 'button' ? pointBead(bead) : plainBead(bead),
  );
  showStroke(cell, bead.stroke, bead.slurred);
  return cell;
}

/** Shows which way the bow goes on a note by its shape, and by a sign where the stroke begins. */
export function showStroke(cell: HTMLElement, direction: Direction | null, slurred: boolean): void {
  const signs = direction && !slurred ? [strokeSign(direction)] : [];
  cell.querySelector('.bead-sign')?.replaceChildren(...signs);
  if (direction) cell.dataset.direction = direction;
  else delete cell.dataset.direction;
}

function plainBead(bead: Bead): HTMLElement {
  const made = element('span', { class: 'bead', 'aria-hidden': 'true' }, ...beadFace(bead));
  made.classList.toggle('blank', bead.letter === null);
  return made;
}

/** Its name holds what is seen on it, so that it can be asked for by voice, and then its place. */
const pointBead = (bead: Bead): HTMLElement =>
  element(
    'button',
    { type: 'button', class: 'bead point' },
    ...beadFace(bead),
    element('span', { class: 'unseen' }, ` ${bead.said}`),
  );

function beadFace({ letter, where }: Bead): HTMLElement[] {
  const name =
    letter === null ? [] : [element('b', { class: letter.length > 3 ? 'long' : '' }, letter)];
  return where === null ? name : [...name, element('small', {}, where)];
}
