import { glyphNamed } from './glyph-outlines.ts';
import { beyond, lacking, makeShape, PlainShape } from './plain-shape.ts';
import type { Outline } from './write-path.ts';

/**
 * What abcjs draws on, in place of a document: just the calls it makes, each recorded as a plain
 * shape. `write-shapes.ts` turns the shapes into light SVG. `document-paper.ts` is the reference
 * that tests hold it to, and draws a tune that calls for more.
 */
export interface Shape {
  readonly tag: 'g' | 'path' | 'text';
  readonly attributes: Readonly<Record<string, string>>;
  /** Where the shape is a glyph; its `path` is printed only if it is asked for. */
  readonly outline: Outline | null;
  readonly children: Shape[];
  text: string;
  setAttribute(name: string, value: unknown): void;
  getAttribute(name: string): string | null;
}

/** Width and height of a text in drawing units. */
export type MeasureText = (text: string, size: number) => { width: number; height: number };

export type Attributes = Readonly<Record<string, unknown>>;

export interface Surface {
  /** The shapes drawn so far, in order. */
  readonly root: Shape;
  openGroup(options?: Attributes): Shape;
  closeGroup(): Shape | null;
  path(attributes: Attributes): Shape;
  pathToBack(attributes: Attributes): Shape;
  text(text: string, attributes: Attributes): Shape;
  /** Beyond abcjs's own calls, see `glyph-outlines.ts`: a glyph by its name; null for none. */
  glyph(name: string, x: number, y: number, attributes: Attributes): Shape | null;
  getTextSize(text: string | number, attributes: Attributes): { width: number; height: number };
  setAttributeOnElement(shape: Shape, attributes: Attributes): void;
}

/** A surface, and how to get at what was drawn on it. */
export interface Paper {
  readonly surface: object;
  readonly root: () => Shape;
  /** The shape of what the surface gave abcjs for something drawn. */
  readonly shapeOf: (drawn: object) => Shape;
}

export type MakePaper = (measure: MeasureText) => Paper;

/** A paper of our own surface. */
export const plainPaper: MakePaper = measure => {
  const surface = makeSurface(measure);
  return { surface, root: () => surface.root, shapeOf: drawn => drawn as Shape };
};

/** Whether a drawing failed for a call that our surface lacks. */
export const isLackingCall = (error: unknown): boolean =>
  error instanceof Error && error.name === lacking;

export function makeSurface(measure: MeasureText): Surface {
  const root = makeShape('g');
  const open: Shape[] = [root];
  const top = (): Shape => open[open.length - 1] as Shape;
  const add = (shape: Shape): Shape => {
    top().children.push(shape);
    return shape;
  };
  const surface: Surface = {
    root,
    openGroup(options = {}) {
      const group = add(makeShape('g', options));
      open.push(group);
      return group;
    },
    closeGroup() {
      const group = open.pop() as Shape;
      if (group.children.length > 0) return group;
      const siblings = top().children;
      siblings.splice(siblings.indexOf(group), 1);
      return null;
    },
    path: attributes => add(makeShape('path', attributes)),
    // Stems, bar and ledger lines. Within a group, where they all are, abcjs sends nothing behind.
    pathToBack: attributes => add(makeShape('path', attributes)),
    text(text, attributes) {
      const shape = makeShape('text', attributes);
      shape.text = text;
      return add(shape);
    },
    glyph(name, x, y, attributes) {
      const glyph = glyphNamed(name);
      if (!glyph) return null;
      const outline = { x: glyph.x + x, y: glyph.y + y, steps: glyph.steps };
      return add(new PlainShape('path', attributes, outline));
    },
    getTextSize(text, attributes) {
      const line = `${text}`;
      return line.trim() === ''
        ? { width: 0, height: 0 }
        : measure(line, Number(attributes['font-size']));
    },
    setAttributeOnElement(shape, attributes) {
      for (const [name, value] of Object.entries(attributes)) shape.setAttribute(name, value);
    },
  };
  return Object.setPrototypeOf(surface, beyond) as Surface;
}
