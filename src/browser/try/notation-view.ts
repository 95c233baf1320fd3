import { writtenSlurs } from '../../../shared/bowing/written-slurs.ts';
import type { Direction } from '../../../shared/music/tune.ts';
import { at } from '../../../shared/must.ts';
import { printedStrokes } from '../../../shared/notation/printed-strokes.ts';
import type { Study } from '../../../shared/study.ts';
import type { WayThere } from '../../../shared/trying/way-there.ts';
import { element, svgElement } from './element.ts';

/**
 * The lead-in in notation, with the student's slurs and strokes.
 *
 * The page contains the drawing already: its cells are copied, the teacher's slurs and signs are removed
 * from the copy, and the student's are drawn over the same notes. So the page loads no notation library,
 * and no inline style is set, which the pages' content security policy would refuse. The view is hidden
 * from screen readers, since the beads say the same in words.
 */
export interface NotationView {
  readonly root: HTMLElement;
  readonly show: (study: Study, way: WayThere) => void;
}

/** Selects the teacher's slurs, signs and fingers in a drawn cell. */
const teachersMarks = '.slurs, .lifted, .layer-marks, .layer-fingers';

/** A view on copies of some cells, by their ids; null where the page has none of them. */
export function notationView(room: HTMLElement, cellIds: readonly string[]): NotationView | null {
  const root = copiedFromTemplate(room) ?? copiedFromPage(cellIds);
  if (root === null) return null;
  root.setAttribute('aria-hidden', 'true');
  // Without their ids and data the copies are no link targets, and the player does not find them.
  for (const stave of root.querySelectorAll('.stave')) {
    for (const name of stave.getAttributeNames()) stave.removeAttribute(name);
    stave.className = 'stave';
  }
  const cells = [...root.querySelectorAll<SVGSVGElement>('svg.cell')];
  for (const cell of cells) {
    cell.removeAttribute('role');
    cell.removeAttribute('aria-label');
    for (const old of cell.querySelectorAll(teachersMarks)) old.remove();
  }
  return {
    root,
    show(study, way) {
      const signs = signsOf(study, way);
      for (const cell of cells) drawOver(cell, study, signs);
    },
  };
}

function copiedFromTemplate(room: HTMLElement): HTMLElement | null {
  const template = room.querySelector<HTMLTemplateElement>('template.try-notation');
  const found = template?.content.querySelector<HTMLElement>('.notation');
  return found ? (document.importNode(found, true) as HTMLElement) : null;
}

/** Copies staves from elsewhere on the page, grouped in lines as there. */
function copiedFromPage(ids: readonly string[]): HTMLElement | null {
  const staves = ids.flatMap(id => document.getElementById(id) ?? []);
  const own = staves[0]?.closest('.notation');
  if (!own) return null;
  const part = element('div', { class: 'part' });
  const lines = new Map<Element | null, HTMLElement>();
  for (const stave of staves) {
    const line = lines.get(stave.parentElement) ?? element('div', { class: 'line' });
    lines.set(stave.parentElement, line);
    const copy = stave.cloneNode(true) as HTMLElement;
    line.append(copy);
  }
  part.append(...lines.values());
  return element('div', { class: own.className }, part);
}

/** The stroke sign of each written note that begins a stroke; inside the lead-in that of its pass. */
function signsOf(study: Study, way: WayThere): ReadonlyMap<number, Direction> {
  const signs = new Map<number, Direction>();
  for (const [event, { direction }] of printedStrokes(study)) signs.set(event, direction);
  for (const note of way.notes) {
    if (note.at === 1) signs.set(note.event, note.direction);
    else signs.delete(note.event);
  }
  return signs;
}

/** Where a note stands in its cell, in the drawing's own units. */
interface Spot {
  readonly event: number;
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
  readonly stemUp: boolean;
}

const gap = 3;
const sign = { width: 8, height: 9, heavy: 2 };

function drawOver(cell: SVGSVGElement, study: Study, signs: ReadonlyMap<number, Direction>): void {
  cell.querySelector('.own-strokes')?.remove();
  const staff = cell.querySelector<SVGGraphicsElement>('.staff')?.getBBox();
  const spots = [...cell.querySelectorAll<SVGGraphicsElement>('[data-n]')].map(spotOf);
  if (!staff || spots.length === 0) return;
  const slurs = slursIn(cell, study, spots);
  const own = svgElement('g', { class: 'own-strokes' });
  own.append(svgElement('path', { stroke: 'none', d: slurs.map(s => s.path).join('') }));
  const marks = spots.flatMap(spot => {
    const direction = signs.get(spot.event);
    if (!direction) return [];
    const over = slurs.filter(s => s.from <= spot.x && spot.x <= s.to).map(s => s.top);
    const foot = Math.min(staff.y, spot.top, ...over) - gap;
    return [signPath(direction, spot.x, foot)];
  });
  own.append(svgElement('path', { class: 'own-signs', d: marks.join('') }));
  cell.append(own);
}

/**
 * A plain note is one glyph, head and stem, placed by the middle of its head. In a note of several
 * glyphs the head is the one about a staff space high. A note's box holds its stem as well.
 */
function spotOf(note: SVGGraphicsElement): Spot {
  const box = note.getBBox();
  const heads = [...note.querySelectorAll('use')]
    .map(u => u.getBBox())
    .filter(b => b.height > 5 && b.height < 11 && b.width > 6);
  const head = heads[0] ?? box;
  const middle = note instanceof SVGUseElement ? note.y.baseVal.value : head.y + head.height / 2;
  return {
    event: Number(note.dataset.n),
    x: head.x + head.width / 2,
    top: box.y,
    bottom: box.y + box.height,
    stemUp: middle - box.y > box.y + box.height - middle,
  };
}

interface DrawnSlur {
  readonly path: string;
  readonly from: number;
  readonly to: number;
  /** Highest point; of a slur below the notes, nothing is in the way of a sign. */
  readonly top: number;
}

/** The slurs of a cell. One that goes on in the next cell reaches to the edge. */
function slursIn(cell: SVGSVGElement, study: Study, spots: readonly Spot[]): readonly DrawnSlur[] {
  const { joined } = writtenSlurs(study.tune);
  const width = cell.viewBox.baseVal.width;
  const drawn: DrawnSlur[] = [];
  for (let i = 0; i < spots.length; i++) {
    let last = i;
    while (last + 1 < spots.length && joined[at(spots, last + 1).event]) last++;
    const [first, end] = [at(spots, i), at(spots, last)];
    const comesIn = i === 0 && joined[first.event] === true;
    const goesOn = last === spots.length - 1 && joined[nextNote(study, end.event)] === true;
    if (last > i || comesIn || goesOn) {
      const from = comesIn ? 0 : first.x;
      const to = goesOn ? width : end.x;
      drawn.push(arc(spots.slice(i, last + 1), from, to));
    }
    i = last;
  }
  return drawn;
}

const nextNote = ({ tune }: Study, event: number): number =>
  tune.events.findIndex((e, i) => i > event && e.kind === 'note');

/** Under the notes where every stem goes up, else over them (common practice). */
function arc(spots: readonly Spot[], from: number, to: number): DrawnSlur {
  const under = spots.every(s => s.stemUp);
  const side = under ? 1 : -1;
  const edge = (s: Spot): number => (under ? s.bottom : s.top) + side * gap;
  const [y1, y2] = [edge(at(spots, 0)), edge(at(spots, spots.length - 1))];
  const furthest = Math.max(...spots.map(s => side * edge(s)));
  // The middle of a cubic curve comes three quarters of the way to its control points.
  const height = Math.max(7, (furthest - side * Math.min(side * y1, side * y2) + 4) / 0.75);
  const inset = (to - from) / 4;
  const bend = (by: number): string =>
    `${num(from + inset)} ${num(y1 + side * by)} ${num(to - inset)} ${num(y2 + side * by)}`;
  const back = `${num(to - inset)} ${num(y2 + side * (height - 2.2))} ${num(from + inset)} ${num(y1 + side * (height - 2.2))}`;
  return {
    path: `M${num(from)} ${num(y1)}C${bend(height)} ${num(to)} ${num(y2)}C${back} ${num(from)} ${num(y1)}Z`,
    from,
    to,
    top: under ? Number.POSITIVE_INFINITY : Math.min(y1, y2) - height * 0.75,
  };
}

/** A bracket open below with a heavy top, or a V, standing on `foot`: as in the drawings. */
function signPath(direction: Direction, x: number, foot: number): string {
  const { width, height, heavy } = sign;
  const left = num(x - width / 2);
  return direction === 'down'
    ? `M${left} ${num(foot)}v-${height}h${width}v${height}m0-${height - heavy}h-${width}`
    : `M${left} ${num(foot - height)}l${width / 2} ${height} ${width / 2}-${height}`;
}

const num = (n: number): string => `${Math.round(n * 100) / 100}`;
