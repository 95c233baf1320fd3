import type { Tune, TuneType } from '../../shared/music/tune.ts';
import { type Place, type Problem, problem } from '../../shared/problem.ts';
import { parseTunes } from '../abc/parse-tune.ts';
import { freeName } from '../import/free-name.ts';
import { type Likeness, likeness, marksOf, type TuneMarks } from '../import/same-tune.ts';
import { type CollectedTune, splitCollection } from '../import/split-collection.ts';
import { fenceSafe, tunePage } from '../import/tune-page.ts';
import { type NewFile, writeNew } from '../output/write-new.ts';
import { abcTitle } from '../read/abc-fence.ts';
import type { Block, Book, Page } from '../read/book.ts';
import { readBook } from '../read/read-book.ts';
import { slug } from '../read/slug.ts';
import { readAbcFile } from './read-abc-file.ts';

/** What to import, and facts that apply to every tune of it; null where the teacher states none. */
export interface ImportOptions {
  /** Folder of the book. */
  readonly root: string;
  readonly files: readonly string[];
  readonly type: TuneType | null;
  readonly rights: 'traditional' | 'own' | null;
  readonly learnedFrom: string | null;
  /** Computes the result, and writes no page. */
  readonly dryRun: boolean;
}

export interface ImportResult {
  /** Number of tunes in the files. */
  readonly tunes: number;
  /** Paths of the pages written, from the book's folder. */
  readonly written: readonly string[];
  /** Number of tunes that the book has already. */
  readonly present: number;
  /** Number of tunes that could not be read in full. */
  readonly notUnderstood: number;
  readonly problems: readonly Problem[];
}

/** A tune of the book or of this import, and the file of its page. */
interface Known {
  readonly marks: TuneMarks;
  readonly title: string;
  readonly where: string;
  /** It was in the book before the import. */
  readonly isOld: boolean;
}

/** Rules that mean that a tune was not read in full. `bowbook check` reports all others for the page. */
const misreadings = new Set([
  'abc-unreadable',
  'abc-warning',
  'abc-blank-line',
  'no-notes',
  'several-voices',
]);

/**
 * Writes a page for each tune of some ABC files. Skips a tune that the book has already, recognised by
 * its text, or by its title and notes: importing twice changes nothing, and what the teacher has added
 * to a page stays. Overwrites no file. A tune that cannot be read gets a page with its ABC as written.
 */
export async function importTunes(options: ImportOptions): Promise<ImportResult> {
  const book = await readBook(options.root);
  const known = knownTunes(book);
  const taken = new Set(takenNames(book));
  const pages: NewFile[] = [];
  const problems: Problem[] = [];
  let [count, present, notUnderstood] = [0, 0, 0];
  for (const path of options.files) {
    const collected = readCollection(path);
    problems.push(...collected.problems);
    for (const item of collected.tunes) {
      count += 1;
      const read = readTune(item, collected.file);
      const title = read.tune?.title ?? abcTitle(item.abc) ?? '';
      const abc = fenceSafe(item.abc);
      const marks = marksOf(abc, title, read.tune);
      const alike = known.like(marks);
      if (alike.some(a => a.likeness === 'same' && a.known.isOld)) {
        present += 1;
        continue;
      }
      if (read.problems.length > 0) notUnderstood += 1;
      const place: Place = { file: collected.file, line: item.line, column: 1 };
      problems.push(...read.problems, ...likenessProblems(title, place, alike));
      const number = /^X:\s*(\d+)/.exec(item.abc)?.[1] ?? `${count}`;
      const id = freeName(slug(title), `tune-${number}`, taken);
      const page = tunePage(
        {
          id,
          title: title === '' ? id : title,
          type: options.type,
          hasType: (read.tune?.type ?? null) !== null,
          rights: options.rights,
          learnedFrom: options.learnedFrom,
        },
        abc,
      );
      pages.push({ path: `tunes/${id}.md`, content: page });
      known.add({ marks, title, where: `tunes/${id}.md`, isOld: false });
    }
  }
  if (!options.dryRun) writeNew(options.root, pages);
  const written = pages.map(p => p.path);
  return { tunes: count, written, present, notUnderstood, problems };
}

interface ReadCollection {
  readonly file: string;
  readonly tunes: readonly CollectedTune[];
  readonly problems: readonly Problem[];
}

function readCollection(path: string): ReadCollection {
  const file = path.replaceAll('\\', '/');
  const { decoded, past } = readAbcFile(path, file);
  if (past) return { file, tunes: [], problems: [past] };
  const { text, encodings } = decoded;
  const { tunes, wordsBefore } = splitCollection(text);
  const at = (line: number): Place => ({ file, line, column: 1 });
  const [, second] = encodings;
  return {
    file,
    tunes,
    problems: [
      ...(second === undefined
        ? []
        : [problem('import-encoding', at(1), { actual: second, expected: ['utf-8'] })]),
      ...(tunes.length === 0 ? [problem('import-no-tune', at(1))] : []),
      ...(wordsBefore === null ? [] : [problem('import-words-left', at(wordsBefore))]),
    ],
  };
}

/** Reads a tune. Problems get their lines in the file, without the header lines inserted in the tune. */
function readTune(
  { abc, line, headerLines }: CollectedTune,
  file: string,
): { readonly tune: Tune | null; readonly problems: readonly Problem[] } {
  const { tunes, problems } = parseTunes({ text: abc, file, line: 1, indent: 0 });
  const lineInFile = (inAbc: number): number =>
    line - 1 + (inAbc <= 1 ? 1 : Math.max(1, inAbc - headerLines));
  return {
    tune: tunes[0] ?? null,
    problems: problems
      .filter(p => misreadings.has(p.rule))
      .map(p => ({
        ...p,
        place: p.place && { ...p.place, line: lineInFile(p.place.line) },
      })),
  };
}

interface KnownTunes {
  readonly add: (tune: Known) => void;
  readonly like: (marks: TuneMarks) => readonly { known: Known; likeness: Likeness }[];
}

/** An index of the book's tunes by text, title and notes. */
function knownTunes(book: Book): KnownTunes {
  const found = new Map<string, Known[]>();
  const keys = ({ text, title, notes }: TuneMarks): string[] => [
    `text ${text}`,
    `title ${title}`,
    ...(notes === null ? [] : [`notes ${notes}`]),
  ];
  const add = (tune: Known): void => {
    for (const key of keys(tune.marks)) found.set(key, [...(found.get(key) ?? []), tune]);
  };
  for (const block of blocksOf(book)) {
    if (block.kind !== 'tune') continue;
    const abc = block.abc.text;
    const [tune] = parseTunes(block.abc, { id: block.id }).tunes;
    const title = tune?.title ?? abcTitle(abc) ?? '';
    add({ marks: marksOf(abc, title, tune ?? null), title, where: block.place.file, isOld: true });
  }
  return {
    add,
    like: marks => {
      const alike = new Set(keys(marks).flatMap(key => found.get(key) ?? []));
      return [...alike].flatMap(known => {
        const kind = likeness(marks, known.marks);
        return kind === null ? [] : [{ known, likeness: kind }];
      });
    },
  };
}

const rules = {
  same: 'import-same-twice',
  notes: 'import-same-notes',
  title: 'import-same-title',
} as const;

/** At most one problem per tune: it is the same as another, else has its notes, else its title. */
function likenessProblems(
  title: string,
  place: Place,
  alike: readonly { known: Known; likeness: Likeness }[],
): readonly Problem[] {
  for (const kind of ['same', 'notes', 'title'] as const) {
    const found = alike.find(a => a.likeness === kind);
    if (!found) continue;
    const facts = { title, other: found.known.title, where: found.known.where };
    return [problem(rules[kind], place, { facts })];
  }
  return [];
}

const pagesOf = (book: Book): readonly Page[] => [
  ...book.lessons,
  ...book.tunePages,
  ...book.pages,
];

const blocksOf = (book: Book): readonly Block[] => pagesOf(book).flatMap(p => p.blocks);

/** The ids of tunes, anchors and sets of the book, and the names of its tune pages. */
const takenNames = (book: Book): readonly string[] => [
  ...blocksOf(book).flatMap(b => ('id' in b ? [b.id] : [])),
  ...book.tunePages.map(p => p.slug),
];
