import { noteAt } from '../../../shared/music/note-at.ts';
import { at } from '../../../shared/must.ts';
import { plainLetter } from '../../../shared/notation/plain-letter.ts';
import type { Study } from '../../../shared/study.ts';
import type { Trial } from '../../../shared/trying/trial.ts';
import type { WayNote, WayThere } from '../../../shared/trying/way-there.ts';
import { tryWords } from '../../../shared/words/en/try.ts';
import { spokenStops, stringNames } from '../../../shared/words/spoken.ts';
import { junctionName, noteTold } from '../../../shared/words/try.ts';
import { noteNames } from '../page-words.ts';
import { element, strokeSign, svgElement } from './element.ts';
import { tryLanguage } from './try-language.ts';

/**
 * A lead-in as a row of beads: one bead per note, and between two beads a link, closed where both notes
 * are in one stroke. A bead is square at its foot on a down-bow and round on an up-bow; the stroke's sign
 * stands over its first bead. The framed bead at the end is the anchor.
 *
 * The row is a toolbar with one Tab stop: the left and right arrow keys go through beads and links, up
 * and down by bars.
 */
export interface ChainView {
  readonly root: HTMLElement;
  /** Shows a lead-in; `turned` holds the events whose stroke the last change reversed. */
  readonly show: (study: Study, way: WayThere, turned: ReadonlySet<number>) => void;
  /** Marks the sounding note, by its event; null for none. */
  readonly mark: (event: number | null) => void;
}

export interface ChainActions {
  /** Called when the link before a note (an event index) is pressed. */
  readonly turn: (event: number) => void;
  /** Called when a note (an event index) is pressed. */
  readonly touch: (event: number) => void;
}

/** Makes the view; it is empty until `show`. */
export function chainView(trial: Trial, actions: ChainActions): ChainView {
  const root = element('div', {
    class: 'beads',
    role: 'toolbar',
    'aria-label': tryWords.chain,
  });
  let shown: readonly number[] = [];
  walkByKeys(root);
  return {
    root,
    show(study, way, turned) {
      const events = way.notes.map(n => n.event);
      if (events.join() !== shown.join()) {
        shown = events;
        root.replaceChildren(
          ...way.notes.map((note, i) => beadCell(trial, events[i - 1] ?? null, note, actions)),
          passageCell(study, way),
        );
        const first = root.querySelector<HTMLElement>('.bead-link');
        if (first) first.tabIndex = 0;
      }
      way.notes.forEach((note, i) => {
        updateBead(root.children[i] as HTMLElement, study, note, turned.has(note.event));
      });
      updatePassage(root.lastElementChild as HTMLElement, way, study);
    },
    mark(event) {
      for (const bead of root.querySelectorAll('.sounding')) bead.classList.remove('sounding');
      if (event !== null) root.querySelector(`[data-bead="${event}"]`)?.classList.add('sounding');
    },
  };
}

function beadCell(
  trial: Trial,
  before: number | null,
  { event, opensBar }: WayNote,
  actions: ChainActions,
): HTMLElement {
  const bead = element('button', {
    type: 'button',
    class: 'bead',
    tabindex: '-1',
    'data-bead': String(event),
  });
  bead.addEventListener('click', () => actions.touch(event));
  const cell = element('div', { class: 'bead-cell' });
  if (opensBar !== null) cell.append(element('span', { class: 'bead-bar' }, opensBar));
  cell.append(element('span', { class: 'bead-sign' }));
  if (before !== null) cell.append(linkBetween(trial, before, event, actions));
  cell.append(bead);
  return cell;
}

/** The button between two beads: a whole arc where they share a stroke, else its two ends. */
function linkBetween(
  trial: Trial,
  before: number,
  event: number,
  actions: ChainActions,
): HTMLElement {
  const link = element('button', {
    type: 'button',
    class: 'bead-link',
    tabindex: '-1',
    'data-link': String(event),
    'aria-label': junctionName(tryLanguage, trial.tune, before, event, noteNames()),
  });
  const picture = svgElement('svg', { viewBox: '0 0 44 30', 'aria-hidden': 'true' });
  picture.append(
    svgElement('path', { class: 'link-closed', d: 'M4 5C9 23 35 23 40 5C34 16 10 16 4 5Z' }),
    svgElement('path', { class: 'link-open', d: 'M5 6C6 11 9 14 14 16M39 6C38 11 35 14 30 16' }),
  );
  link.append(picture);
  link.addEventListener('click', () => actions.turn(event));
  return link;
}

/** Updates a bead to its note's stroke. */
function updateBead(cell: HTMLElement, study: Study, note: WayNote, turned: boolean): void {
  cell.dataset.direction = note.direction;
  cell.classList.toggle('threaded', note.at > 1);
  cell.classList.toggle('turned', turned);
  const sign = cell.querySelector('.bead-sign');
  sign?.replaceChildren(...(note.at === 1 ? [strokeSign(note.direction)] : []));
  const bead = cell.querySelector('.bead');
  const told = noteTold(
    tryLanguage,
    study.tune,
    note.event,
    whereTold(study, note.event),
    { direction: note.direction, nth: note.at, of: note.of },
    noteNames(),
  );
  bead?.replaceChildren(...beadFace(study, note.event), element('span', { class: 'unseen' }, told));
  cell.querySelector('.bead-link')?.setAttribute('aria-pressed', String(note.at > 1));
}

/** The visible text: letter large, finger and string small. */
function beadFace(study: Study, event: number): Node[] {
  const note = noteAt(study.tune, event);
  const letters = note.pitches.map(p => plainLetter(p, noteNames())).join(' ');
  return [
    element('b', { class: letters.length > 3 ? 'long' : '', 'aria-hidden': 'true' }, letters),
    element('small', { 'aria-hidden': 'true' }, shortStops(study, event)),
  ];
}

/** "2 D", finger and string of each pitch; empty out of first position. */
function shortStops(study: Study, event: number): string {
  const names = stringNames(tryLanguage, study.tuning, noteNames());
  const stops = at(study.fingering, event).flatMap(s => (s ? [s] : []));
  return stops.map(s => `${s.finger} ${at(names, s.string - 1)}`).join(' ');
}

function whereTold(study: Study, event: number): string {
  return spokenStops(tryLanguage, at(study.fingering, event), study.tuning, noteNames());
}

function passageCell(study: Study, { passage }: WayThere): HTMLElement {
  const cell = element('div', { class: 'bead-cell passage' });
  const faces = passage.flatMap(event => beadFace(study, event));
  cell.append(
    element('span', { class: 'bead-bar' }, tryWords.passage),
    element('span', { class: 'bead-sign' }),
    element('span', { class: 'bead' }, ...faces.slice(0, 2)),
    element('span', { class: 'passage-fit' }),
  );
  return cell;
}

/** Updates the last bead: the stroke that the anchor asks for, and whether the lead-in arrives on it. */
function updatePassage(cell: HTMLElement, { leadIn }: WayThere, study: Study): void {
  const anchor = study.bowing.anchors.find(
    a => leadIn.passes.length > 0 && a.leadIns.includes(leadIn),
  );
  if (!anchor) return;
  const arrival = anchor.arrivals.find(a => leadIn.passes.includes(a.pass));
  cell.dataset.direction = anchor.direction;
  cell.classList.toggle('misses', arrival?.agrees === false);
  cell.querySelector('.bead-sign')?.replaceChildren(strokeSign(anchor.direction));
  cell
    .querySelector('.passage-fit')
    ?.replaceChildren(arrival?.agrees === false ? tryWords.misses : tryWords.fits);
}

/** Moves the focus by arrow keys; one button is in the Tab order at a time. */
function walkByKeys(root: HTMLElement): void {
  const controls = (): HTMLElement[] => [...root.querySelectorAll<HTMLElement>('button')];
  const go = (to: HTMLElement | undefined): void => {
    if (!to) return;
    for (const c of controls()) c.tabIndex = c === to ? 0 : -1;
    to.focus();
  };
  root.addEventListener('focusin', event => {
    for (const c of controls()) c.tabIndex = c === event.target ? 0 : -1;
  });
  root.addEventListener('keydown', event => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const all = controls();
    const now = all.indexOf(event.target as HTMLElement);
    const bars = all.flatMap((c, i) =>
      c.parentElement?.querySelector('.bead-bar') && c.classList.contains('bead') ? [i] : [],
    );
    const to = {
      ArrowRight: () => all[now + 1],
      ArrowLeft: () => all[now - 1],
      ArrowDown: () => all.find((_, i) => i > now && bars.includes(i)),
      ArrowUp: () => all.findLast((_, i) => i < now && bars.includes(i)),
      Home: () => all[0],
      End: () => all.at(-1),
    }[event.key];
    if (!to) return;
    event.preventDefault();
    go(to());
  });
}
