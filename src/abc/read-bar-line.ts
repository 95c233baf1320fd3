import { limits } from '../../shared/limits.ts';
import type { RawElement } from './abcjs-parse.ts';

/** What stands at a bar line. */
export interface BarLine {
  /** Times the stretch that ends here is played; 1 where no repeat sign stands. */
  readonly closesRepeat: number;
  readonly opensRepeat: boolean;
  readonly closesPart: boolean;
  readonly closesEnding: boolean;
  readonly opensEnding: readonly number[] | null;
  /** A line is drawn: it is not only the start of an ending. */
  readonly drawn: boolean;
}

/** Reads what abcjs has at a bar line; `abc` is the text that it was given. */
export function readBarLine(line: RawElement, abc: string): BarLine {
  const { type = '' } = line;
  const { closesRepeat, opensRepeat } = repeatsOf(line, abc);
  return {
    closesRepeat,
    opensRepeat,
    closesPart: type.includes('thin_thin') || type.includes('thick'),
    closesEnding: line.endEnding === true,
    opensEnding: line.startEnding ? endingNumbers(line.startEnding) : null,
    drawn: type !== 'bar_invisible',
  };
}

/**
 * What a bar line repeats: `:|` closes a stretch played twice, `::|` three times, `::` closes one
 * and opens the next. abcjs reads `::|` as `::` and a bar line.
 */
function repeatsOf(line: RawElement, abc: string): Pick<BarLine, 'closesRepeat' | 'opensRepeat'> {
  if (line.type === 'bar_left_repeat') return { closesRepeat: 1, opensRepeat: true };
  const { startChar: start = 0, endChar: end = 0 } = line;
  if (line.type === 'bar_right_repeat') {
    const written = /^[\s[]*(:+)/.exec(abc.slice(start, end))?.[1]?.length ?? 1;
    return { closesRepeat: Math.min(written, limits.times - 1) + 1, opensRepeat: false };
  }
  if (line.type !== 'bar_dbl_repeat') return { closesRepeat: 1, opensRepeat: false };
  const thrice = abc.slice(start, end) === '::' && abc[end] === '|';
  return thrice ? { closesRepeat: 3, opensRepeat: false } : { closesRepeat: 2, opensRepeat: true };
}

/** `1,3`, `1-3`, `1,3,5-7`; text such as `[2 last` keeps its number; none reads as 1. */
export function endingNumbers(text: string): readonly number[] {
  const numbers = new Set<number>();
  for (const m of text.matchAll(/(\d+)(?:\s*-\s*(\d+))?/g)) {
    const [from, to] = [Number(m[1]), Number(m[2] ?? m[1])];
    for (let n = from; n <= Math.min(to, from + 20, limits.times); n++) numbers.add(n);
  }
  return [...numbers].sort((a, b) => a - b);
}
