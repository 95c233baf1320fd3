import { existsSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { Command, CommanderError, Option } from 'commander';
import { levels } from '../shared/bowing/settings.ts';
import type { Problem } from '../shared/problem.ts';
import { buildSite, type Progress, studyBook } from './build.ts';
import { explainFile, UsageError } from './explain.ts';
import { countProblems, formatProblems } from './report/format-problems.ts';

/** Exit codes: the book is sound, the book has errors, the command was used wrongly. */
const exit = { sound: 0, errors: 1, usage: 2 } as const;

const program = new Command('bowbook')
  .description('Makes an annotated tune book, as a website, from a folder of Markdown.')
  .exitOverride()
  .configureHelp({ showGlobalOptions: true });

program
  .command('build')
  .description('write the site of a book')
  .argument('[book]', 'the folder of the book (default: here, or content/)')
  .option('-o, --out <folder>', 'where the site goes (default: site, or site-private)')
  .option('--private', 'show the private notes too, in a folder of its own, never to be published')
  .action(async (book: string | undefined, options: { out?: string; private?: boolean }) => {
    const root = bookFolder(book);
    const isPrivate = options.private ?? false;
    const out = resolve(options.out ?? (isPrivate ? 'site-private' : 'site'));
    checkOut(root, out, isPrivate);
    const result = await buildSite({ root, out, isPrivate, progress: terminalProgress() });
    report(result.problems, root);
    if (result.failed) {
      process.stderr.write('Nothing was written; the site is as it was.\n');
      process.exitCode = exit.errors;
      return;
    }
    const where = relative(process.cwd(), join(out, 'index.html'));
    const made = `${count(result.pages, 'page')}, ${count(result.tunes.length, 'tune')}`;
    process.stdout.write(`${made}: open ${where}\n`);
  });

program
  .command('check')
  .description('say what is wrong with a book, and write nothing')
  .argument('[book]', 'the folder of the book (default: here, or content/)')
  .action(async (book: string | undefined) => {
    const root = bookFolder(book);
    const { problems } = await studyBook(root, terminalProgress());
    report(problems, root);
    process.stdout.write(`${countProblems(problems)}\n`);
    if (problems.some(p => p.severity === 'error')) process.exitCode = exit.errors;
  });

program
  .command('explain')
  .description('print what Bowbook works out about a lesson, a book or an .abc file')
  .argument('<file>')
  .option('--json', 'as data: the study as JSON')
  .addOption(new Option('--start <stroke>', 'the first stroke').choices(['down', 'up']))
  .option('--anchor <bars>', 'a passage to arrive at, such as B7-B8')
  .addOption(new Option('--arrive <stroke>', 'the stroke to reach it on').choices(['down', 'up']))
  .option('--tune <number>', 'only the tune with this X: number')
  .addOption(new Option('--level <level>', 'whose limits hold').choices([...levels]))
  .option('--preset <name>', 'the way of bowing preferred')
  .action(async (file: string, options) => {
    const { text, problems, root } = await explainFile(file, options);
    process.stdout.write(text);
    if (!options.json) report(problems, root);
    if (problems.some(p => p.severity === 'error')) process.exitCode = exit.errors;
  });

const count = (n: number, thing: string): string => `${n} ${thing}${n === 1 ? '' : 's'}`;

/** Prints problems, with the lines they are about. */
function report(problems: readonly Problem[], root: string): void {
  if (problems.length === 0) return;
  const source = (file: string): string | null => {
    const path = resolve(root, file);
    return existsSync(path) ? readFileSync(path, 'utf8') : null;
  };
  process.stderr.write(formatProblems(problems, source));
}

/** The folder asked for, or the nearest that holds a `bowbook.yaml`. */
function bookFolder(asked: string | undefined): string {
  const tried = asked === undefined ? ['.', 'content'] : [asked];
  const found = tried.find(f => existsSync(join(f, 'bowbook.yaml')));
  if (found !== undefined) return resolve(found);
  throw new UsageError(
    `No bowbook.yaml in ${tried.map(f => `"${f}"`).join(' or ')}. Name the folder that holds it.`,
  );
}

/** A site may not be written over its book, nor private notes over a public site. */
function checkOut(root: string, out: string, isPrivate: boolean): void {
  const inside = relative(out, root);
  if (inside === '' || !inside.startsWith('..')) {
    throw new UsageError(`"${out}" holds the book itself. Choose another folder with --out.`);
  }
  const marker = join(out, 'bowbook-manifest.json');
  const isPrivateSite = existsSync(join(out, 'private.txt'));
  if (existsSync(marker) && isPrivate !== isPrivateSite) {
    const kind = isPrivateSite ? 'a private site' : 'a site to publish';
    throw new UsageError(`"${out}" holds ${kind}. Choose another folder with --out.`);
  }
}

/** One line, rewritten in place, once work has taken a second; nothing where nobody looks. */
function terminalProgress(): Progress {
  const began = Date.now();
  let last = 0;
  const words = { study: 'Studying', draw: 'Drawing' };
  return (step, done, all) => {
    const now = Date.now();
    const finished = done === all;
    if (!process.stderr.isTTY || now - began < 1000) return;
    if (!finished && now - last < 100) return;
    last = now;
    process.stderr.write(`\r\x1b[K${finished ? '' : `${words[step]} tune ${done + 1} of ${all}`}`);
  };
}

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError) {
    process.exitCode = error.exitCode === 0 ? exit.sound : exit.usage;
  } else if (error instanceof UsageError) {
    process.stderr.write(`${error.message}\n`);
    process.exitCode = exit.usage;
  } else {
    throw error;
  }
}
