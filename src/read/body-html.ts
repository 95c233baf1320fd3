import type { Element, Root, RootContent } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { siteWords } from '../../shared/words/en/site.ts';

/** Labels of footnotes, in the book's language. */
export interface FootnoteWords {
  readonly footnotes: string;
  /** Label of the link back from a footnote; `reference` is `1`, or `1-2` for its second mention. */
  readonly footnoteBack: (reference: string) => string;
}

// Nodes of type raw are only ever the blocks put in below: `body` is sanitised and has none.
const writer = unified().use(rehypeStringify, { allowDangerousHtml: true }).freeze();

/**
 * Writes a body as HTML, with `blockHtml(index)` in place of each block. Footnotes get their labels here,
 * since reading does not depend on the language of the book.
 */
export function bodyHtml(
  body: Root,
  blockHtml: (index: number) => string,
  words: FootnoteWords = siteWords,
): string {
  // Most tunes have no story: this saves a run of the writer on each of their pages.
  if (body.children.length === 0) return '';
  const filled = (node: RootContent): RootContent => {
    if (node.type !== 'element') return node;
    if (node.tagName === 'bow-block') {
      const raw = { type: 'raw', value: blockHtml(Number(node.properties.dataBlock)) };
      return raw as unknown as RootContent;
    }
    return {
      ...node,
      properties: wordedProperties(node, words),
      children: isFootnotesHeading(node)
        ? [{ type: 'text', value: words.footnotes }]
        : (node.children.map(filled) as Element['children']),
    };
  };
  return writer.stringify({ ...body, children: body.children.map(filled) });
}

/** The properties of an element, with a label where it is a link back from a footnote. */
const wordedProperties = ({ properties }: Element, words: FootnoteWords): Element['properties'] =>
  'dataFootnoteBackref' in properties
    ? { ...properties, ariaLabel: words.footnoteBack(String(properties.ariaLabel)) }
    : properties;

/** The heading over a page's footnotes: see `toBody`. */
const isFootnotesHeading = ({ properties }: Element): boolean =>
  /^note-\d+-label$/.test(String(properties.id ?? ''));
