import type { Nodes, Root } from 'mdast';
import { limits } from '../../shared/limits.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { placeAt, type SourceText } from './source-text.ts';

/**
 * The problem of a text that must not be given to the parser: the text or a line is too long, or a line
 * opens too many levels of lists, quotations or brackets. null where it can be parsed.
 */
export function textPastLimit({ file, text }: SourceText): Problem | null {
  if (text.length > limits.pageLength) {
    const facts = { found: text.length, most: limits.pageLength };
    return problem('page-past-limit', placeAt(file, 1, 1), { facts });
  }
  const lines = text.split('\n');
  if (lines.length > limits.pageLines) {
    const facts = { found: lines.length, most: limits.pageLines };
    const place = placeAt(file, limits.pageLines + 1, 1);
    return problem('lines-past-limit', place, { facts });
  }
  let open = 0;
  for (const [i, line] of lines.entries()) {
    const place = placeAt(file, i + 1, 1);
    if (line.length > limits.lineLength) {
      const facts = { found: line.length, most: limits.lineLength };
      return problem('line-past-limit', place, { facts });
    }
    if (/^[ \t>]*:{3,}[A-Za-z]/.test(line)) open += 1;
    else if (/^[ \t>]*:{3,}[ \t]*$/.test(line)) open = Math.max(0, open - 1);
    if (open > limits.nesting || isDeep(line)) return tooDeep(place);
  }
  return null;
}

/** Marks at the head of a line, and runs of brackets: the parser takes a step deeper for each. */
function isDeep(line: string): boolean {
  const head = /^(?:[ \t]*(?:>|[-+*](?=[ \t])|\d{1,9}[.)](?=[ \t])))+/.exec(line)?.[0] ?? '';
  const marks = (head.match(/[>\-+*.)]/g) ?? []).length;
  return marks > limits.nesting || /^[ \t]{200}[ \t]*(?:[-+*>]|\d{1,9}[.)])[ \t]/.test(line);
}

const tooDeep = (place: Problem['place']): Problem =>
  problem('nested-past-limit', place, { facts: { most: limits.nesting } });

/**
 * The problem of a parsed page that is past a limit: its depth, or the cells of a table. Uses a list rather
 * than recursion, which a deep tree would exhaust.
 */
export function treePastLimit(tree: Root, file: string): Problem | null {
  const waiting: { readonly node: Nodes; readonly depth: number }[] = [{ node: tree, depth: 0 }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { node, depth } = next;
    const { line = 1, column = 1 } = node.position?.start ?? {};
    const place = placeAt(file, line, column);
    if (depth > limits.nesting) return tooDeep(place);
    if (node.type === 'table') {
      // Short rows are filled up to the width of the first, so a few characters make many cells.
      const found = (node.align?.length ?? 0) * node.children.length;
      const facts = { found, most: limits.tableCells };
      if (found > limits.tableCells) return problem('table-past-limit', place, { facts });
    }
    if (!('children' in node)) continue;
    for (const child of node.children) waiting.push({ node: child, depth: depth + 1 });
  }
  return null;
}
