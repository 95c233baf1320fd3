import { accidentals } from '../../shared/engraving/measure-text.ts';
import type { Weight } from '../../shared/notation/printed-strokes.ts';
import type { NotePlace } from './note-places.ts';
import { type Letters, letterSize } from './note-room.ts';
import {
  figureSize,
  markHeight,
  markWidth,
  type PlacedFigure,
  type PlacedMark,
} from './place-above.ts';
import { writeAccidental } from './write-lettering.ts';
import { pair, short } from './write-path.ts';
import { escapeText, type GlyphCase } from './write-shapes.ts';

/** How far below the top edge of a down-bow its second line stands, which makes that edge heavy. */
const heavy = 2;
/** The dot is as thick as a sign's lines, and about as wide. */
const dotSize = 2;
const dotAbove = 3;

const weights: readonly Weight[] = ['all', 'change', 'anchor'];

/**
 * Stroke signs as open lines: a bracket open below for down, a V for up, with a dot over one that
 * another time through turns round; one path a weight.
 */
export function writeMarks(marks: readonly PlacedMark[], dy: number): string {
  const paths = weights.map(weight => {
    const own = marks.filter(m => m.weight === weight);
    return own.length === 0 ? '' : `<path class="mark-${weight}" d="${signsPath(own, dy)}"/>`;
  });
  if (marks.length === 0) return '';
  return `<g class="layer-marks" fill="none" stroke-width="1.8">${paths.join('')}</g>`;
}

/** Signs one after another, each a step from the end of the one before. */
function signsPath(marks: readonly PlacedMark[], dy: number): string {
  let out = '';
  let [x, y] = [0, 0];
  for (const { direction, varies, ...mark } of marks) {
    const left = mark.x - markWidth / 2;
    const top = mark.y + dy - markHeight;
    const start = direction === 'down' ? top + markHeight : top;
    out += out === '' ? `M${pair(left, start)}` : `m${pair(left - x, start - y)}`;
    out += direction === 'down' ? downSign : upSign;
    [x, y] = direction === 'down' ? [left, top + heavy] : [left + markWidth, top];
    if (!varies) continue;
    const dot = [left + markWidth / 2, top - dotAbove] as const;
    out += `m${pair(dot[0] - x - dotSize / 2, dot[1] - y)}h${short(dotSize)}`;
    [x, y] = [dot[0] + dotSize / 2, dot[1]];
  }
  return out;
}

/** From the lower left corner; ends at the left of the line that makes the top edge heavy. */
const downSign = `v-${markHeight}h${markWidth}v${markHeight}-${markHeight - heavy}h-${markWidth}`;
/** From the upper left tip. */
const upSign = `l${markWidth / 2} ${markHeight} ${markWidth / 2}-${markHeight}`;

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

/** The notes' letters in one row, accidentals among them as glyphs. */
export function writeLetters(
  letters: Letters,
  notes: readonly NotePlace[],
  y: number,
  glyphs: GlyphCase,
): string {
  const [xs, signs]: [string[], string[]] = [[], []];
  let text = '';
  for (const { event, x } of notes) {
    for (const sign of letters.get(event) ?? []) {
      const middle = x + sign.dx;
      if (accidentals[sign.text]) {
        const left = middle - sign.width / 2 + 0.06 * letterSize;
        signs.push(writeAccidental(sign.text, [left, y], letterSize, glyphs));
      } else {
        xs.push(short(middle));
        text += sign.text;
      }
    }
  }
  if (xs.length === 0 && signs.length === 0) return '';
  return `<g class="layer-letters" font-size="${letterSize}" text-anchor="middle"><text x="${xs.join(' ')}" y="${short(y)}">${escapeText(text)}</text>${signs.join('')}</g>`;
}
