import type { PrintedStroke } from '../../shared/notation/printed-strokes.ts';
import type { Study } from '../../shared/study.ts';
import { step } from './lay-out-lines.ts';
import { type Box, type NotePlace, overStaff, staffTop, topBetween } from './note-places.ts';
import { type Arc, arcBoxes, liftArc } from './slur-arcs.ts';

/** Sizes in drawing units; a staff space is 7.75. Large, to be read from a music stand. */
export const markWidth = 8;
export const markHeight = 9;
export const figureSize = 11.5;
const figureHeight = figureSize * 0.72;
const gap = 3;
/** What a row of fingers takes; `notation.css` closes up over it while fingers are hidden. */
export const fingerRow = figureHeight + gap;
/** Room for the dot over a sign that varies. */
const dotRoom = 4.5;

/** A finger with its place: `y` is its lowest point. */
export interface PlacedFigure {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

export interface PlacedMark extends PrintedStroke {
  readonly event: number;
  readonly x: number;
  readonly y: number;
}

/** Everything of ours above the notes of one cell, and slurs that had to make room for it. */
export interface Above {
  readonly fingers: readonly PlacedFigure[];
  readonly marks: readonly PlacedMark[];
  /** How far up each slur that fingers stand under is moved, by its index among the arcs. */
  readonly lifts: ReadonlyMap<number, number>;
  /** The highest point reached. */
  readonly top: number;
}

/** What of ours is drawn. */
export interface Shown {
  readonly fingers: boolean;
  readonly marks: boolean;
}

/**
 * Places fingers and stroke signs: the finger nearest the note, then its slur, the sign outermost
 * (common practice). Both stand on common rows above the staff, and step up, by half spaces, only
 * where a note, beam or tie reaches into their row. A slur within the staff stays where it is; one
 * that would run through a finger is lifted over it, by a row of fingers at least, so that it can
 * come down by as much while fingers are hidden.
 *
 * `boxes` are the notes and all that hangs on them but slurs, `arcs` the slurs.
 */
export function placeAbove(
  study: Study,
  notes: readonly NotePlace[],
  boxes: readonly Box[],
  arcs: readonly Arc[],
  strokes: ReadonlyMap<number, PrintedStroke>,
  show: Shown,
): Above {
  const high = overStaff(boxes);
  const fingers = show.fingers ? placeFingers(study, notes, high) : [];
  const fingerBoxes = fingers.map(fingerBox);
  const lifts = new Map(
    arcs.flatMap((arc, i) => {
      const lift = liftArc(arc, fingerBoxes);
      return lift > 0 ? [[i, Math.max(lift, fingerRow)] as const] : [];
    }),
  );
  const slurs = arcs.flatMap((arc, i) => arcBoxes(arc, lifts.get(i) ?? 0));
  const all = [...high, ...overStaff(slurs)];
  // A lifted slur comes down with the sign while fingers are hidden; nothing else makes way.
  const allLowered = lifts.size === 0 ? all : [...high, ...overStaff(lowered(arcs, lifts))];
  const fingerOver = new Map(fingers.map(f => [f.x, f]));
  const marks: PlacedMark[] = [];
  let top = Math.min(staffTop, ...fingers.map(f => f.y - figureHeight), ...slurs.map(b => b.top));
  for (const note of notes) {
    const stroke = show.marks ? strokes.get(note.event) : undefined;
    if (!stroke) continue;
    const clear = rowOver(all, note.x);
    const overFinger = (fingerOver.get(note.x)?.y ?? staffTop - gap) - fingerRow;
    const under = allLowered === all ? clear : rowOver(allLowered, note.x);
    // Whole units, which are shorter to write.
    const y = Math.round(show.fingers ? Math.min(overFinger, under - fingerRow, clear) : clear);
    // What is spread comes last: V8 makes a hidden class of its own for each object that is added to after it.
    marks.push({ event: note.event, x: Math.round(note.x), y, ...stroke });
    top = Math.min(top, y - markHeight - (stroke.varies ? dotRoom : 0));
  }
  return { fingers, marks, lifts, top };
}

function placeFingers(
  study: Study,
  notes: readonly NotePlace[],
  boxes: readonly Box[],
): readonly PlacedFigure[] {
  return notes.flatMap(note => {
    const text = fingerOf(study, note.event);
    return text === null ? [] : [{ x: note.x, y: rowOver(boxes, note.x), text }];
  });
}

/** Lowest row for something over a note, clear of what stands there. */
function rowOver(boxes: readonly Box[], x: number): number {
  const clear = topBetween(boxes, x - 5, x + 5);
  return staffTop - gap - Math.max(0, Math.ceil((staffTop - clear) / step)) * step;
}

const fingerBox = ({ x, y }: PlacedFigure): Box => ({
  left: x - 3.5,
  right: x + 3.5,
  top: y - figureHeight,
  bottom: y,
});

/** Slurs as they stand while fingers are hidden. */
const lowered = (arcs: readonly Arc[], lifts: ReadonlyMap<number, number>): readonly Box[] =>
  arcs.flatMap((arc, i) => arcBoxes(arc, Math.max(0, (lifts.get(i) ?? 0) - fingerRow)));

function fingerOf({ tune, fingering }: Study, event: number): string | null {
  if (isTiedOn(tune.events, event)) return null;
  const stops = fingering[event] ?? [];
  const stop = stops[stops.length - 1];
  return stop ? `${stop.finger}` : null;
}

/** A note that another is tied to is not played anew. */
export function isTiedOn(events: Study['tune']['events'], event: number): boolean {
  for (let e = event - 1; e >= 0; e--) {
    const before = events[e];
    if (before?.kind === 'note') return before.tied;
    if (before?.kind === 'rest') return false;
  }
  return false;
}
