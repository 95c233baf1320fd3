import type { PrintedStroke } from '../../shared/notation/printed-strokes.ts';
import type { Study } from '../../shared/study.ts';
import { step } from './lay-out-lines.ts';
import { type Box, type NotePlace, staffTop, topBetween } from './note-places.ts';

/** Sizes in drawing units; a staff space is 7.75. Large, to be read from a music stand. */
export const markWidth = 8;
export const markHeight = 9;
export const figureSize = 11.5;
const gap = 3;
/** Room for the dot over a sign that varies. */
const dotRoom = 4.5;

/** A finger or a stroke sign with its place: `y` is its lowest point. */
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

/** Everything of ours above the notes of one cell. */
export interface Above {
  readonly fingers: readonly PlacedFigure[];
  readonly marks: readonly PlacedMark[];
  /** The highest point reached. */
  readonly top: number;
}

/**
 * Places fingers and stroke signs: fingers nearest the note, above its slur, signs outermost
 * (common practice). Both stand on common rows above the staff, and step up together, by half
 * spaces, only where a note, beam or slur reaches into their row.
 */
export function placeAbove(
  study: Study,
  notes: readonly NotePlace[],
  boxes: readonly Box[],
  strokes: ReadonlyMap<number, PrintedStroke>,
  show: { readonly fingers: boolean; readonly marks: boolean },
): Above {
  const fingers: PlacedFigure[] = [];
  const marks: PlacedMark[] = [];
  let top = staffTop;
  for (const note of notes) {
    const finger = show.fingers ? fingerOf(study, note.event) : null;
    const clear = topBetween(boxes, note.x - 5, note.x + 5);
    let y = staffTop - gap - Math.max(0, Math.ceil((staffTop - clear) / step)) * step;
    if (finger !== null) fingers.push({ x: note.x, y, text: finger });
    if (show.fingers) y -= figureSize * 0.72 + gap;
    const stroke = show.marks ? strokes.get(note.event) : undefined;
    if (stroke) {
      marks.push({ ...stroke, event: note.event, x: note.x, y });
      y -= markHeight + (stroke.varies ? dotRoom : 0);
    }
    top = Math.min(top, y);
  }
  return { fingers, marks, top };
}

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
