/**
 * What abcjs draws on, in place of a document: just the calls it makes, each recorded as a plain
 * shape. `write-shapes.ts` turns the shapes into light SVG. `document-paper.ts` is the reference
 * that tests hold it to, and draws a tune that calls for more.
 */
export interface Shape {
  tag: 'g' | 'path' | 'text';
  readonly attributes: Record<string, string>;
  readonly children: Shape[];
  text: string;
  setAttribute(name: string, value: unknown): void;
  getAttribute(name: string): string | null;
}

/** Width and height of a text in drawing units. */
export type MeasureText = (text: string, size: number) => { width: number; height: number };

type Attributes = Readonly<Record<string, unknown>>;

export interface Surface {
  /** The shapes drawn so far, in order. */
  readonly root: Shape;
  openGroup(options?: Attributes): Shape;
  closeGroup(): Shape | null;
  path(attributes: Attributes): Shape;
  pathToBack(attributes: Attributes): Shape;
  text(text: string, attributes: Attributes): Shape;
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

const lacking = 'LackingCall';

/** Whether a drawing failed for a call that our surface lacks. */
export const isLackingCall = (error: unknown): boolean =>
  error instanceof Error && error.name === lacking;

/** Behind the surface and its shapes: reached only by a call that they lack. */
const beyond = new Proxy(
  {},
  {
    get(_, call) {
      if (typeof call === 'symbol') return undefined;
      throw Object.assign(new Error(`the drawing surface lacks ${call}`), {
        name: lacking,
      });
    },
  },
);

export function makeSurface(measure: MeasureText): Surface {
  const root = makeShape('g');
  const open: Shape[] = [root];
  const top = (): Shape => open[open.length - 1] as Shape;
  const add = (shape: Shape, back: boolean): Shape => {
    // abcjs never sends a shape behind others of its own group, only a whole group behind all.
    if (back && open.length === 1) root.children.unshift(shape);
    else top().children.push(shape);
    return shape;
  };
  const surface: Surface = {
    root,
    openGroup(options = {}) {
      const group = add(makeShape('g', options), options.prepend === true);
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
    path: attributes => add(makeShape('path', attributes), false),
    pathToBack: attributes => add(makeShape('path', attributes), true),
    text(text, attributes) {
      const shape = makeShape('text', attributes);
      shape.text = text;
      return add(shape, false);
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

/** A shape with no children; attributes without a value are left out. */
export function makeShape(tag: Shape['tag'], attributes: Attributes = {}): Shape {
  const shape: Shape = Object.setPrototypeOf(
    {
      tag,
      attributes: {},
      children: [],
      text: '',
      setAttribute(name, value) {
        this.attributes[name] = `${value}`;
      },
      getAttribute(name) {
        return this.attributes[name] ?? null;
      },
    } satisfies Shape,
    beyond,
  );
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined) shape.setAttribute(name, value);
  }
  return shape;
}
