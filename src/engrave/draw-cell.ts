import type { PrintedStroke } from '../../shared/notation/printed-strokes.ts';
import type { Study } from '../../shared/study.ts';
import type { Shape } from './drawing-surface.ts';
import type { AbsoluteElement } from './laid-line.ts';
import type { LaidLine } from './lay-out-lines.ts';
import { type Box, boxesOf, type NotePlace, placeNotes } from './note-places.ts';
import { type Above, placeAbove } from './place-above.ts';
import type { CellLine } from './split-lines.ts';

/** A cell as abcjs drew it, with our own signs placed over it, not yet written as SVG. */
export interface DrawnCell {
  readonly line: CellLine;
  /** Right edge of the staff. */
  readonly width: number;
  readonly elements: readonly AbsoluteElement[];
  readonly root: Shape;
  readonly shapeOf: ReadonlyMap<AbsoluteElement, Shape>;
  readonly notes: readonly NotePlace[];
  readonly boxes: readonly Box[];
  readonly above: Above;
}

export function drawCell(
  study: Study,
  line: CellLine,
  laid: LaidLine,
  strokes: ReadonlyMap<number, PrintedStroke>,
  show: { readonly fingers: boolean; readonly marks: boolean },
): DrawnCell {
  const { root, shapeOf } = laid.draw();
  const notes = placeNotes(laid.group, line.events);
  const boxes = boxesOf(laid.group, root);
  return {
    line,
    width: laid.group.w,
    elements: laid.group.voices[0]?.children ?? [],
    root,
    shapeOf,
    notes,
    boxes,
    above: placeAbove(study, notes, boxes, strokes, show),
  };
}
