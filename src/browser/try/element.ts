import type { Direction } from '../../../shared/music/tune.ts';

type Attributes = Readonly<Record<string, string | boolean>>;

/** An element with attributes (`true` for one without a value, `false` to leave it out) and children. */
export function element<K extends keyof HTMLElementTagNameMap>(
  name: K,
  attributes: Attributes = {},
  ...children: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== false) made.setAttribute(key, value === true ? '' : value);
  }
  made.append(...children);
  return made;
}

/** A button that does nothing but what its `press` says. */
export function button(
  label: string,
  press: () => void,
  attributes: Attributes = {},
): HTMLButtonElement {
  const made = element('button', { type: 'button', ...attributes }, label);
  made.addEventListener('click', press);
  return made;
}

export function svgElement(name: string, attributes: Readonly<Record<string, string>>): SVGElement {
  const made = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
}

/** The sign of a stroke, from the symbols that every page has. */
export function strokeSign(direction: Direction): SVGElement {
  const sign = svgElement('svg', {
    class: `sign sign-${direction}`,
    viewBox: '0 0 12 12',
    'aria-hidden': 'true',
  });
  sign.append(svgElement('use', { href: `#sign-${direction}` }));
  return sign;
}
