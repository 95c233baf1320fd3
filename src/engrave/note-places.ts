import type { Shape } from './drawing-surface.ts';
import type { AbsoluteElement, RelativeElement, StaffGroup } from './laid-line.ts';
import { step } from './lay-out-lines.ts';
import { arcBoxes, readArc } from './slur-arcs.ts';

/** Where a written note stands. Units of the drawing, staff step 0 at y = 0. */
export interface NotePlace {
  /** Event index. */
  readonly event: number;
  /** Middle of its head. */
  readonly x: number;
  readonly left: number;
  readonly right: number;
}

/** Something drawn that marks must keep clear of. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export const staffTop = -10 * step;
export const staffBottom = -2 * step;

/** Event index of a note or rest; -1 for bar lines and signs. */
export const eventOf = (
  events: ReadonlyMap<number, number>,
  { abcelem }: AbsoluteElement,
): number => (abcelem.el_type === 'note' ? (events.get(abcelem.startChar ?? -1) ?? -1) : -1);

/** The notes of a laid-out line, left to right; rests left out. */
export function placeNotes(
  group: StaffGroup,
  events: ReadonlyMap<number, number>,
): readonly NotePlace[] {
  return (group.voices[0]?.children ?? []).flatMap(element => {
    const event = eventOf(events, element);
    const heads = element.heads;
    if (event < 0 || heads.length === 0) return [];
    const left = Math.min(...heads.map(h => h.x));
    const right = Math.max(...heads.map(h => h.x + h.w));
    return [{ event, x: (left + right) / 2, left, right }];
  });
}

/** Boxes round everything in a drawn line but slurs, chord symbols, endings and the staff. */
export function boxesOf(group: StaffGroup, root: Shape): readonly Box[] {
  const boxes: Box[] = [];
  for (const { type, children } of group.voices[0]?.children ?? []) {
    if (type === 'part') continue;
    for (const child of children) {
      if (!unboxed.has(child.type)) boxes.push(boxOfChild(child));
    }
  }
  for (const shape of root.children) {
    if (shape.getAttribute('data-name') !== 'slur') boxes.push(...boxesOfShape(shape));
  }
  return boxes;
}

/** Words have rows of their own, but for those of `w:`; bar lines are as high as the staff. */
const unboxed: ReadonlySet<string> = new Set(['chord', 'text', 'part', 'barNumber', 'bar']);

/** The words of `w:` count below the staff. */
function boxOfChild({ type, x, w, pitch, pitch2, top, bottom }: RelativeElement): Box {
  const [from, to] =
    type === 'lyric'
      ? [pitch, pitch - 5]
      : type === 'stem'
        ? [pitch, pitch2 ?? pitch]
        : [top ?? pitch, bottom ?? pitch];
  return {
    left: x,
    right: x + w,
    top: -Math.max(from, to) * step,
    bottom: -Math.min(from, to) * step,
  };
}

/** Ties, beams and the figures of triplets, which stand beside the notes' own groups. */
function boxesOfShape(shape: Shape): readonly Box[] {
  if (shape.getAttribute('data-name') === 'ending') return [];
  if (shape.getAttribute('data-name') === 'triplet') return shape.children.flatMap(boxesOfShape);
  if (shape.tag === 'text') {
    const [x, y] = [Number(shape.attributes.x), Number(shape.attributes.y)];
    return [{ left: x - 4, right: x + 4, top: y - 10, bottom: y + 1 }];
  }
  if (shape.tag !== 'path') return [];
  const arc = readArc(shape);
  if (arc) return arcBoxes(arc);
  return [...(shape.attributes.path ?? '').matchAll(/M([^M]*)/g)].map(m =>
    boxOfPoints((m[1]?.match(/-?[\d.]+/g) ?? []).map(Number)),
  );
}

function boxOfPoints(numbers: readonly number[]): Box {
  const { POSITIVE_INFINITY: far, NEGATIVE_INFINITY: near } = Number;
  let [left, right, top, bottom] = [far, near, far, near];
  for (let i = 0; i < numbers.length; i += 2) {
    const [x = 0, y = 0] = [numbers[i], numbers[i + 1]];
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { left, right, top, bottom };
}

/** What stands above the staff: only that can be in the way of what stands there. */
export const overStaff = (boxes: readonly Box[]): readonly Box[] =>
  boxes.filter(b => b.top < staffTop);

/** The highest point of what stands between two x. */
export function topBetween(boxes: readonly Box[], left: number, right: number): number {
  let top = staffTop;
  for (const box of boxes) {
    if (box.top < top && box.right > left && box.left < right) top = box.top;
  }
  return top;
}
