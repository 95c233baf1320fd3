/** An element with words or other elements in it. */
export function element<K extends keyof HTMLElementTagNameMap>(
  name: K,
  more: Partial<HTMLElementTagNameMap[K]> = {},
  ...inside: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  const made = Object.assign(document.createElement(name), more);
  made.append(...inside);
  return made;
}

/** The one element with this attribute; a page without it is a defect of ours. */
export function part<E extends HTMLElement = HTMLElement>(page: ParentNode, name: string): E {
  const found = page.querySelector<E>(`[data-${name}]`);
  if (!found) throw new Error(`the page has no data-${name}`);
  return found;
}
