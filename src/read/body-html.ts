import type { Element, Root, RootContent } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';

// Nodes of type raw are only ever the blocks put in below: `body` is sanitised and has none.
const writer = unified().use(rehypeStringify, { allowDangerousHtml: true }).freeze();

/** The HTML of a body, with `blockHtml(index)` where the block of that index stands. */
export function bodyHtml(body: Root, blockHtml: (index: number) => string): string {
  const tree = structuredClone(body);
  visit(tree, 'element', (node: Element, index, parent) => {
    if (node.tagName !== 'bow-block' || !parent || index === undefined) return;
    const raw = { type: 'raw', value: blockHtml(Number(node.properties.dataBlock)) };
    parent.children[index] = raw as unknown as Element;
  });
  return writer.stringify(tree as Root & { children: RootContent[] });
}
