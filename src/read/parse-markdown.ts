import type { Root as Hast } from 'hast';
import type { Root } from 'mdast';
import rehypeSanitize, { defaultSchema } from 'rehype-sanitize';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { siteWords } from '../../shared/words/en/site.ts';

const parser = unified()
  .use(remarkParse)
  .use(remarkFrontmatter, ['yaml'])
  .use(remarkGfm, { singleTilde: false })
  .use(remarkDirective)
  .freeze();

/** Parses CommonMark with GFM, front matter and directives. */
export const parseMarkdown = (text: string): Root => parser.parse(text);

/**
 * What a body may hold: the list of the sanitiser, without what loads from other sites, and with the mark
 * of a block. Ids get no prefix: raw HTML is dropped, so none comes from the teacher.
 */
const schema: typeof defaultSchema = {
  ...defaultSchema,
  clobber: [],
  tagNames: [...(defaultSchema.tagNames ?? []), 'bow-block'],
  attributes: { ...defaultSchema.attributes, 'bow-block': ['dataBlock'] },
  protocols: {
    ...defaultSchema.protocols,
    href: ['http', 'https', 'mailto', 'tel'],
    src: [],
  },
};

/**
 * Converts Markdown to a sanitised tree of HTML. `number` is part of the ids of footnotes, and must be
 * different for each body of a page.
 */
export function toBody(tree: Root, number: number): Hast {
  // Most tunes have no story: this saves two runs over an empty tree.
  if (tree.children.length === 0) return { type: 'root', children: [] };
  const body = unified()
    .use(remarkRehype, {
      clobberPrefix: `note-${number}-`,
      // `bodyHtml` replaces both by words in the language of the book.
      footnoteLabel: siteWords.footnotes,
      footnoteBackLabel: (index, again) => `${index + 1}${again > 1 ? `-${again}` : ''}`,
    })
    .use(rehypeSanitize, schema)
    .runSync(tree);
  visit(body, 'element', ({ properties }) => {
    if (properties.id === 'footnote-label') properties.id = `note-${number}-label`;
    if (properties.ariaDescribedBy) properties.ariaDescribedBy = [`note-${number}-label`];
  });
  return body;
}
