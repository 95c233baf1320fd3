import Svg from 'abcjs/src/write/svg.js';
import { JSDOM } from 'jsdom';
import type { MakePaper, Shape } from '../../src/engrave/drawing-surface.ts';
import { makeShape } from '../../src/engrave/plain-shape.ts';

/**
 * Draws with abcjs's own surface in a document by jsdom: the reference that ours is held to.
 *
 * jsdom lays out no text, so that its elements are given the sizes that the site's font has.
 */
export function inDocument<T>(draw: (makePaper: MakePaper) => T): T {
  const { window } = new JSDOM('<!doctype html><body></body>');
  const names = ['window', 'document', 'navigator'] as const;
  const before = names.map(name => Object.getOwnPropertyDescriptor(globalThis, name));
  const { document, navigator } = window;
  const now = { window, document, navigator };
  for (const name of names) {
    Object.defineProperty(globalThis, name, { value: now[name], configurable: true });
  }
  try {
    return draw(documentPaper(document, window.SVGElement.prototype));
  } finally {
    names.forEach((name, i) => {
      const was = before[i];
      if (was) Object.defineProperty(globalThis, name, was);
      else Reflect.deleteProperty(globalThis, name);
    });
    window.close();
  }
}

const documentPaper =
  (document: Document, prototype: object): MakePaper =>
  measure => {
    Object.assign(prototype, {
      getBBox(this: SVGElement) {
        return measure(this.textContent ?? '', Number(this.getAttribute('font-size')));
      },
    });
    const place = document.createElement('div');
    const surface = new Svg(place);
    const known = new Map<object, Shape>();
    return {
      surface,
      root() {
        const root = makeShape('g');
        for (const child of surface.svg.children) root.children.push(readElement(child, known));
        return root;
      },
      shapeOf(drawn) {
        const shape = known.get(drawn);
        if (!shape) throw new Error('abcjs names something as drawn that is not in its drawing');
        return shape;
      },
    };
  };

/** An element of abcjs's drawing as a shape, and all in it. */
function readElement(element: Element, known: Map<object, Shape>): Shape {
  const { d, ...others } = Object.fromEntries(
    [...element.attributes].map(({ name, value }) => [name, value]),
  );
  const tag = element.tagName === 'g' || element.tagName === 'text' ? element.tagName : 'path';
  const shape = makeShape(
    tag,
    tag === 'path' ? { ...others, path: d ?? outlineOf(element) } : others,
  );
  if (tag === 'text') shape.text = element.textContent ?? '';
  if (tag === 'g') {
    for (const child of element.children) shape.children.push(readElement(child, known));
  }
  known.set(element, shape);
  return shape;
}

/** A `<line>` or `<rect>`, as abcjs draws here and there, as a path. */
function outlineOf(element: Element): string {
  const n = (name: string): number => Number(element.getAttribute(name));
  if (element.tagName === 'line') return `M ${n('x1')} ${n('y1')} L ${n('x2')} ${n('y2')}`;
  if (element.tagName !== 'rect') throw new Error(`abcjs draws a <${element.tagName}>`);
  const [left, top] = [n('x'), n('y')];
  const [right, bottom] = [left + n('width'), top + n('height')];
  return `M ${left} ${top} L ${right} ${top} L ${right} ${bottom} L ${left} ${bottom} z`;
}
