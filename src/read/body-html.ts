import type { Element, Root, RootContent } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
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
  const tree = structuredClone(body);
  visit(tree, 'element', (node: Element, index, parent) => {
    if (isFootnotesHeading(node)) node.children = [{ type: 'text', value: words.footnotes }];
    if ('dataFootnoteBackref' in node.properties) {
      node.properties.ariaLabel = words.footnoteBack(String(node.properties.ariaLabel));
    }
    if (node.tagName !== 'bow-block' || !parent || index === undefined) return;
    const raw = { type: 'raw', value: blockHtml(Number(node.properties.dataBlock)) };
    parent.children[index] = raw as unknown as Element;
  });
  return writer.stringify(tree as Root & { children: RootContent[] });
}

/** The heading over a page's footnotes: see `toBody`. */
const isFootnotesHeading = ({ properties }: Element): boolean =>
  /^note-\d+-label$/.test(String(properties.id ?? ''));
