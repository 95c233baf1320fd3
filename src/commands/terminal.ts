import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Problem } from '../../shared/problem.ts';
import type { Progress } from '../pipeline/progress.ts';
import { formatProblems } from '../report/format-problems.ts';

/** `3 tunes`, `1 tune`. */
export const count = (n: number, thing: string): string => `${n} ${thing}${n === 1 ? '' : 's'}`;

/** Prints problems to standard error, apart from the command's output; files are named from `root`. */
export function report(problems: readonly Problem[], root: string): void {
  process.stderr.write(problemText(problems, root));
}

/** Problems as text with the lines they refer to; files are named from `root`. */
export function problemText(problems: readonly Problem[], root: string): string {
  const source = (file: string): string | null => {
    const path = resolve(root, file);
    return existsSync(path) ? readFileSync(path, 'utf8') : null;
  };
  return formatProblems(problems, source);
}

/** Shows progress in one line of a terminal, once work has taken a second; prints none elsewhere. */
export function terminalProgress(): Progress {
  const began = Date.now();
  let last = 0;
  const words = { study: 'Studying', tunes: 'Making' };
  return (step, done, all) => {
    if (step === 'wait') {
      process.stderr.write('Another build is writing this site; waiting for it to end.\n');
      return;
    }
    const now = Date.now();
    const finished = done === all;
    if (!process.stderr.isTTY || now - began < 1000) return;
    if (!finished && now - last < 100) return;
    last = now;
    process.stderr.write(`\r\x1b[K${finished ? '' : `${words[step]} tune ${done + 1} of ${all}`}`);
  };
}
