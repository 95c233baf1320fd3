import { noteLetter } from '../../shared/notation/note-letter.ts';
import type { PrintedStroke, Weight } from '../../shared/notation/printed-strokes.ts';
import type { Study } from '../../shared/study.ts';
import { step } from './lay-out-lines.ts';
import { type Box, type NotePlace, staffTop, topBetween } from './note-places.ts';
import { short } from './write-path.ts';
import { escapeText } from './write-shapes.ts';

/** Sizes in drawing units; a staff space is 7.75. Large, to be read from a music stand. */
const markWidth = 8;
const markHeight = 9;
export const figureSize = 11.5;
export const letterSize = 12;
const gap = 3;

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
      y -= markHeight;
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
function isTiedOn(events: Study['tune']['events'], event: number): boolean {
  for (let e = event - 1; e >= 0; e--) {
    const before = events[e];
    if (before?.kind === 'note') return before.tied;
    if (before?.kind === 'rest') return false;
  }
  return false;
}

const weights: readonly Weight[] = ['all', 'change', 'anchor'];

/** Stroke signs as open lines: a bracket open below for down, a V for up; one path a weight. */
export function drawMarks(marks: readonly PlacedMark[], dy: number): string {
  const paths = weights.map(weight => {
    const d = marks
      .filter(m => m.weight === weight)
      .map(m => signPath(m, dy))
      .join('');
    return d && `<path class="mark-${weight}" d="${d}"/>`;
  });
  const dots = marks
    .filter(m => m.varies)
    .map(m => `M${short(m.x)} ${short(m.y + dy - markHeight - 2.6)}h0`)
    .join('');
  const varies = dots && `<path class="mark-varies" stroke-width="2.4" d="${dots}"/>`;
  const body = paths.join('') + varies;
  if (!body) return '';
  return `<g class="layer-marks" fill="none" stroke="currentColor" stroke-width="1.5" stroke-linecap="round">${body}</g>`;
}

function signPath({ direction, x, y }: PlacedMark, dy: number): string {
  const [left, foot, half] = [short(x - markWidth / 2), y + dy, markWidth / 2];
  if (direction === 'down') {
    return `M${left} ${short(foot)}v-${short(markHeight)}h${short(markWidth)}v${short(markHeight)}`;
  }
  const arms = `l${short(half)} ${short(markHeight)} ${short(half)}-${short(markHeight)}`;
  return `M${left} ${short(foot - markHeight)}${arms}`;
}

/** Fingers of one cell as one text an height, each figure with its own x. */
export function drawFingers(fingers: readonly PlacedFigure[], dy: number): string {
  if (fingers.length === 0) return '';
  const rows = new Map<string, PlacedFigure[]>();
  for (const f of fingers) {
    const y = short(f.y + dy);
    rows.set(y, [...(rows.get(y) ?? []), f]);
  }
  const texts = [...rows].map(([y, row]) => {
    const xs = row.map(f => short(f.x)).join(' ');
    return `<text x="${xs}" y="${y}">${row.map(f => f.text).join('')}</text>`;
  });
  return `<g class="layer-fingers" font-size="${figureSize}" text-anchor="middle">${texts.join('')}</g>`;
}

/** The notes' letters in one row, chords by their highest note. */
export function drawLetters(study: Study, notes: readonly NotePlace[], y: number): string {
  const { tune } = study;
  const drawn = notes.flatMap(({ event, x }) => {
    const note = tune.events[event];
    if (note?.kind !== 'note' || isTiedOn(tune.events, event)) return [];
    const pitch = note.pitches[note.pitches.length - 1];
    const key = tune.bars[note.bar]?.key ?? tune.key;
    return pitch ? [{ x, letters: [...noteLetter(pitch, key)] }] : [];
  });
  if (drawn.length === 0) return '';
  const xs = drawn.flatMap(({ x, letters }) =>
    letters.map((_, i) => short(x + (i === 0 ? 0 : letterSize * (0.2 + 0.32 * i)))),
  );
  const text = drawn.flatMap(({ letters }) => letters).join('');
  return `<text class="layer-letters" font-size="${letterSize}" text-anchor="middle" x="${xs.join(' ')}" y="${short(y)}">${escapeText(text)}</text>`;
}
