import type { Attributes, Shape } from './drawing-surface.ts';
import { type Outline, printOutline, readOutline } from './write-path.ts';

/** Behind the surface and its shapes: reached only by a call that they lack. */
export const beyond = new Proxy(
  {},
  {
    get(_, call) {
      if (typeof call === 'symbol') return undefined;
      throw new Error(`the drawing surface lacks ${call}`);
    },
  },
);

/** Only groups hold others. */
const none = Object.freeze([]) as unknown as Shape[];

/** Our own surface's shape; a glyph's where its outline is given. */
export class PlainShape implements Shape {
  readonly children: Shape[];
  text = '';
  private readonly given: Record<string, string> = {};

  constructor(
    readonly tag: Shape['tag'],
    attributes: Attributes,
    private readonly glyph: Outline | null,
  ) {
    this.children = tag === 'g' ? [] : none;
    for (const name in attributes) {
      const value = attributes[name];
      if (value !== undefined) this.given[name] = `${value}`;
    }
    // Holds the place that abcjs gives it among the others.
    if (glyph) this.given.path = '';
  }

  get attributes(): Shape['attributes'] {
    if (this.glyph && this.given.path === '') this.given.path = printOutline(this.glyph);
    return this.given;
  }

  get outline(): Outline | null {
    return this.glyph ?? readOutline(this.given.path ?? '');
  }

  setAttribute(name: string, value: unknown): void {
    this.given[name] = `${value}`;
  }

  getAttribute(name: string): string | null {
    return (name === 'path' ? this.attributes : this.given)[name] ?? null;
  }
}
Object.setPrototypeOf(PlainShape.prototype, beyond);

/** A shape with no children; attributes without a value are left out. */
export const makeShape = (tag: Shape['tag'], attributes: Attributes = {}): Shape =>
  new PlainShape(tag, attributes, null);
