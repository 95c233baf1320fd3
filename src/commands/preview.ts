import { relative } from 'node:path';
import type { Command } from 'commander';
import { previewWords } from '../../shared/words/en/preview.ts';
import { cacheFolder } from '../cache/cache-folder.ts';
import { UsageError } from '../usage-error.ts';
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
    .option('--port <number>', 'where it is served; the next one up if taken', readPort, usualPort)
    .option('--no-open', 'open no browser')
    .option(
      '--cache <folder>',
      'where work is kept for the next time (default: a folder of the system’s)',
    )
    .action(async (book: string | undefined, options: PreviewCommand) => {
      await showPreview(bookFolder(book), options);
    });
}

async function showPreview(root: string, { port, open, cache }: PreviewCommand): Promise<void> {
  const { openPreview } = await import('../preview/open-preview.ts');
  const say = (line: string): void => void process.stdout.write(`${line}\n`);
  let title = relative(process.cwd(), root) || root;
  const preview = await openPreview({
    root,
    port,
    cache: cacheFolder(root, true, cache),
    progress: terminalProgress(),
    onTurn(result, news) {
      report(result.problems, root);
      if (news.turn > 1)
        say(result.failed ? previewWords.failed : previewWords.built(news.changed.length));
      title = result.book.settings.title;
    },
    onDefect(error) {
      throw error;
    },
  });
  // However the process ends, nothing of it is left: no folder here, and with it ends the port.
  process.once('exit', preview.abandon);
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.once(signal, () => {
      say(`\n${previewWords.ended}`);
      process.exit(exit.sound);
    });
  }
  if (port !== 0 && preview.port !== port) say(previewWords.portBusy(port, preview.port));
  await preview.firstTurn;
  say(previewWords.opened(title, preview.address));
  say(previewWords.howToEnd);
  if (open) await openBrowser(preview.address);
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
