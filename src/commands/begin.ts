import { existsSync, readdirSync, statSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import type { Command } from 'commander';
import { beginWords } from '../../shared/words/en/begin.ts';
import { UsageError } from '../app/usage-error.ts';
import { newBook } from '../begin/new-book.ts';
import { writeNew } from '../output/write-new.ts';
import { packageRoot } from '../pages/package-root.ts';

interface BeginFlags {
  readonly title?: string;
  readonly teacher?: string;
  readonly town?: string;
  readonly date?: string;
}

/** `bowbook begin FOLDER`. */
export function addBegin(program: Command): void {
  program
    .command('begin')
    .description('write a small book to start from; never writes over anything')
    .argument('<folder>', 'a new folder for the book')
    .option('--title <words>', 'the title of the book')
    .option('--teacher <name>', 'the name of the teacher')
    .option('--town <name>', 'where the class meets')
    .option('--date <day>', 'the day of the first lesson, such as 2026-09-15 (default: today)')
    .action(async (folder: string, flags: BeginFlags) => {
      checkFolder(folder);
      const date = flags.date ?? today();
      if (!isDay(date)) throw new UsageError(beginWords.date(date));
      const answers = await ask(flags);
      const files = newBook(join(packageRoot(), 'templates', 'begin'), { ...answers, date });
      writeNew(resolve(folder), files);
      process.stdout.write(farewell(folder, files.length));
    });
}

interface Answers {
  readonly title: string;
  readonly teacher: string | null;
  readonly town: string | null;
}

/** Asks for what no option states, if the command runs in a terminal. Throws `UsageError` on Ctrl-C. */
async function ask(flags: BeginFlags): Promise<Answers> {
  const given = [flags.title, flags.teacher, flags.town];
  const isAsked = process.stdin.isTTY && process.stdout.isTTY && given.includes(undefined);
  const said: Partial<Record<'title' | 'teacher' | 'town', string>> = { ...flags };
  if (isAsked) {
    const terminal = createInterface({ input: process.stdin, output: process.stdout });
    const lines = terminal[Symbol.asyncIterator]();
    const question = async (words: string): Promise<string> => {
      terminal.setPrompt(words);
      terminal.prompt();
      const { value, done } = await lines.next();
      // Ctrl-C or Ctrl-D.
      if (done) throw new UsageError(`\n${beginWords.stopped}`);
      return value;
    };
    try {
      process.stdout.write(`${beginWords.intro}\n`);
      said.title ??= await question(beginWords.askTitle(beginWords.title));
      said.teacher ??= await question(beginWords.askTeacher);
      said.town ??= await question(beginWords.askTown);
    } finally {
      terminal.close();
    }
  }
  const words = (text: string | undefined): string | null => text?.trim() || null;
  return {
    title: words(said.title) ?? beginWords.title,
    teacher: words(said.teacher),
    town: words(said.town),
  };
}

/** Throws `UsageError` unless the folder is missing or holds only hidden files, as of version control. */
function checkFolder(folder: string): void {
  if (!existsSync(folder)) return;
  if (!statSync(folder).isDirectory()) throw new UsageError(beginWords.isFile(folder));
  if (existsSync(join(folder, 'bowbook.yaml'))) throw new UsageError(beginWords.isBook(folder));
  if (readdirSync(folder).some(name => !name.startsWith('.'))) {
    throw new UsageError(beginWords.notEmpty(folder));
  }
}

function farewell(folder: string, count: number): string {
  const here = relative(process.cwd(), resolve(folder)) || '.';
  const quoted = /^[\w./-]+$/.test(here) ? here : `"${here}"`;
  const kinds = Object.entries(beginWords.what).map(
    ([name, what]) => `  ${name.padEnd(14)}${what}`,
  );
  const next = [...(here === '.' ? [] : [`cd ${quoted}`]), 'bowbook check', 'bowbook build'];
  return [
    beginWords.written(count, quoted),
    ...kinds,
    beginWords.next,
    ...next.map(line => `  ${line}`),
    '',
  ].join('\n');
}

/** Today in local time, `2026-09-15`. */
function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

const isDay = (text: string): boolean =>
  /^\d{4}-\d{2}-\d{2}$/.test(text) && new Date(`${text}T00:00:00Z`).toJSON()?.slice(0, 10) === text;
