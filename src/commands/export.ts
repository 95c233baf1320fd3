import { existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { dirname, extname, join, relative, resolve } from 'node:path';
import { type Command, Option } from 'commander';
import { siteZipPath } from '../../shared/site-zip-path.ts';
import { exportWords } from '../../shared/words/en/exporting.ts';
import { UsageError } from '../app/usage-error.ts';
import { type DownloadEnding, downloadEndings } from '../export/tune-downloads.ts';
import { bookFolder } from './book-folder.ts';
import { exit } from './exit-codes.ts';
import { report, terminalProgress } from './terminal.ts';

const forms = ['abc', 'midi', 'musicxml', 'json', 'zip'] as const;
type Form = (typeof forms)[number];

interface ExportFlags {
  readonly tune?: string[];
  readonly as?: Form[];
  readonly out?: string;
}

/** `bowbook export [book]`. */
export function addExport(program: Command): void {
  program
    .command('export')
    .description('write tunes for other programs, or the whole site as a zip')
    .argument('[book]', 'the folder of the book (default: here, or content/)')
    .option('--tune <id...>', 'only these tunes (default: all)')
    .addOption(
      new Option('--as <form...>', 'in these formats (default: all but zip)').choices([...forms]),
    )
    .option(
      '-o, --out <path>',
      `file or folder to write to (default: the folder export, or ${siteZipPath})`,
    )
    .action(async (book: string | undefined, flags: ExportFlags) => {
      const asked = flags.as ?? ['abc', 'midi', 'musicxml', 'json'];
      const zipped = asked.includes('zip');
      if (zipped && asked.length > 1) throw new UsageError(exportWords.zipAmongOthers);
      if (zipped && flags.tune !== undefined) throw new UsageError(exportWords.zipOfTune);
      const root = bookFolder(book);
      if (zipped) await writeZip(root, flags.out ?? siteZipPath);
      else await writeTunes(root, flags.tune ?? [], asked, flags.out ?? 'export');
    });
}

async function writeTunes(
  root: string,
  ids: readonly string[],
  asked: readonly Form[],
  out: string,
): Promise<void> {
  const endings = asked.map(form => (form === 'midi' ? 'mid' : form) as DownloadEnding);
  const { exportTunes } = await import('../app/export-book.ts');
  const { files, problems } = await exportTunes(root, ids, endings, terminalProgress());
  report(problems, root);
  if (files.length === 0) return fail();
  const isFile = downloadEndings.some(ending => extname(out) === `.${ending}`) && !isFolder(out);
  if (isFile && files.length > 1) throw new UsageError(exportWords.oneFile(files.length, out));
  for (const { name, content } of files) write(isFile ? out : join(out, name), content);
  process.stdout.write(`${exportWords.written(files.length, shown(oneOf(files, out, isFile)))}\n`);
  // A tune requested by name that could not be exported is an error.
  if (ids.length > 0 && problems.length > 0) process.exitCode = exit.errors;
}

const oneOf = (files: readonly { name: string }[], out: string, isFile: boolean): string =>
  files.length === 1 && !isFile ? join(out, files[0]?.name ?? '') : out;

async function writeZip(root: string, out: string): Promise<void> {
  const path = isFolder(out) ? join(out, siteZipPath) : out;
  const { exportSite } = await import('../app/export-book.ts');
  const { zip, problems } = await exportSite(root, terminalProgress());
  report(problems, root);
  if (zip === null) return fail();
  write(path, zip);
  process.stdout.write(`${exportWords.written(1, shown(path))}\n`);
}

function write(path: string, content: string | Uint8Array): void {
  mkdirSync(dirname(resolve(path)), { recursive: true });
  writeFileSync(path, content);
}

function fail(): void {
  process.stderr.write(`${exportWords.nothing}\n`);
  process.exitCode = exit.errors;
}

const isFolder = (path: string): boolean => existsSync(path) && statSync(path).isDirectory();

const shown = (path: string): string => relative(process.cwd(), resolve(path)) || '.';
