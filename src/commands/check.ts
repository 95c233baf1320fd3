import { join, relative } from 'node:path';
import { type Command, Option } from 'commander';
import type { Problem } from '../../shared/problem.ts';
import { countProblems } from '../report/format-problems.ts';
import { inPlaceOrder } from '../report/place-order.ts';
import { problemJson } from '../report/problem-json.ts';
import { problemLines } from '../report/problem-lines.ts';
import { bookFolder } from './book-folder.ts';
import { exit } from './exit-codes.ts';
import { problemText, terminalProgress } from './terminal.ts';

interface CheckFlags {
  readonly json?: boolean;
  readonly lines?: boolean;
  readonly strict?: boolean;
}

/** `bowbook check [book]`. */
export function addCheck(program: Command): void {
  program
    .command('check')
    .description('say what is wrong with a book, and write nothing')
    .argument('[book]', 'the folder of the book (default: here, or content/)')
    .option('--strict', 'let warnings fail too')
    .option('--json', 'as data, for other programs')
    .addOption(
      new Option('--lines', 'a line for each problem, for editors and CI').conflicts('json'),
    )
    .action(async (book: string | undefined, flags: CheckFlags) => {
      const root = bookFolder(book);
      const { studyBook } = await import('../study-book.ts');
      const { problems } = await studyBook(root, terminalProgress());
      process.stdout.write(answer(problems, root, flags));
      const failing = flags.strict ? ['error', 'warning'] : ['error'];
      if (problems.some(p => failing.includes(p.severity))) process.exitCode = exit.errors;
    });
}

/** What is printed, in the form asked for. */
function answer(problems: readonly Problem[], root: string, flags: CheckFlags): string {
  if (flags.json) {
    return `${JSON.stringify(inPlaceOrder(problems).map(problemJson), null, 2)}\n`;
  }
  // Editors look for a file from the folder in which the command ran.
  if (flags.lines) {
    return problemLines(problems, file =>
      relative(process.cwd(), join(root, file)).replaceAll('\\', '/'),
    );
  }
  return problems.length > 0 ? problemText(problems, root) : `${countProblems(problems)}\n`;
}
