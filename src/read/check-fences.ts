import type { Heading, Nodes, Paragraph, Root, RootContent, TableCell } from 'mdast';
import { toString as plainText } from 'mdast-util-to-string';
import { at } from '../../shared/must.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { type ScannedContainer, scanFences } from './scan-fences.ts';
import { offsetOf, placeAt, positionOf, type SourceText } from './source-text.ts';

/**
 * Problems with the container fences of a file. Two readers must agree on every container, its
 * name, first and last line: ours, by lines (`scan-fences.ts`), and remark's. Besides, no run of
 * three colons may be left in running text: it would be a fence that nobody read as one.
 *
 * While this answers with an empty list, what stands in `:::private` for the one reader stands in
 * it for the other.
 */
export function checkFences(source: SourceText, tree: Root, firstLine: number): readonly Problem[] {
  const scan = scanFences(source, firstLine);
  if (scan.problems.length > 0) return scan.problems;
  const differing = compareContainers(source.file, scan.containers, containersOf(tree));
  return differing.length > 0 ? differing : leftInText(source, tree);
}

interface Span {
  readonly name: string;
  readonly open: number;
  readonly close: number;
}

function containersOf(tree: Root): readonly Span[] {
  const spans: Span[] = [];
  walk(tree, node => {
    if (node.type !== 'containerDirective') return;
    const { start, end } = positionOf(node);
    spans.push({ name: node.name, open: start.line, close: end.line });
  });
  return spans;
}

function compareContainers(
  file: string,
  ours: readonly ScannedContainer[],
  remarks: readonly Span[],
): readonly Problem[] {
  const key = (span: Span): string => `${span.name} ${span.open} ${span.close}`;
  const [mine, theirs] = [new Set(ours.map(key)), new Set(remarks.map(key))];
  const odd = [
    ...ours.filter(span => !theirs.has(key(span))),
    ...remarks.filter(span => !mine.has(key(span))),
  ].sort((a, b) => a.open - b.open);
  const first = odd[0];
  if (!first) return [];
  const facts = { name: first.name, opened: first.open, closed: first.close };
  return [
    problem('fence-ambiguous', placeAt(file, first.open, 1), {
      actual: `:::${first.name}`,
      facts,
    }),
  ];
}

/** Fences and comments that the parser took for prose. */
function leftInText(source: SourceText, tree: Root): readonly Problem[] {
  return proseOf(tree).flatMap(({ text, node }) => {
    const colons = /:{3,}\S*/.exec(text)?.[0];
    const comment = /<!--|-->/.exec(text)?.[0];
    return [
      ...(colons ? [inProse('fence-in-text', source, node, colons)] : []),
      ...(comment ? [inProse('comment-broken', source, node, comment)] : []),
    ];
  });
}

/** Problems with blocks and footnotes that the parser took for prose. None of them can make private text public. */
export function checkProse(source: SourceText, tree: Root): readonly Problem[] {
  return proseOf(tree).flatMap(({ text, node }) => {
    const line = /(?:^|\n)[ \t]*(::[ \t]*\p{L}[\p{L}-]*)/u.exec(text)?.[1];
    const inLine = /(?<![:\p{L}])(::\p{L}[\p{L}-]*)[ \t]*[{[]/u.exec(text)?.[1];
    const block = line ?? inLine;
    const footnote = /\[\^[^\]\s]+\]/.exec(text)?.[0];
    return [
      ...(block ? [inProse('block-in-prose', source, node, block)] : []),
      ...(footnote ? [inProse('footnote-unknown', source, node, footnote)] : []),
    ];
  });
}

/** Every paragraph, heading and table cell, with its text as a reader sees it. */
function proseOf(tree: Root): readonly { readonly text: string; readonly node: Prose }[] {
  const found: { text: string; node: Prose }[] = [];
  walk(tree, node => {
    if (isProse(node)) found.push({ text: proseText(node.children), node });
  });
  return found;
}

/** Calls `see` with every node, in document order. */
function walk(node: Nodes, see: (node: Nodes) => void): void {
  see(node);
  if ('children' in node) for (const child of node.children) walk(child, see);
}

/** Makes a problem where `actual` is written; at the head of its paragraph where the source spells it otherwise. */
function inProse(
  rule: 'fence-in-text' | 'comment-broken' | 'block-in-prose' | 'footnote-unknown',
  { file, text }: SourceText,
  node: Prose,
  actual: string,
): Problem {
  const { start, end } = positionOf(node);
  const from = offsetOf(start);
  const found = text.indexOf(actual, from);
  const inside = found >= 0 && found < offsetOf(end);
  const before = inside ? text.slice(from, found).split('\n') : [''];
  const last = at(before, before.length - 1).length;
  const line = start.line + before.length - 1;
  const column = before.length === 1 ? start.column + last : last + 1;
  return problem(rule, placeAt(file, line, column), { actual });
}

type Prose = Paragraph | Heading | TableCell;

const isProse = (node: Nodes): node is Prose =>
  node.type === 'paragraph' || node.type === 'heading' || node.type === 'tableCell';

/** Text as a reader sees it, code left out, text directives as written. */
function proseText(nodes: readonly RootContent[]): string {
  return nodes
    .map(node => {
      if (node.type === 'inlineCode' || node.type === 'html') return ' ';
      if (node.type === 'textDirective') return `:${node.name}${plainText(node)}`;
      return 'children' in node ? proseText(node.children as RootContent[]) : plainText(node);
    })
    .join('');
}
