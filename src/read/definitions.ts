import type { Definition, FootnoteDefinition, Root, RootContent } from 'mdast';

/**
 * Definitions of the links and footnotes of a page. In Markdown a definition holds for the whole page,
 * wherever it is written; here one in a private note holds in private notes only.
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

/** Name of a definition or a reference; null for other nodes. Footnotes begin with `^`, so links may have equal names. */
function nameOf(node: RootContent): string | null {
  if (!('identifier' in node)) return null;
  return `${node.type.startsWith('footnote') ? '^' : ''}${node.identifier.toLowerCase()}`;
}
