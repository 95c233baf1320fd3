import type { Element, Root, RootContent } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { siteWords } from '../../shared/words/en/site.ts';

/** What a page says of its footnotes, in the book's language. */
export interface FootnoteWords {
  readonly footnotes: string;
  /** Name of the way back from a footnote; `reference` is `1`, or `1-2` of its second mention. */
  readonly footnoteBack: (reference: string) => string;
}

// Nodes of type raw are only ever the blocks put in below: `body` is sanitised and has none.
const writer = unified().use(rehypeStringify, { allowDangerousHtml: true }).freeze();

/**
 * The HTML of a body, with `blockHtml(index)` where the block of that index stands. A body is read
 * before the language of its book matters, so its footnotes get their words here.
 */
export function bodyHtml(
  body: Root,
  blockHtml: (index: number) => string,
  words: FootnoteWords = siteWords,
): string {
  // Most tunes have no words of their own, and a book has a page of each.
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

/** The properties of an element, its way back from a footnote named. */
const wordedProperties = ({ properties }: Element, words: FootnoteWords): Element['properties'] =>
  'dataFootnoteBackref' in properties
    ? { ...properties, ariaLabel: words.footnoteBack(String(properties.ariaLabel)) }
    : properties;

/** The heading over a page's footnotes: see `toBody`. */
const isFootnotesHeading = ({ properties }: Element): boolean =>
  /^note-\d+-label$/.test(String(properties.id ?? ''));
