import { noteLetter } from '../../shared/notation/note-letter.ts';
import type { Weight } from '../../shared/notation/printed-strokes.ts';
import type { Study } from '../../shared/study.ts';
import type { NotePlace } from './note-places.ts';
import {
  figureSize,
  isTiedOn,
  markHeight,
  markWidth,
  type PlacedFigure,
  type PlacedMark,
} from './place-above.ts';
import { short } from './write-path.ts';
import { escapeText } from './write-shapes.ts';

export const letterSize = 12;
/** How far below the top edge of a down-bow its second line stands, which makes that edge heavy. */
const heavy = 2;

const weights: readonly Weight[] = ['all', 'change', 'anchor'];

/** Stroke signs as open lines: a bracket open below for down, a V for up; one path a weight. */
export function writeMarks(marks: readonly PlacedMark[], dy: number): string {
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
  const varies =
    dots && `<path class="mark-varies" stroke-linecap="round" stroke-width="2.4" d="${dots}"/>`;
  const body = paths.join('') + varies;
  if (!body) return '';
  return `<g class="layer-marks" fill="none" stroke="currentColor" stroke-width="1.8">${body}</g>`;
}

function signPath({ direction, x, y }: PlacedMark, dy: number): string {
  const [left, foot, half] = [short(x - markWidth / 2), y + dy, markWidth / 2];
  if (direction === 'down') {
    const bracket = `M${left} ${short(foot)}v-${short(markHeight)}h${short(markWidth)}v${short(markHeight)}`;
    return `${bracket}m0-${short(markHeight - heavy)}h-${short(markWidth)}`;
  }
  const arms = `l${short(half)} ${short(markHeight)} ${short(half)}-${short(markHeight)}`;
  return `M${left} ${short(foot - markHeight)}${arms}`;
}

/** Fingers of one cell as one text a height, each figure with its own x. */
export function writeFingers(fingers: readonly PlacedFigure[], dy: number): string {
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
export function writeLetters(study: Study, notes: readonly NotePlace[], y: number): string {
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
