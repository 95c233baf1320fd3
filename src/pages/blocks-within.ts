import type { Block, Page } from '../read/book.ts';

interface BodyNode {
  readonly properties?: { readonly dataBlock?: unknown };
  readonly children?: readonly object[];
}

/** The blocks of a page that stand within a body of one of them, at any depth. */
export function blocksWithin(node: BodyNode, page: Page): readonly Block[] {
  const index = node.properties?.dataBlock;
  const own = index === undefined ? undefined : page.blocks[Number(index)];
  const inner = own && 'body' in own ? blocksWithin(own.body as BodyNode, page) : [];
  const below = (node.children ?? []).flatMap(child => blocksWithin(child as BodyNode, page));
  return own ? [own, ...inner, ...below] : below;
}
