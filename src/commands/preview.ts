import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import type { Command } from 'commander';
import { previewWords } from '../../shared/words/en/preview.ts';
import { UsageError } from '../app/usage-error.ts';
import { cacheFolder } from '../incremental/cache-folder.ts';
import { bookFolder } from './book-folder.ts';
import { exit } from './exit-codes.ts';
import { report, terminalProgress } from './terminal.ts';

/** The port that is tried first. */
const usualPort = 4280;

interface PreviewCommand {
  readonly port: number;
  readonly open: boolean;
  readonly cache?: string;
}

/** `bowbook preview [book]`. */
export function addPreview(program: Command): void {
  program
    .command('preview')
    .description('show the book in a browser on this machine while it is being written')
    .argument('[book]', 'the folder of the book (default: here, or content/)')
    .option(
      '--port <number>',
      'the port to serve it on; the next free one if it is in use',
      readPort,
      usualPort,
    )
    .option('--no-open', 'do not open a browser')
    .option(
      '--cache <folder>',
      'where results are kept for the next preview (default: in the system’s cache folder)',
    )
    .action(async (book: string | undefined, options: PreviewCommand) => {
      await showPreview(bookFolder(book), options);
    });
}

async function showPreview(root: string, { port, open, cache }: PreviewCommand): Promise<void> {
  const { openPreview } = await import('../preview/open-preview.ts');
  const say = (line: string): void => void process.stdout.write(`${line}\n`);
  let title = relative(process.cwd(), root) || root;
  let last = '';
  const folder = mkdtempSync(join(tmpdir(), 'bowbook-preview-'));
  // The folder is removed however the process ends.
  process.once('exit', () => rmSync(folder, { recursive: true, force: true, maxRetries: 3 }));
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.once(signal, () => {
      say(`\n${previewWords.ended}`);
      process.exit(exit.sound);
    });
  }
  const preview = await openPreview({
    root,
    folder,
    port,
    cache: cacheFolder(root, true, cache),
    progress: terminalProgress(),
    onBuild(result, news) {
      const told = JSON.stringify([news.outcome, news.problems]);
      // Nothing is printed for a build that changed nothing.
      if (told === last && news.changed.length === 0) return;
      last = told;
      report(result.problems, root);
      if (result.failed) say(previewWords.failed);
      else if (news.buildNumber > 1) say(previewWords.built(news.changed.length));
      title = result.book.settings.title;
    },
    onDefect(error) {
      throw error;
    },
  });
  if (port !== 0 && preview.port !== port) say(previewWords.portBusy(port, preview.port));
  await preview.firstBuild;
  say(previewWords.opened(title, preview.address));
  say(previewWords.howToEnd);
  if (open) await openBrowser(preview.address);
  await new Promise(() => {}); // a signal ends it
}

async function openBrowser(address: string): Promise<void> {
  const failed = (): void => {
    process.stderr.write(`${previewWords.notOpened(address)}\n`);
  };
  try {
    const { default: openAddress } = await import('open');
    (await openAddress(address)).once('error', failed);
  } catch {
    failed();
  }
}

function readPort(written: string): number {
  const port = Number(written);
  if (/^\d{1,5}$/.test(written) && port <= 65_535) return port;
  throw new UsageError(previewWords.portUnread(written));
}
