import type { Problem } from '../../shared/problem.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { inPlaceOrder } from './place-order.ts';

/** The program, where no file is meant. */
const program = 'bowbook';

/**
 * A line for each problem, in the form of compilers, which editors and CI turn into links:
 *
 *     lessons/first.md:7:14: error: `satrt` is no word of … Did you mean `start`? [attribute-unknown]
 *
 * Source: GNU Coding Standards, "Formatting Error Messages": `file:line:column: message`, and
 * `program: message` where there is no source file; lines and columns count from 1. The severity
 * before the message and the rule after it are common practice. `filePath` says how a file of the
 * book is named from where the reader of the lines stands.
 */
export function problemLines(
  problems: readonly Problem[],
  filePath: (file: string) => string,
): string {
  return inPlaceOrder(problems)
    .map(p => {
      const { message, mend } = wordProblem(p);
      const where = p.place
        ? `${filePath(p.place.file)}:${p.place.line}:${p.place.column}`
        : program;
      // A line end inside a message would begin a line that has no place.
      return `${where}: ${p.severity}: ${`${message} ${mend}`.replace(/\s+/g, ' ')} [${p.rule}]\n`;
    })
    .join('');
}
