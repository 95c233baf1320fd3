import { glyphNamed } from './glyph-outlines.ts';
import { beyond, makeShape, PlainShape } from './plain-shape.ts';
import type { Outline } from './write-path.ts';

/**
 * What abcjs draws on, in place of a document: just the calls it makes, each recorded as a plain
 * shape. `write-shapes.ts` turns the shapes into light SVG. Tests hold it to a document by jsdom.
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

export const makeSurface = (measure: MeasureText): Surface => new Surface(measure);

class Surface {
  /** The shapes drawn so far, in order. */
  readonly root: Shape = makeShape('g');
  /** The groups that are open, the innermost last. */
  private readonly open: Shape[] = [this.root];

  constructor(private readonly measure: MeasureText) {}

  private add(shape: Shape, isBehind = false): Shape {
    // abcjs never sends a shape behind others of its own group, only a whole group behind all.
    if (isBehind && this.open.length === 1) this.root.children.unshift(shape);
    else this.open[this.open.length - 1]?.children.push(shape);
    return shape;
  }

  openGroup(options: Attributes = {}): Shape {
    const group = this.add(makeShape('g', options), options.prepend === true);
    this.open.push(group);
    return group;
  }

  closeGroup(): Shape | null {
    const group = this.open.pop();
    if (group === undefined || group.children.length > 0) return group ?? null;
    const siblings = this.open[this.open.length - 1]?.children ?? [];
    siblings.splice(siblings.indexOf(group), 1);
    return null;
  }

  path(attributes: Attributes): Shape {
    return this.add(makeShape('path', attributes));
  }

  pathToBack(attributes: Attributes): Shape {
    return this.add(makeShape('path', attributes), true);
  }

  text(text: string, attributes: Attributes): Shape {
    const shape = makeShape('text', attributes);
    shape.text = text;
    return this.add(shape);
  }

  /** Beyond abcjs's own calls, see `glyph-outlines.ts`: a glyph by its name; null for none. */
  glyph(name: string, x: number, y: number, attributes: Attributes): Shape | null {
    const glyph = glyphNamed(name);
    if (!glyph) return null;
    const outline = { x: glyph.x + x, y: glyph.y + y, steps: glyph.steps };
    return this.add(new PlainShape('path', attributes, outline));
  }

  getTextSize(text: string | number, attributes: Attributes): { width: number; height: number } {
    const line = `${text}`;
    if (line.trim() === '') return { width: 0, height: 0 };
    return this.measure(line, Number(attributes['font-size']));
  }

  setAttributeOnElement(shape: Shape, attributes: Attributes): void {
    for (const [name, value] of Object.entries(attributes)) shape.setAttribute(name, value);
  }
}
Object.setPrototypeOf(Surface.prototype, beyond);
