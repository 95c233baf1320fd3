import { existsSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { type Command, Option } from 'commander';
import { type TuneType, tuneTypes } from '../../shared/music/tune.ts';
import type { Problem } from '../../shared/problem.ts';
import { importWords } from '../../shared/words/en/importing.ts';
import { UsageError } from '../app/usage-error.ts';
import { bookFolder } from './book-folder.ts';
import { exit } from './exit-codes.ts';
import { report } from './terminal.ts';

interface ImportFlags {
  readonly book?: string;
  readonly type?: TuneType;
  readonly rights?: 'traditional' | 'own';
  readonly learnedFrom?: string;
  readonly dryRun?: boolean;
  readonly all?: boolean;
}

/** Number of messages printed without `--all`. */
const fewMessages = 12;

/** `bowbook import FILE.abc…`. */
export function addImport(program: Command): void {
  program
    .command('import')
    .description('make a page of each tune of a collection in ABC; never writes over a page')
    .argument('<files...>', 'ABC files')
    .option('--book <folder>', 'the folder of the book (default: here, or content/)')
    .addOption(new Option('--type <type>', 'the type of all these tunes').choices([...tuneTypes]))
    .addOption(
      new Option('--rights <rights>', 'the rights to all these tunes').choices([
        'traditional',
        'own',
      ]),
    )
    .option('--learned-from <words>', 'who all these tunes were learned from')
    .option('--dry-run', 'report what would be done, and write nothing')
    .option('--all', 'print every message, not only the first')
    .action(async (files: string[], flags: ImportFlags) => {
      for (const file of files) checkFile(file);
      const root = bookFolder(flags.book);
      const { importTunes } = await import('../app/import-tunes.ts');
      const result = await importTunes({
        root,
        files,
        type: flags.type ?? null,
        rights: flags.rights ?? null,
        learnedFrom: flags.learnedFrom ?? null,
        dryRun: flags.dryRun ?? false,
      });
      const unsaid = reportFirst(result.problems, flags.all ?? false);
      const { tunes, written, present, notUnderstood } = result;
      const outcome = flags.dryRun ? importWords.wouldBe : importWords.outcome;
      const lines = [
        `${importWords.tunesIn(tunes, files.length)}${outcome(written.length, present)}`,
        ...(unsaid > 0 ? [importWords.more(unsaid)] : []),
        ...(notUnderstood > 0 ? [importWords.notUnderstood(notUnderstood)] : []),
        ...(written.length > 0 && !flags.dryRun
          ? [
              importWords.pages(relative(process.cwd(), join(root, 'tunes'))),
              ...(flags.rights ? [] : [importWords.rights(written.length)]),
              importWords.next,
            ]
          : []),
      ];
      process.stdout.write(`${lines.join('\n')}\n`);
      if (tunes === 0) process.exitCode = exit.errors;
    });
}

/** Prints messages, warnings first: the first twelve, or all. Returns how many were not printed. */
function reportFirst(problems: readonly Problem[], all: boolean): number {
  const sorted = [
    ...problems.filter(p => p.severity !== 'note'),
    ...problems.filter(p => p.severity === 'note'),
  ];
  const said = all ? sorted : sorted.slice(0, fewMessages);
  report(said, process.cwd());
  return sorted.length - said.length;
}

function checkFile(file: string): void {
  if (!existsSync(file)) throw new UsageError(`There is no "${file}".`);
  if (!statSync(file).isFile()) throw new UsageError(`"${file}" is not a file. Name ABC files.`);
}
