import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { type Command, Option } from 'commander';
import { nearest } from '../../shared/nearest.ts';
import type { Problem } from '../../shared/problem.ts';
import { ruleNames } from '../../shared/rules.ts';
import { reportWords } from '../../shared/words/en/report.ts';
import { UsageError } from '../app/usage-error.ts';
import { packageRoot } from '../pages/package-root.ts';
import { countProblems } from '../report/format-problems.ts';
import { inPlaceOrder } from '../report/place-order.ts';
import { problemJson } from '../report/problem-json.ts';
import { problemLines } from '../report/problem-lines.ts';
import { rulePage } from '../report/rule-page.ts';
import { bookFolder } from './book-folder.ts';
import { exit } from './exit-codes.ts';
import { problemText, terminalProgress } from './terminal.ts';

interface CheckFlags {
  readonly json?: boolean;
  readonly lines?: boolean;
  readonly strict?: boolean;
  readonly about?: string;
}

/** `bowbook check [book]`. */
export function addCheck(program: Command): void {
  program
    .command('check')
    .description('report what is wrong with a book, and write nothing')
    .argument('[book]', 'the folder of the book (default: here, or content/)')
    .option('--strict', 'fail on warnings too')
    .option('--json', 'print JSON, for other programs')
    .addOption(
      new Option('--lines', 'print one line per problem, for editors and CI').conflicts('json'),
    )
    .option('--about <rule>', 'print the page about a rule instead of checking a book')
    .action(async (book: string | undefined, flags: CheckFlags) => {
      if (flags.about !== undefined) {
        process.stdout.write(pageAbout(flags.about));
        return;
      }
      const root = bookFolder(book);
      const { studyBook } = await import('../pipeline/pipeline.ts');
      const { problems } = await studyBook(root, terminalProgress());
      process.stdout.write(answer(problems, root, flags));
      const failing = flags.strict ? ['error', 'warning'] : ['error'];
      if (problems.some(p => failing.includes(p.severity))) process.exitCode = exit.errors;
    });
}

/** Text of a rule's page in `docs/rules/`. Throws `UsageError` for an unknown rule. */
function pageAbout(rule: string): string {
  const known = ruleNames.find(name => name === rule);
  if (known) return readFileSync(join(packageRoot(), rulePage(known)), 'utf8');
  throw new UsageError(reportWords.unknownRule(rule, nearest(rule, ruleNames)));
}

/** The output in the requested format. */
function answer(problems: readonly Problem[], root: string, flags: CheckFlags): string {
  if (flags.json) {
    return `${JSON.stringify(inPlaceOrder(problems).map(problemJson), null, 2)}\n`;
  }
  // Editors resolve file names from the folder in which the command ran.
  if (flags.lines) {
    return problemLines(problems, file =>
      relative(process.cwd(), join(root, file)).replaceAll('\\', '/'),
    );
  }
  return problems.length > 0 ? problemText(problems, root) : `${countProblems(problems)}\n`;
}
