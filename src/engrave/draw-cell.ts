import type { PrintedStroke } from '../../shared/notation/printed-strokes.ts';
import type { Study } from '../../shared/study.ts';
import type { Shape } from './drawing-surface.ts';
import type { AbsoluteElement } from './laid-line.ts';
import type { LaidLine } from './lay-out-lines.ts';
import { type Box, boxesOf, type NotePlace, placeNotes } from './note-places.ts';
import { type Above, placeAbove, type Shown } from './place-above.ts';
import { type Arc, readArc } from './slur-arcs.ts';
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
  readonly slurs: readonly Arc[];
  readonly above: Above;
}

export function drawCell(
  study: Study,
  line: CellLine,
  laid: LaidLine,
  strokes: ReadonlyMap<number, PrintedStroke>,
  show: Shown,
): DrawnCell {
  const { root, shapeOf } = laid.draw();
  const notes = placeNotes(laid.group, line.events);
  const boxes = boxesOf(laid.group, root);
  const slurs = root.children
    .filter(s => s.getAttribute('data-name') === 'slur')
    .flatMap(s => readArc(s) ?? []);
  return {
    line,
    width: laid.group.w,
    elements: laid.group.voices[0]?.children ?? [],
    root,
    shapeOf,
    notes,
    boxes,
    slurs,
    above: placeAbove(study, notes, boxes, slurs, strokes, show),
  };
}
