import type { Definition, FootnoteDefinition, Root, RootContent } from 'mdast';

/**
 * What a page's links and footnotes refer to. In Markdown definitions serve the whole page wherever
 * they are written; here those in private notes serve private notes only.
 */
export interface Definitions {
  readonly open: readonly AnyDefinition[];
  readonly hidden: readonly AnyDefinition[];
  /** Whether a reference leads to a definition that only private notes have. */
  readonly isHidden: (reference: RootContent) => boolean;
}

/** A definition of a link or of a footnote. */
export type AnyDefinition = Definition | FootnoteDefinition;

/** Whether a node defines a link or a footnote. */
export const isDefinition = (node: RootContent): node is AnyDefinition =>
  node.type === 'definition' || node.type === 'footnoteDefinition';

/** Gathers the definitions of a page, those in private notes apart. */
export function definitionsOf(tree: Root): Definitions {
  const open: AnyDefinition[] = [];
  const hidden: AnyDefinition[] = [];
  const look = (nodes: readonly RootContent[], inPrivate: boolean): void => {
    for (const node of nodes) {
      if (isDefinition(node)) (inPrivate ? hidden : open).push(node);
      const within = inPrivate || (node.type === 'containerDirective' && node.name === 'private');
      if ('children' in node) look(node.children as RootContent[], within);
    }
  };
  look(tree.children, false);
  const [openNames, hiddenNames] = [new Set(open.map(nameOf)), new Set(hidden.map(nameOf))];
  return {
    open,
    hidden,
    isHidden(reference) {
      const name = nameOf(reference);
      return name !== null && hiddenNames.has(name) && !openNames.has(name);
    },
  };
}

/** Footnotes and links have names apart. */
function nameOf(node: RootContent): string | null {
  if (!('identifier' in node)) return null;
  return `${node.type.startsWith('footnote') ? '^' : ''}${node.identifier.toLowerCase()}`;
}
