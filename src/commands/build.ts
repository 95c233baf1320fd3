import { join, relative, resolve } from 'node:path';
import type { Command } from 'commander';
import { cacheFolder } from '../incremental/cache-folder.ts';
import { buildSite } from '../incremental/open-builds.ts';
import { bookFolder, checkOut } from './book-folder.ts';
import { exit } from './exit-codes.ts';
import { count, report, terminalProgress } from './terminal.ts';

interface BuildCommand {
  readonly out?: string;
  readonly private?: boolean;
  readonly cache?: string;
  readonly fresh?: boolean;
  readonly quick?: boolean;
}

/** `bowbook build [book]`. */
export function addBuild(program: Command): void {
  program
    .command('build')
    .description('write the site of a book')
    .argument('[book]', 'the folder of the book (default: here, or content/)')
    .option('-o, --out <folder>', 'where the site goes (default: site, or site-private)')
    .option(
      '--private',
      'include the private notes, in a separate folder that must not be published',
    )
    .option(
      '--cache <folder>',
      'where results are kept for the next build (default: in the system’s cache folder)',
    )
    .option('--fresh', 'use no results of earlier builds')
    .option('--quick', 'leave out the PDFs and the zip, to look at and not to publish')
    .action(async (book: string | undefined, options: BuildCommand) => {
      const root = bookFolder(book);
      const isPrivate = options.private ?? false;
      const out = resolve(options.out ?? (isPrivate ? 'site-private' : 'site'));
      checkOut(root, out, isPrivate);
      const cache = options.fresh ? {} : { cache: cacheFolder(root, isPrivate, options.cache) };
      const progress = terminalProgress();
      const result = await buildSite({
        root,
        out,
        isPrivate,
        isQuick: options.quick ?? false,
        progress,
        ...cache,
      });
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
}
