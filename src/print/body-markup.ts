import { posix } from 'node:path';
import type { Element, ElementContent, Root, RootContent } from 'hast';
import { problem } from '../../shared/problem.ts';
import type { Page } from '../read/book.ts';
import { call, literal, type Markup, named, words } from './markup.ts';
import { pictureValue } from './picture.ts';
import { type PrintContext, printable } from './print-context.ts';

/** What the text of a page is converted with. */
export interface Running {
  readonly context: PrintContext;
  readonly page: Page;
  /** Makes the markup of the page's block of that index. */
  readonly block: (index: number) => Markup;
  /** Level of the first headings of the text. */
  readonly level: number;
}

type Node = Root | RootContent | ElementContent;

/** Converts a body to markup. */
export function bodyMarkup(body: Root, running: Running): Markup {
  return within(body, running);
}

const within = (node: { readonly children: readonly Node[] }, running: Running): Markup =>
  node.children.map(child => markupOf(child, running)).join('');

function markupOf(node: Node, running: Running): Markup {
  if (node.type === 'text') return textMarkup(node.value, running);
  if (node.type !== 'element') return '';
  const element = elements[node.tagName];
  return element === undefined ? within(node, running) : element(node, running);
}

/** Line ends of the source become spaces. */
function textMarkup(value: string, { context, page }: Running): Markup {
  const text = value.replace(/\s+/g, ' ');
  if (text === ' ') return ' ';
  const place = { file: page.file, line: 1, column: 1 };
  return words(printable(context, text, page.title, place));
}

const wrap =
  (name: string) =>
  (node: Element, running: Running): Markup =>
    call(name, [], within(node, running));

const paragraph = (node: Element, running: Running): Markup =>
  `\n\n${within(node, running).trim()}\n\n`;

/** `h2` is the first level of headings in a page's text: `h1` is the page's title. */
const heading = (node: Element, running: Running): Markup => {
  const depth = Math.max(2, Number(node.tagName.slice(1)));
  const level = Math.min(3, running.level + depth - 2);
  const inner = isOverFootnotes(node)
    ? words(running.context.words.siteWords.footnotes)
    : within(node, running);
  return `\n\n${call('inner', [`${level}`], inner)}\n\n`;
};

/** Whether a heading is the one that reading adds over footnotes: its words depend on the book's language. */
const isOverFootnotes = ({ properties }: Element): boolean =>
  /^note-\d+-label$/.test(String(properties.id ?? ''));

const elements: Readonly<Record<string, (node: Element, running: Running) => Markup>> = {
  p: paragraph,
  div: paragraph,
  h1: heading,
  h2: heading,
  h3: heading,
  h4: heading,
  h5: heading,
  h6: heading,
  em: wrap('emph'),
  strong: wrap('strong'),
  del: wrap('strike'),
  sup: wrap('super'),
  sub: wrap('sub'),
  blockquote: (node, running) =>
    `\n\n${call('quote', [named('block', true)], within(node, running))}\n\n`,
  br: () => '#linebreak();',
  hr: () => '\n\n#divider;\n\n',
  code: wrap('plainly'),
  pre: (node, running) => `\n\n${call('plainly', [], verbatim(node, running))}\n\n`,
  ul: (node, running) => listMarkup('list', node, running),
  ol: (node, running) => listMarkup('enum', node, running),
  a: linkMarkup,
  img: pictureMarkup,
  table: tableMarkup,
  'bow-block': (node, running) => running.block(Number(node.properties.dataBlock)),
};

/** The lines of a code block, with line breaks. */
function verbatim(node: Element, { context, page }: Running): Markup {
  const text = plainText(node).replace(/\n$/, '');
  const place = { file: page.file, line: 1, column: 1 };
  return text
    .split('\n')
    .map(line => words(printable(context, line.replace(/ /g, '\u00a0'), page.title, place)))
    .join('#linebreak();');
}

const plainText = (node: Node): string =>
  node.type === 'text'
    ? node.value
    : 'children' in node
      ? node.children.map(plainText).join('')
      : '';

function listMarkup(name: 'list' | 'enum', node: Element, running: Running): Markup {
  const items = node.children.flatMap(child =>
    child.type === 'element' && child.tagName === 'li'
      ? [`[${within(child, running).trim()}]`]
      : [],
  );
  const start = Number(node.properties.start ?? 1);
  const from = name === 'enum' && start !== 1 ? named('start', start) : null;
  return `\n\n${call(name, [from, ...items])}\n\n`;
}

/** A link to a place in the print gets its page number; one to any other page of the book is only its text. */
function linkMarkup(node: Element, running: Running): Markup {
  // The arrow back from a footnote is of no use on paper.
  if ('dataFootnoteBackref' in node.properties) return '';
  const href = String(node.properties.href ?? '');
  const inner = within(node, running);
  if (/^(https?|mailto|tel):/.test(href)) return call('link', [literal(href)], inner);
  const to = placeOfLink(href, running.page);
  if (to === null || !running.context.places.has(to)) return inner;
  const page = call('page-of', [literal(to)]);
  return `${call('see', [literal(to)], inner)} (${page})`;
}

/** The place in the print of a link of a page: `tune/wet-rope` for `../tunes/wet-rope.html`. null where it is to no tune or lesson. */
export function placeOfLink(href: string, page: Page): string | null {
  const folder = { lesson: 'lessons', tune: 'tunes', page: 'pages' }[page.kind];
  const [path = ''] = href.split(/[?#]/);
  const target = posix.normalize(posix.join(folder, decodeURI(path)));
  const [, kind, name] = /^(tune|lesson|page)s\/([^/]+)\.html$/.exec(target) ?? [];
  return kind && name ? `${kind}/${name}` : null;
}

function pictureMarkup(node: Element, { context, page }: Running): Markup {
  const path = posix.normalize(
    posix.join(posix.dirname(page.file), decodeURI(String(node.properties.src ?? ''))),
  );
  const alt = String(node.properties.alt ?? '');
  const place = { file: page.file, line: 1, column: 1 };
  const said = printable(context, alt, page.title, place);
  const picture = pictureValue(context, path);
  if ('file' in picture) return call('picture', [literal(picture.file), literal(said)]);
  context.problems.push(
    problem('print-picture', place, {
      actual: path,
      facts: { why: picture.why },
      expected: ['PNG', 'JPEG', 'GIF', 'WebP', 'SVG'],
    }),
  );
  return said === '' ? '' : words(`[${said}]`);
}

function tableMarkup(node: Element, running: Running): Markup {
  const rows = rowsOf(node);
  const columns = Math.max(1, ...rows.map(r => r.length));
  const cells = (row: readonly Element[]): string[] =>
    Array.from({ length: columns }, (_, i) => {
      const cell = row[i];
      return `[${cell ? within(cell, running).trim() : ''}]`;
    });
  const [head = [], ...rest] = rows;
  const body = rest.flatMap(cells).join(', ');
  return `\n\n#table(columns: ${columns}, stroke: 0.4pt + rule, table.header(${cells(head).join(', ')}), ${body})\n\n`;
}

const rowsOf = (node: Element): readonly (readonly Element[])[] =>
  node.children.flatMap((child): readonly (readonly Element[])[] => {
    if (child.type !== 'element') return [];
    if (child.tagName !== 'tr') return rowsOf(child);
    return [child.children.filter((c): c is Element => c.type === 'element')];
  });
