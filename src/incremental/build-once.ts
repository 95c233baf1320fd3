import { relative } from 'node:path';
import { type Problem, problem } from '../../shared/problem.ts';
import { type OpenSite, openSite, type Written } from '../output/open-site.ts';
import type { SiteFile } from '../output/site-file.ts';
import { SiteTrouble } from '../output/site-trouble.ts';
import { planPages } from '../pages/make-pages.ts';
import { pageSum } from '../pages/page-sum.ts';
import { cardsFrom } from '../pages/tune-card.ts';
import type { TuneNote } from '../pipeline/make-tune.ts';
import { pageMakers } from '../pipeline/page-makers.ts';
import { blockSum } from '../pipeline/tune-jobs.ts';
import { plainFiles, wholeFiles } from '../pipeline/whole-files.ts';
import type { Book } from '../read/book.ts';
import { folders } from '../read/book-files.ts';
import type { ReadingThread } from '../read/read-ahead.ts';
import { readBook } from '../read/read-book.ts';
import type { TuneMaker } from '../workers/tune-maker.ts';
import type { Ledger } from './ledger.ts';
import type { BuildOptions, BuildResult } from './open-builds.ts';
import { pageTurns } from './page-turns.ts';
import { tuneShelf } from './tune-shelf.ts';
import { tuneTasks } from './tune-tasks.ts';
import { workedOut } from './worked-out.ts';

/** What builds of one book have in common. */
interface BuildTools {
  /** Hash of the program. */
  readonly program: string;
  readonly maker: TuneMaker;
}

/**
 * The whole pipeline: Markdown → book → tunes → studies → scores → pages → site. Problems are
 * gathered to the end; with an error among them nothing is written and the last site stays.
 * `ledger`: what the last build left; what this one leaves comes with the result.
 */
export async function buildOnce(
  options: BuildOptions,
  tools: BuildTools,
  ledger: Ledger,
): Promise<{ readonly result: BuildResult; readonly left: Ledger }> {
  const { root, out, withDrafts = false, progress } = options;
  const threadsFor = (paths: readonly string[]): readonly ReadingThread[] =>
    ledger.notes.size === 0 ? tools.maker.expect(paths.filter(isTunePage).length) : [];
  const book = await readBook(root, { drafts: withDrafts, memo: ledger.read, threadsFor });
  const problems = [...book.problems];
  const end = (left: Ledger, tunes: readonly TuneNote[] = []) => {
    const failed = problems.some(isError);
    return { result: { book, tunes, problems, failed, pages: failed ? 0 : left.pages }, left };
  };
  if (problems.some(isError)) return end(ledger);
  try {
    const site = await openSite(out, ledger.files, () => progress('wait', 0, 0));
    let left = ledger;
    const said: Problem[] = [];
    try {
      await putAll(site, plainFiles(book, options.isPrivate));
      if (!standsAsLeft(book, options, site, ledger)) {
        left = await makeSite(book, options, tools, ledger, site, said);
      }
    } catch (error) {
      site.abandon();
      throw error;
    }
    const tunes = [...left.notes.values()];
    problems.push(...tunes.flatMap(note => note.problems), ...said);
    if (problems.some(isError)) {
      site.abandon();
      return end(ledger, tunes);
    }
    site.commit();
    return end(left, tunes);
  } catch (error) {
    if (!(error instanceof SiteTrouble)) throw error;
    problems.push(troubleOf(error, root));
    return end(ledger);
  }
}

/** Whether the site, whose plain files have been put, stands as the last build of the same book left it. */
function standsAsLeft(
  book: Book,
  { isQuick = false }: BuildOptions,
  site: OpenSite,
  ledger: Ledger,
): boolean {
  if (book !== ledger.book || isQuick !== ledger.isQuick) return false;
  const isLeft = ([path, { hash }]: readonly [string, Written]): boolean =>
    ledger.files.get(path)?.hash === hash;
  if (![...site.written].every(isLeft)) return false;
  const others = [...ledger.files].filter(([path]) => !site.written.has(path));
  return site.keepAll(others.map(([path, { from }]) => ({ path, from })));
}

/**
 * Makes tunes, pages and all that is over the whole book, and puts them into the site. What is found
 * amiss with more than one tune is `said`.
 */
async function makeSite(
  book: Book,
  { isPrivate, isQuick = false, progress }: BuildOptions,
  { program, maker }: BuildTools,
  ledger: Ledger,
  site: OpenSite,
  said: Problem[],
): Promise<Ledger> {
  const cardTexts = new Map<string, string>();
  const cards = cardsFrom(cardTexts);
  const notes: TuneNote[] = [];
  const makers = pageMakers(book, isPrivate);
  const pageSums = workedOut(ledger.pageSums, pageSum);
  const plans = planPages({ book, cards, isPrivate, ...makers }, pageSums.of);
  const blockSums = workedOut(ledger.blockSums, blockSum);
  const tasks = tuneTasks(book, { plans, isPrivate, program, sumOf: blockSums.of });
  const tunes = tuneShelf(tasks, { maker, known: ledger.notes, makePage: makers.make });
  const turns = pageTurns(plans, { tunes, program, makers });
  await putAll(site, turns.first);
  for await (const { note, files } of tunes.placed(site)) {
    progress('tunes', notes.length, tasks.length);
    notes.push(note);
    cardTexts.set(note.id, note.card);
    await putAll(site, files);
    await putAll(site, turns.after(note.id));
  }
  progress('tunes', tasks.length, tasks.length);
  await putAll(site, turns.last());
  const say = (found: readonly Problem[]): void => void said.push(...found);
  await putAll(site, wholeFiles({ book, isPrivate, isQuick, cards, tunes, site, program, say }));
  return {
    program,
    book,
    isQuick,
    pages: plans.length,
    notes: new Map(notes.map((note, i) => [tasks[i]?.key ?? '', note] as const)),
    files: site.written,
    pageSums: pageSums.asked,
    blockSums: blockSums.asked,
    read: ledger.read,
  };
}

const isTunePage = (path: string): boolean => path.startsWith(`${folders.tune}/`);

const isError = ({ severity }: Problem): boolean => severity === 'error';

async function putAll(site: OpenSite, files: Iterable<SiteFile>): Promise<void> {
  for (const file of files) await site.put(file);
}

/** What the disk refused, as a problem of the book's. */
const troubleOf = ({ rule, path, message }: SiteTrouble, root: string): Problem =>
  problem(rule, 'error', null, {
    actual: relative(root, path).startsWith('..') ? path : relative(root, path),
    facts: { reason: message },
  });
