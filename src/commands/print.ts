import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, relative, resolve } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { nearest } from '../../shared/nearest.ts';
import {
  type PrintKind,
  printKinds,
  type SheetStep,
  sheetSteps,
} from '../../shared/print-kinds.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { UsageError } from '../app/usage-error.ts';
import { densities } from '../print/print-input.ts';
import { audiences } from '../print/sizes.ts';
import { bookFolder } from './book-folder.ts';
import { exit } from './exit-codes.ts';
import { count, report, terminalProgress } from './terminal.ts';

/** `bowbook print [book]`. */
export function addPrint(program: Command): void {
  program
    .command('print')
    .description('make one PDF: the tune book, its sheets or the pocket booklet')
    .argument('[book]', 'the folder of the book (default: here, or content/)')
    .addOption(
      new Option('--what <kind>', 'what to print').choices([...printKinds]).default('book'),
    )
    .addOption(
      new Option('--paper <size>', 'paper size (default: that of the book’s settings)').choices([
        'a4',
        'letter',
      ]),
    )
    .addOption(
      new Option('--for <readers>', 'the readers, which set the size of print')
        .choices([...audiences])
        .default('adults'),
    )
    .option(
      '--step <number>',
      'step of the sheets, from 1 (everything) to 5 (the title only)',
      readStep,
    )
    .addOption(
      new Option('--marks <strokes>', 'which stroke signs').choices([...densities]).default('all'),
    )
    .option('--fingers', 'print fingers (default: as the readers need)')
    .option('--no-fingers', 'print no fingers')
    .option('--letters', 'print the names of the notes (default: as the readers need)')
    .option('--no-letters', 'print no names of notes')
    .option('--by-title', 'in the book: tunes by title, without lessons')
    .option('--tune <id>', 'in the sheets: only this tune')
    .option(
      '-o, --out <file>',
      'where the PDF goes (default: tune-book.pdf, sheets.pdf, pocket.pdf)',
    )
    .action(async (folder: string | undefined, options) => {
      const root = bookFolder(folder);
      const [{ drawTune }, { print }, { studyBook }] = await Promise.all([
        import('../pipeline/draw-tune.ts'),
        import('../pipeline/print-pdf.ts'),
        import('../pipeline/pipeline.ts'),
      ]);
      const { book, tunes, problems } = await studyBook(root, terminalProgress());
      const errors = problems.filter(p => p.severity === 'error');
      if (errors.length > 0) {
        report(problems, root);
        process.stderr.write('Nothing was printed.\n');
        process.exitCode = exit.errors;
        return;
      }
      checkTune(
        options.tune,
        tunes.map(t => t.block.id),
      );
      const words = wordsFor(book.settings.language, book.settings.noteNames);
      const drawn = tunes.map(t => drawTune(t, words));
      const printed = print(book, new Map(drawn.map(d => [d.built.block.id, d.built])), {
        what: options.what,
        audience: options.for,
        marks: options.marks,
        order: options.byTitle ? 'tunes' : 'lessons',
        steps: [options.step ?? 1],
        fingers: options.fingers ?? null,
        letters: options.letters ?? null,
        only: options.tune ?? null,
        ...(options.paper && { paper: options.paper }),
      });
      report([...problems, ...drawn.flatMap(d => d.problems), ...printed.problems], root);
      const out = resolve(options.out ?? fileNames[options.what as keyof typeof fileNames]);
      mkdirSync(dirname(out), { recursive: true });
      writeFileSync(out, printed.pdf);
      process.stdout.write(`${count(printed.pages, 'page')}: ${relative(process.cwd(), out)}\n`);
    });
}

const fileNames: Readonly<Record<PrintKind, string>> = {
  book: 'tune-book.pdf',
  sheets: 'sheets.pdf',
  pocket: 'pocket.pdf',
};

function readStep(text: string): SheetStep {
  const step = sheetSteps.find(s => `${s}` === text);
  if (step === undefined) throw new InvalidArgumentError('It is a number from 1 to 5.');
  return step;
}

function checkTune(asked: string | undefined, known: readonly string[]): void {
  if (asked === undefined || known.includes(asked)) return;
  const near = nearest(asked, known);
  throw new UsageError(
    `There is no tune "${asked}" in the book.${near === null ? '' : ` Did you mean "${near}"?`}`,
  );
}
