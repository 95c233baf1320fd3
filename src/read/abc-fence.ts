import type { Code } from 'mdast';
import { at } from '../../shared/must.ts';
import { positionOf, type SourceText } from './source-text.ts';

/** ABC as it stands in a file of the book. */
export interface Fence {
  readonly text: string;
  readonly file: string;
  /** Line of the file on which `text` begins, from 1. */
  readonly line: number;
  readonly indent: number;
}

/** Whether a node is a code block of ABC. */
export const isAbcFence = (node: { readonly type: string }): node is Code =>
  node.type === 'code' && (node as Code).lang?.toLowerCase() === 'abc';

/**
 * The tunes of a fenced block, cut before each `X:` after the first; what stands before the first
 * `X:` stays with the first tune.
 */
export function abcFences(node: Code, source: SourceText): readonly Fence[] {
  const { start } = positionOf(node);
  const indent = start.column - 1;
  const firstLine = start.line + 1;
  const lines = node.value.split('\n');
  const cuts = lines.flatMap((line, i) => (/^X:/.test(line) ? [i] : []));
  const starts = [0, ...cuts.slice(1)];
  return starts.map((from, i) => ({
    text: lines.slice(from, starts[i + 1] ?? lines.length).join('\n'),
    file: source.file,
    line: firstLine + from,
    indent,
  }));
}

/** The first `T:` of a tune, comments left out; null without one. */
export function abcTitle(text: string): string | null {
  const title = /^T:[ \t]*(.*)$/m
    .exec(text)?.[1]
    ?.replace(/(^|[^\\])%.*$/, '$1')
    .trim();
  return title || null;
}

/** Whether fields stand before the first `X:`, as a header for every tune of the fence. */
export function hasFileHeader(text: string): boolean {
  const head = at(text.split(/^X:/m, 1), 0);
  return text !== head && /^[A-Za-z]:/m.test(head);
}
