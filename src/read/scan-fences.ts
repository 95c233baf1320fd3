import { nearest } from '../../shared/nearest.ts';
import { type Problem, type ProblemRest, problem } from '../../shared/problem.ts';
import type { Rule } from '../../shared/rules.ts';
import { placeAt, type SourceText } from './source-text.ts';

/**
 * The first of two readers of container fences; `check-fences.ts` compares it with what remark made. It
 * reads line by line, and is stricter than Markdown on purpose:
 *
 * - a fence stands at the very start of its line: no space, list or quotation sign before it
 * - a fence that opens is colons and a name, and only `[…]` or `{…}` may follow
 * - a fence that closes is colons alone, as many as opened the block
 * - a block inside another has fewer colons than the one around it
 *
 * Markdown itself closes a block at any fence of as many colons or more, even one in code, so that
 *
 *     :::private
 *     what I think of the class
 *     :::anchor{bars=B7}
 *     :::
 *     and what I think of the hall       ← would be published
 *     :::
 *
 * is legal Markdown. Here line 3 is an error, and so is everything else that two people could
 * read in two ways. A false alarm costs the teacher a keystroke; a missed one costs a secret.
 */
export interface FenceScan {
  readonly containers: readonly ScannedContainer[];
  readonly problems: readonly Problem[];
}

/** A container as its fences show it, before Markdown is parsed. */
export interface ScannedContainer {
  readonly name: string;
  readonly colons: number;
  /** Lines of its fences, from 1. */
  readonly open: number;
  readonly close: number;
}

interface OpenContainer extends Omit<ScannedContainer, 'close'> {
  readonly text: string;
}

interface OpenCode {
  readonly sign: string;
  readonly line: number;
  readonly column: number;
  readonly info: string;
}

const codeFence = /^((?:[ \t]|>|[-+*](?=[ \t])|\d{1,9}[.)](?=[ \t]))*)(`{3,}|~{3,})(.*)$/;
const fenceLike = /^([\s>]*(?:[-+*]\s+|\d+[.)]\s+)*[\s>]*)(:{3,})/;
const opening = /^(:{3,})([\p{L}\p{N}][\p{L}\p{N}_-]*)(.*)$/u;
const closing = /^(:{3,})[ \t]*$/;

/** Reads the container fences of a file; its front matter must have been found sound. */
export function scanFences({ file, text }: SourceText, firstLine = 1): FenceScan {
  const containers: ScannedContainer[] = [];
  const problems: Problem[] = [];
  const open: OpenContainer[] = [];
  let code: OpenCode | null = null;

  const say = <R extends Rule>(
    rule: R,
    line: number,
    column: number,
    ...rest: ProblemRest<R>
  ): void => {
    problems.push(problem(rule, placeAt(file, line, column), ...rest));
  };

  for (const [i, lineText] of text.split('\n').entries()) {
    const line = i + 1;
    if (line < firstLine) continue;
    const fence = codeFence.exec(lineText);
    const sign = fence?.[2] ?? '';
    const info = (fence?.[3] ?? '').trim();
    const column = (fence?.[1]?.length ?? 0) + 1;

    if (code !== null) {
      const like: boolean =
        sign.charAt(0) === code.sign.charAt(0) && sign.length >= code.sign.length;
      if (like && info === '') code = null;
      else if (like && !info.includes('`')) {
        say('code-fence-in-code', line, column, {
          actual: lineText.trim(),
          facts: { opened: code.line },
        });
        code = { sign, line, column, info };
      } else if (breaksCode(lineText, code)) {
        say('fence-in-code', line, 1, { actual: lineText.trim(), facts: { opened: code.line } });
      }
      continue;
    }
    if (sign !== '' && !(sign.startsWith('`') && info.includes('`'))) {
      code = { sign, line, column, info };
      continue;
    }
    scanLine(lineText, line);
  }

  /**
   * In code, a fence as long as that of a block around would close it. Elsewhere it is an example
   * where the code says that it is Markdown; in other code it more likely means that the code was
   * never closed, and the note after it would be printed.
   */
  function breaksCode(lineText: string, around: OpenCode): boolean {
    const colons = fenceLike.exec(lineText)?.[2]?.length ?? 0;
    if (colons === 0) return false;
    return (
      !/^(?:md|markdown)\b/i.test(around.info) || open.some(container => colons >= container.colons)
    );
  }

  function scanLine(lineText: string, line: number): void {
    const like = fenceLike.exec(lineText);
    if (!like) {
      if (looksPrivate(lineText)) {
        say('private-unread', line, 1, { actual: lineText.trim(), nearest: ':::private' });
      }
      return;
    }
    if (like[1] !== '') {
      say('fence-indented', line, (like[1] ?? '').length + 1, { actual: lineText.trim() });
      return;
    }
    const closed = closing.exec(lineText);
    if (closed?.[1]) {
      closeAt(closed[1].length, line, lineText.trim());
      return;
    }
    const opened = opening.exec(lineText);
    if (!opened?.[1] || !opened[2]) {
      say('fence-unread', line, 1, { actual: lineText.trim(), facts: { why: 'name' } });
      return;
    }
    const after = opened[3] ?? '';
    if (after.trim() !== '' && !/^(?:\[.*\])?(?:\{.*\})?[ \t]*$/.test(after)) {
      const why = /^\s+[{[]/.test(after) ? 'space' : 'rest';
      say('fence-unread', line, opened[1].length + opened[2].length + 1, {
        actual: lineText.trim(),
        facts: { why },
      });
    }
    openAt({ name: opened[2], colons: opened[1].length, open: line, text: lineText.trim() });
  }

  function openAt(next: OpenContainer): void {
    const around = open.at(-1);
    if (around && next.colons >= around.colons) {
      say('fence-nested', next.open, 1, {
        actual: next.text,
        facts: { around: around.name, opened: around.open, colons: next.colons },
      });
    }
    open.push(next);
  }

  function closeAt(colons: number, line: number, found: string): void {
    const inner = open.at(-1);
    if (!inner) {
      say('fence-stray', line, 1, { actual: found });
      return;
    }
    if (colons !== inner.colons) {
      say('fence-length', line, 1, {
        actual: found,
        expected: [':'.repeat(inner.colons)],
        facts: { name: inner.name, opened: inner.open },
      });
      // Go on as if it closed the block that it fits, so that one slip gives one message.
      while (open.length > 1 && (open.at(-1)?.colons ?? colons) < colons) open.pop();
    }
    const done = open.pop();
    if (done) containers.push({ ...done, close: line });
  }

  for (const left of open) {
    say('fence-unclosed', left.open, 1, { actual: left.text, expected: [':'.repeat(left.colons)] });
  }
  const unclosed = code as OpenCode | null;
  if (unclosed) {
    say('code-fence-unclosed', unclosed.line, unclosed.column, { expected: [unclosed.sign] });
  }
  return { containers, problems };
}

/**
 * A line that says "private" after colons of some kind, but is no fence: `::private`,
 * `: : : private`, `;;;private`, `\:::private`.
 */
function looksPrivate(line: string): boolean {
  const m = /^[^\p{L}\p{N}`]*[:;：︓∶ː︰⁝⋮][^\p{L}\p{N}]*(\p{L}+)/u.exec(line);
  const word = m?.[1]?.toLowerCase();
  return word !== undefined && nearest(word, ['private']) !== null;
}
