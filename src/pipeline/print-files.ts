import { type PrintKind, printPaths, sheetsPath } from '../../shared/print-kinds.ts';
import type { Problem } from '../../shared/problem.ts';
import type { SiteFile } from '../output/site-file.ts';
import type { PrintOptions, PrintTune } from '../print/print-input.ts';
import type { Book } from '../read/book.ts';
import { hashOf } from './hash-of.ts';
import type { TuneSource } from './tune-source.ts';

/** The input of the PDFs of a site. */
export interface PrintFilesInput {
  readonly book: Book;
  readonly ids: readonly string[];
  /** Whether the notes of a tune could be parsed. */
  readonly readable: (id: string) => boolean;
  readonly tunes: Pick<TuneSource, 'built' | 'inputHash'>;
  /** Paths and hashes of the pictures, as one text. */
  readonly pictures: string;
  readonly say: (problems: readonly Problem[]) => void;
}

/**
 * Yields the PDFs that `pdf:` of the settings asks for: tune book, large print, booklet, and the sheets of
 * each tune. Their makers share the drawings of all tunes, which are read back once.
 */
export function* printFiles(input: PrintFilesInput): Generator<SiteFile> {
  const { book, ids, readable, tunes, pictures, say } = input;
  const asked = book.settings.print;
  const prose = [book.lessons, book.tunePages, book.pages, book.settings];
  const inputHash = hashOf(tunes.inputHash(ids), pictures, JSON.stringify(prose));
  const gather = once(async () => {
    const gathered = new Map<string, PrintTune>();
    for (const id of ids) gathered.set(id, printTune(await tunes.built(id)));
    return gathered;
  });
  const whole = (kind: PrintKind): SiteFile => ({
    path: printPaths[kind],
    inputHash,
    make: async () => {
      const options = wholeBook[kind];
      const { print } = await import('./print-pdf.ts');
      const { pdf, problems } = print(book, await gather(), options);
      // In large print many tunes run over a page: `bowbook print` warns of it, a build does not.
      say(problems.filter(p => p.rule !== 'print-long' || options.audience !== 'large'));
      return pdf;
    },
  });
  yield* asked.map(whole);
  if (!asked.includes('sheets')) return;
  const rights = rightsKnown(book);
  for (const id of ids.filter(id => readable(id) && rights.has(id))) {
    yield {
      path: sheetsPath(id),
      inputHash: hashOf(tunes.inputHash([id]), JSON.stringify(book.settings)),
      make: async () => {
        const tune = printTune(await tunes.built(id));
        const { print } = await import('./print-pdf.ts');
        return print(book, new Map([[id, tune]]), { what: 'sheets', only: id }).pdf;
      },
    };
  }
}

/** The print options of each PDF of the whole book. */
const wholeBook: Readonly<Record<PrintKind, Partial<PrintOptions>>> = {
  book: { what: 'book' },
  sheets: { what: 'sheets', audience: 'large', steps: [1] },
  pocket: { what: 'pocket' },
};

/** Ids of the tunes that may be printed. */
const rightsKnown = ({ lessons, tunePages, pages, settings }: Book): ReadonlySet<string> =>
  new Set(
    [...lessons, ...tunePages, ...pages]
      .flatMap(page => page.blocks)
      .flatMap(b =>
        b.kind === 'tune' && !b.hidden && (b.rights ?? settings.rights) ? [b.id] : [],
      ),
  );

/** Copies the fields that print needs, so that the rest of the tune can be freed. */
const printTune = ({ block, study, score, published, credits }: PrintTune): PrintTune => ({
  block,
  study,
  score,
  published,
  credits,
});

function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | null = null;
  return () => {
    made ??= make();
    return made;
  };
}
