import type { Problem } from '../../shared/problem.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { inPlaceOrder } from './place-order.ts';

/** Stands in place of a file for a problem of the book as a whole. */
const program = 'bowbook';

/**
 * Formats each problem as one line, as compilers do, so that editors and CI systems make links of it:
 *
 *     lessons/first.md:7:14: error: `satrt` is no word of … Did you mean `start`? [attribute-unknown]
 *
 * Source: GNU Coding Standards, "Formatting Error Messages": `file:line:column: message`, and
 * `program: message` where there is no source file; lines and columns count from 1. The severity
 * before the message and the rule after it are common practice. `filePath` converts a path from the
 * book's folder to one from the working directory of the reader.
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
