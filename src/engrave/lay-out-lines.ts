import AbstractEngraver from 'abcjs/src/write/creation/abstract-engraver.js';
import AbsoluteElementOfAbcjs from 'abcjs/src/write/creation/elements/absolute-element.js';
import drawStaffGroup from 'abcjs/src/write/draw/staff-group.js';
import EngraverController from 'abcjs/src/write/engraver-controller.js';
import Classes from 'abcjs/src/write/helpers/classes.js';
import GetFontAndAttr from 'abcjs/src/write/helpers/get-font-and-attr.js';
import GetTextSize from 'abcjs/src/write/helpers/get-text-size.js';
import layout from 'abcjs/src/write/layout/layout.js';
import Renderer from 'abcjs/src/write/renderer.js';
import { type MeasureText, type Paper, plainPaper, type Shape } from './drawing-surface.ts';
import type { AbcElement, AbsoluteElement, StaffGroup } from './laid-line.ts';
import type { ParsedTune } from './split-lines.ts';
import { firstSpace, widthsFor } from './spread-lines.ts';

/** Half a staff space, in drawing units. */
export const step = 3.875;

/** Thickness of staff lines, stems and thin bar lines. */
export const lineWidth = 0.8;

/** Room before the first sign of a line. */
const edge = 8;

/** A line to lay out: elements of abcjs's parse, after the signs that are given. */
export interface LineRequest {
  readonly elements: readonly AbcElement[];
  /** In drawing units. Lines that ask for the same width get the same. */
  readonly width: number;
  /** Units to keep, at least, from the note or rest that starts at an offset to what follows it. */
  readonly room?: ReadonlyMap<number, number>;
  readonly clef?: object;
  readonly key?: object;
  readonly meter?: object | null;
}

/** A line with its positions fixed, not yet drawn. */
export interface LaidLine {
  readonly group: StaffGroup;
  /** That of all lines which asked for the same: as asked, or as the fullest of them needs. */
  readonly width: number;
  /**
   * Draws it, vertical positions counted from staff step 0 downwards, so that the lines of the
   * staff are at -2 to -10 steps. Each element's shapes stand in one group.
   */
  draw(): { readonly root: Shape; readonly shapeOf: ReadonlyMap<AbsoluteElement, Shape> };
}

/** Stems of three and a half spaces and a little: shorter than abcjs's own, to save height. */
const stemHeight = 30;

/**
 * Lays out lines of one tune. Lines that ask for the same width are stretched to it alike, or to the
 * fullest of them where it needs more; a sparse one may end before its width.
 */
export function layOutLines(
  parsed: ParsedTune,
  lines: readonly LineRequest[],
  measure: MeasureText,
  makePaper = plainPaper,
): readonly LaidLine[] {
  const renderer = makeRenderer(parsed, makePaper(measure).surface);
  const { engraver } = renderer.controller;
  // All are made before any is laid, in order, since slurs and ties run on from line to line.
  const made = lines.map(({ elements, clef, key, meter, room }, i) => {
    // abcjs writes into what it lays out, so it gets a copy.
    const staff = copied({
      // The staff's own lines are ours: see `write-cell.ts`.
      clef: { ...(clef ?? { type: 'none' }), stafflines: 0 },
      key: key ?? { accidentals: [] },
      ...(meter && { meter }),
      voices: [elements],
    });
    // Where a slur or tie from the cell before begins: at the edge.
    engraver.startlimitelem = { x: edge - 14, w: 0 };
    const staffGroup = engraver.createABCLine([staff], null, i);
    refuseWords(staffGroup);
    keepRoom(staffGroup, room);
    return { staff: [staff], staffGroup };
  });
  const wanted = widthsFor(
    lines,
    made.map(m => m.staffGroup),
    edge,
  );
  const formatting = { ...parsed.formatting, stretchlast: 1 };
  const widths = new Map<number, number>();
  for (const width of new Set(wanted)) {
    const alike = made.filter((_, i) => wanted[i] === width);
    layout(renderer, { lines: alike, formatting }, width, firstSpace, false, undefined);
    widths.set(width, Math.max(width + edge, ...alike.map(({ staffGroup }) => staffGroup.w)));
  }
  return made.map(({ staffGroup }, i) => ({
    group: staffGroup,
    width: widths.get(wanted[i] ?? 0) ?? staffGroup.w,
    draw: () => drawLine(renderer, staffGroup, i, makePaper(measure)),
  }));
}

/** A copy of plain data, and of all in it. */
function copied<T>(value: T): T {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(copied) as T;
  const copy: Record<string, unknown> = {};
  for (const name in value) copy[name] = copied(value[name]);
  return copy as T;
}

/** abcjs writes words in the place of what it has no sign for, a note of eight bars say. */
function refuseWords(group: StaffGroup): void {
  for (const { children } of group.voices[0]?.children ?? []) {
    if (children.some(({ type }) => type === 'debug')) {
      throw new Error('there is no sign for a length or an element of it');
    }
  }
}

/**
 * Widens notes over which or under which something of ours is to stand that is wider than they, and
 * keeps all to whole units, which are shorter to write.
 */
function keepRoom(group: StaffGroup, room?: ReadonlyMap<number, number>): void {
  for (const child of group.voices[0]?.children ?? []) {
    const wanted = room?.get(child.abcelem.startChar ?? -1) ?? 0;
    child.minspacing = Math.max(child.minspacing, wanted - child.w);
    // abcjs makes room for an ending's number, which stands in a row of its own.
    if (child.abcelem.startEnding)
      child.minspacing = child.abcelem.type === 'bar_invisible' ? 0 : 8;
    child.setX = setWholeX;
  }
}

/**
 * abcjs's own, to whole units. It is one function for all elements: with a closure for each, the young
 * generation's collector takes the elements to be in use until the old one is collected too.
 */
function setWholeX(this: AbsoluteElement, x: number): void {
  AbsoluteElementOfAbcjs.prototype.setX.call(this, Math.round(x));
}

/** Stems, beamed or not, and thin bar lines, as thick as the staff's. */
function evenLines(group: StaffGroup): void {
  for (const { children } of group.voices[0]?.children ?? []) {
    for (const line of children) {
      const { type, linewidth = 0 } = line;
      if (type === 'stem' || (type === 'bar' && linewidth < thick)) {
        line.linewidth = Math.sign(linewidth) * lineWidth;
      }
    }
  }
  // Beams end flush with abcjs's stems: now with ours.
  for (const { stemsUp, beams = [] } of group.voices[0]?.beams ?? []) {
    for (const beam of beams) {
      if (stemsUp) beam.startX -= lineWidth - abcjsStem;
      else beam.endX += lineWidth - abcjsStem;
    }
  }
}

const abcjsStem = 0.6;

/** From here on a bar line is a thick one. */
const thick = 2;

function drawLine(
  renderer: DrawingRenderer,
  group: StaffGroup,
  index: number,
  paper: Paper,
): ReturnType<LaidLine['draw']> {
  evenLines(group);
  const drawn = new Map<AbsoluteElement, object>();
  const shapeOf = new Map<AbsoluteElement, Shape>();
  renderer.paper = paper.surface;
  renderer.y = -(group.staffs[0]?.top ?? 0) * step;
  const selectables = {
    add: (element: AbsoluteElement, shape: object) => void drawn.set(element, shape),
    wrapSvgEl: () => {},
  };
  drawStaffGroup(renderer, group, selectables, index);
  const root = paper.root();
  for (const [element, shape] of drawn) shapeOf.set(element, paper.shapeOf(shape));
  return { root, shapeOf };
}

interface DrawingRenderer {
  paper: object;
  y: number;
  readonly controller: { readonly engraver: InstanceType<typeof AbstractEngraver> };
  initVerticalSpace(): void;
}

/** Fonts without their boxes: chord symbols, which `%%gchordfont` may ask them for, stand in a row of our own. */
const unboxed = (formatting: ParsedTune['formatting']): ParsedTune['formatting'] =>
  Object.fromEntries(
    Object.entries(formatting).map(([name, value]) => [
      name,
      typeof value === 'object' && value !== null && 'box' in value
        ? { ...value, box: false }
        : value,
    ]),
  );

/** What abcjs's own controller would set up, without its page, title, selection and document. */
function makeRenderer(parsed: ParsedTune, surface: object): DrawingRenderer {
  const classes = new Classes({ shouldAddClasses: false });
  const getFontAndAttr = new GetFontAndAttr(unboxed(parsed.formatting), classes);
  const getTextSize = new GetTextSize(getFontAndAttr, surface);
  const engraver = new AbstractEngraver(getTextSize, 0, { graceSlurs: true });
  engraver.setStemHeight(stemHeight);
  const { num, den } = parsed.getMeterFraction();
  engraver.measureLength = num / den;
  const renderer: DrawingRenderer = Object.assign(Object.create(Renderer.prototype), {
    paper: surface,
    padding: { left: edge, right: 0, top: 0, bottom: 0 },
    y: 0,
    firefox: false,
    minPadding: 0,
    lineThickness: 0,
    foregroundColor: 'currentColor',
    controller: Object.assign(Object.create(EngraverController.prototype), {
      classes,
      getFontAndAttr,
      getTextSize,
      engraver,
      width: 0,
    }),
  });
  Object.assign(renderer.controller, { renderer });
  renderer.initVerticalSpace();
  return renderer;
}
