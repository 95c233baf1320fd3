import type { Command } from 'commander';
import { countProblems } from '../report/format-problems.ts';
import { bookFolder } from './book-folder.ts';
import { exit } from './exit-codes.ts';
import { report, terminalProgress } from './terminal.ts';

/** `bowbook check [book]`. */
export function addCheck(program: Command): void {
  program
    .command('check')
    .description('say what is wrong with a book, and write nothing')
    .argument('[book]', 'the folder of the book (default: here, or content/)')
    .action(async (book: string | undefined) => {
      const root = bookFolder(book);
      const { studyBook } = await import('../study-book.ts');
      const { problems } = await studyBook(root, terminalProgress());
      report(problems, root);
      process.stdout.write(`${countProblems(problems)}\n`);
      if (problems.some(p => p.severity === 'error')) process.exitCode = exit.errors;
    });
}
