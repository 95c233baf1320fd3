import type { Direction } from '../music/tune.ts';
import { at } from '../must.ts';
import type { Study } from '../study.ts';

/** How much a sign tells, so that a page can be thinned out: the most telling first. */
export type Weight = 'anchor' | 'change' | 'all';

export interface PrintedStroke {
  readonly direction: Direction;
  readonly weight: Weight;
  /** Another pass plays it the other way: the first pass's sign is what is printed. */
  readonly varies: boolean;
}

/** The parts of a study that the printed signs come from. */
export type StrokeSource = Pick<Study, 'tune' | 'performance' | 'map' | 'bowing'>;

/**
 * The sign over each written note that begins a stroke, by event index: the first pass's.
 *
 * A sign tells most inside an anchor; then where the count could be lost: at the start of a phrase,
 * on a slur, on the first stroke after one, at a retake, and where the teacher wrote it. The rest
 * follow from these by alternation.
 */
export function printedStrokes(study: StrokeSource): ReadonlyMap<number, PrintedStroke> {
  const { performance, bowing, map } = study;
  const varying = new Set(bowing.varying);
  const phraseStarts = new Set(map.phrases.map(p => firstNote(study, p.first, p.end)));
  const inAnchor = (event: number): boolean =>
    bowing.anchors.some(a => a.first <= event && event <= a.last);
  const printed = new Map<number, PrintedStroke>();
  bowing.plan.strokes.forEach((stroke, i) => {
    const note = at(performance.notes, at(stroke.notes, 0));
    if (printed.has(note.event)) return;
    const before = bowing.plan.strokes[i - 1];
    const telling =
      phraseStarts.has(note.event) ||
      stroke.notes.length > 1 ||
      stroke.retake ||
      stroke.stated !== null ||
      (before !== undefined && before.notes.length > 1);
    printed.set(note.event, {
      direction: stroke.direction,
      weight: inAnchor(note.event) ? 'anchor' : telling ? 'change' : 'all',
      varies: varying.has(note.event),
    });
  });
  return printed;
}

function firstNote({ tune }: StrokeSource, first: number, end: number): number {
  const found = tune.events.slice(first, end).findIndex(e => e.kind === 'note');
  return found < 0 ? -1 : first + found;
}
