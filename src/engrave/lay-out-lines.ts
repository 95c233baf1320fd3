import AbstractEngraver from 'abcjs/src/write/creation/abstract-engraver.js';
import drawStaffGroup from 'abcjs/src/write/draw/staff-group.js';
import EngraverController from 'abcjs/src/write/engraver-controller.js';
import Classes from 'abcjs/src/write/helpers/classes.js';
import GetFontAndAttr from 'abcjs/src/write/helpers/get-font-and-attr.js';
import GetTextSize from 'abcjs/src/write/helpers/get-text-size.js';
import layout from 'abcjs/src/write/layout/layout.js';
import Renderer from 'abcjs/src/write/renderer.js';
import { type MeasureText, makeSurface, type Shape } from './drawing-surface.ts';
import type { AbcElement, AbsoluteElement, StaffGroup } from './laid-line.ts';
import type { ParsedTune } from './split-lines.ts';

/** Half a staff space, in drawing units. */
export const step = 3.875;

/** Room before the first sign of a line. */
const edge = 8;

/** A line to lay out: elements of abcjs's parse, after the signs that are given. */
export interface LineRequest {
  readonly elements: readonly AbcElement[];
  readonly clef?: object;
  readonly key?: object;
  readonly meter?: object | null;
}

/** A line with its positions fixed, not yet drawn. */
export interface LaidLine {
  readonly group: StaffGroup;
  /**
   * Draws it, vertical positions counted from staff step 0 downwards, so that the lines of the
   * staff are at -2 to -10 steps. Each element's shapes stand in one group.
   */
  draw(): { readonly root: Shape; readonly shapeOf: ReadonlyMap<AbsoluteElement, Shape> };
}

/** Stems of three and a half spaces and a little: shorter than abcjs's own, to save height. */
const stemHeight = 30;

/** abcjs stops stretching a line this near to the width asked for. */
const near = 2;

/** Lines laid out alike, each as wide as `width` within two units, or narrower where it is sparse. */
export interface LaidLines {
  readonly width: number;
  readonly lines: readonly LaidLine[];
}

/**
 * Lays out lines of one tune, each stretched to `width`, or to the widest where one needs more, so
 * that cells are alike.
 */
export function layOutLines(
  parsed: ParsedTune,
  lines: readonly LineRequest[],
  width: number,
  measure: MeasureText,
  stem = stemHeight,
): LaidLines {
  const laid = layOutOnce(parsed, lines, width, measure, stem);
  const needed = laid.width - edge;
  return needed > width + near ? layOutOnce(parsed, lines, needed, measure, stem) : laid;
}

function layOutOnce(
  parsed: ParsedTune,
  lines: readonly LineRequest[],
  width: number,
  measure: MeasureText,
  stem: number,
): LaidLines {
  const renderer = makeRenderer(parsed, makeSurface(measure), stem);
  const { engraver } = renderer.controller;
  // abcjs writes into what it lays out, so it gets a copy.
  const page = structuredClone(lines).map(({ elements, clef, key, meter }, i) => {
    const staff = {
      clef: clef ?? { type: 'none' },
      key: key ?? { accidentals: [] },
      ...(meter && { meter }),
      voices: [elements],
    };
    // Where a slur or tie from the cell before begins: at the edge.
    engraver.startlimitelem = { x: edge - 14, w: 0 };
    return { staff: [staff], staffGroup: engraver.createABCLine([staff], null, i) };
  });
  const formatting = { ...parsed.formatting, stretchlast: 1 };
  layout(renderer, { lines: page, formatting }, width, 30, false, undefined);
  return {
    width: Math.max(width + edge, ...page.map(({ staffGroup }) => staffGroup.w)),
    lines: page.map(({ staffGroup }, i) => ({
      group: staffGroup,
      draw: () => drawLine(renderer, staffGroup, i, measure),
    })),
  };
}

function drawLine(
  renderer: DrawingRenderer,
  group: StaffGroup,
  index: number,
  measure: MeasureText,
): ReturnType<LaidLine['draw']> {
  const surface = makeSurface(measure);
  const shapeOf = new Map<AbsoluteElement, Shape>();
  renderer.paper = surface;
  renderer.y = -(group.staffs[0]?.top ?? 0) * step;
  const selectables = {
    add: (element: AbsoluteElement, shape: Shape) => void shapeOf.set(element, shape),
    wrapSvgEl: () => {},
  };
  drawStaffGroup(renderer, group, selectables, index);
  return { root: surface.root, shapeOf };
}

interface DrawingRenderer {
  paper: object;
  y: number;
  readonly controller: { readonly engraver: InstanceType<typeof AbstractEngraver> };
  initVerticalSpace(): void;
}

/** What abcjs's own controller would set up, without its page, title, selection and document. */
function makeRenderer(parsed: ParsedTune, surface: object, stem: number): DrawingRenderer {
  const classes = new Classes({ shouldAddClasses: false });
  const getFontAndAttr = new GetFontAndAttr(parsed.formatting, classes);
  const getTextSize = new GetTextSize(getFontAndAttr, surface);
  const engraver = new AbstractEngraver(getTextSize, 0, { graceSlurs: true });
  engraver.setStemHeight(stem);
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
