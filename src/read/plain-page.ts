import type { Code, Root, RootContent, Yaml } from 'mdast';
import type { ContainerDirective } from 'mdast-util-directive';

/**
 * The tree of a page that holds nothing but tunes: front matter, `:::tune` and fences of ABC, with
 * no word around them. Nearly every page of a large collection is one, and what Markdown makes of
 * it can be told line by line, in a hundredth of the time that the parser takes:
 *
 *     :::tune{#fog-signal start=up}
 *     ```abc
 *     X:1
 *     ```
 *     :::
 *
 * null where a single line is anything else, even by a space: then it is the parser's to read. So
 * are all pages with private notes, on whose fences two readers must agree. The tree is what the
 * parser makes, to the last offset; `tests/read/plain-page.test.ts` holds it to that.
 */
export function plainPage(text: string): Root | null {
  // Of tabs and NUL the parser has ways of its own.
  if (/[\t\r\0]/.test(text)) return null;
  const page = linesOf(text);
  const head = frontMatter(page);
  const children: RootContent[] = head ? [head] : [];
  let at = pastBlank(page, head?.position.end.line ?? 0);
  while (at < page.lines.length) {
    const next = tuneAt(page, at) ?? abcAt(page, at);
    if (next === null) return null;
    children.push(next);
    at = pastBlank(page, next.position.end.line);
  }
  const position = span(page, 0, page.lines.length - 1);
  return children.length > 0 ? { type: 'root', children, position } : null;
}

interface Lines {
  readonly lines: readonly string[];
  /** Offset at which each of them begins. */
  readonly starts: readonly number[];
}

function linesOf(text: string): Lines {
  const lines = text.split('\n');
  const starts: number[] = [];
  let offset = 0;
  for (const line of lines) {
    starts.push(offset);
    offset += line.length + 1;
  }
  return { lines, starts };
}

type Position = NonNullable<Root['position']>;

/** A node that has its place, as all have that are read. */
type Placed<T> = T & { readonly position: Position };

/** From the start of one line to the end of another, counted from 0. */
function span({ lines, starts }: Lines, from: number, to: number): Position {
  const point = (at: number, column: number): Position['start'] => ({
    line: at + 1,
    column: column + 1,
    offset: (starts[at] ?? 0) + column,
  });
  return { start: point(from, 0), end: point(to, lines[to]?.length ?? 0) };
}

function pastBlank({ lines }: Lines, from: number): number {
  let at = from;
  while (lines[at] === '') at += 1;
  return at;
}

/** The line that closes a fence: the first that looks like any, if it is the one that fits. */
function closing(page: Lines, from: number, fence: string): number | null {
  let at = from;
  while (at < page.lines.length && !/^ *(?:---|```|:::)/.test(page.lines[at] ?? '')) at += 1;
  return page.lines[at] === fence ? at : null;
}

const inside = ({ lines }: Lines, from: number, to: number): string =>
  lines.slice(from + 1, to).join('\n');

function frontMatter(page: Lines): Placed<Yaml> | null {
  const end = page.lines[0] === '---' ? closing(page, 1, '---') : null;
  if (end === null) return null;
  return { type: 'yaml', value: inside(page, 0, end), position: span(page, 0, end) };
}

function abcAt(page: Lines, from: number): Placed<Code> | null {
  const end = page.lines[from] === '```abc' ? closing(page, from + 1, '```') : null;
  if (end === null) return null;
  const value = inside(page, from, end);
  return { type: 'code', lang: 'abc', meta: null, value, position: span(page, from, end) };
}

function tuneAt(page: Lines, from: number): Placed<ContainerDirective> | null {
  const [, colons, written] = /^(:{3,})tune(?:\{(.+)\})?$/.exec(page.lines[from] ?? '') ?? [];
  const attributes = colons === undefined ? null : attributesOf(written);
  const abc = attributes && abcAt(page, pastBlank(page, from + 1));
  if (!attributes || !abc) return null;
  const end = pastBlank(page, abc.position.end.line);
  if (page.lines[end] !== colons) return null;
  const position = span(page, from, end);
  return { type: 'containerDirective', name: 'tune', attributes, children: [abc], position };
}

const attribute = '(?:#[\\w-]+|[a-z-]+=(?:[\\w-]+|"[^"&]*"))';
const plainAttributes = new RegExp(`^${attribute}(?: ${attribute})*$`);

/** Attributes with one space between them; null where they hold more than names and plain values. */
function attributesOf(written: string | undefined): Record<string, string> | null {
  if (written === undefined) return {};
  if (!plainAttributes.test(written)) return null;
  const found: Record<string, string> = {};
  for (const [, id, name, bare, quoted] of written.matchAll(
    /#([\w-]+)|([a-z-]+)=(?:([\w-]+)|"([^"]*)")/g,
  )) {
    // Classes are gathered by the parser, not replaced.
    if (name === 'class') return null;
    found[name ?? 'id'] = id ?? bare ?? quoted ?? '';
  }
  return found;
}
