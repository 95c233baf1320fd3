import { relative } from 'node:path';
import { type Problem, problem } from '../../shared/problem.ts';
import { type OpenSite, openSite } from '../output/open-site.ts';
import { SiteError } from '../output/site-error.ts';
import { plainFiles } from '../pipeline/book-wide-files.ts';
import type { TuneSummary } from '../pipeline/made-tune.ts';
import { makeSite } from '../pipeline/pipeline.ts';
import type { TuneMaker } from '../workers/tune-maker.ts';
import type { BuildState, SiteState } from './build-state.ts';
import type { BuildOptions, BuildResult } from './open-builds.ts';
import { rememberedTunes } from './remembered-tunes.ts';
import { type ReadState, rereadBook } from './reread-book.ts';
import type { TuneStore } from './tune-store.ts';

/** What the builds of one book share. */
interface BuildTools {
  readonly store: TuneStore;
  readonly maker: TuneMaker;
}

/**
 * Runs the pipeline on a book, and takes over from the last build what has not changed. Problems are
 * collected to the end; if one of them is an error, nothing is written and the last site stays.
 * `last` is the state that the last build left, `left` the state for the next one. Throws only for
 * defects of the program.
 */
export async function buildBook(
  options: BuildOptions,
  tools: BuildTools,
  last: BuildState,
): Promise<{ readonly result: BuildResult; readonly left: BuildState }> {
  const { root, withUnfinished = false } = options;
  const reading = await rereadBook(root, { unfinished: withUnfinished }, last.reading);
  const { book } = reading;
  const failed = (problems: readonly Problem[], tunes: readonly TuneSummary[] = []) => ({
    result: { book, tunes, problems, failed: true, pages: 0 },
    left: { ...last, reading },
  });
  if (book.problems.some(isError)) return failed(book.problems);
  try {
    const { site, said } = await writeSite(reading, options, tools, last.site);
    const tunes = [...site.tunes.values()];
    const problems = [...book.problems, ...tunes.flatMap(tune => tune.problems), ...said];
    if (problems.some(isError)) return failed(problems, tunes);
    return {
      result: { book, tunes, problems, failed: false, pages: site.pages },
      left: { ...last, reading, site },
    };
  } catch (error) {
    if (!(error instanceof SiteError)) throw error;
    return failed([...book.problems, problemOfSite(error, root)]);
  }
}

interface WrittenSite {
  readonly site: SiteState;
  /** Problems that belong to no single tune. */
  readonly said: readonly Problem[];
}

/** Makes and writes the site; where making it finds errors, the site stays as it was. */
async function writeSite(
  { book, filesHash }: ReadState,
  options: BuildOptions,
  { store, maker }: BuildTools,
  last: SiteState | null,
): Promise<WrittenSite> {
  const { out, isPrivate, isQuick = false, progress } = options;
  const site = await openSite(out, last?.files ?? new Map(), () => progress('wait', 0, 0));
  try {
    for (const file of plainFiles(book, isPrivate)) await site.put(file);
    if (last?.filesHash === filesHash && last.isQuick === isQuick && standsAsLeft(site, last)) {
      site.commit();
      return { site: last, said: [] };
    }
    const summaries = last?.tunes ?? new Map();
    const hashes: string[] = [];
    const made = await makeSite(
      book,
      { isPrivate, isQuick, progress },
      tasks => {
        hashes.push(...tasks.map(task => task.inputHash));
        return rememberedTunes(tasks, { summaries, store, maker });
      },
      site,
    );
    const { pages, tunes, problems } = made;
    if ([...problems, ...tunes.flatMap(tune => tune.problems)].some(isError)) site.abandon();
    else site.commit();
    const byHash = new Map(tunes.map((tune, i) => [hashes[i] as string, tune] as const));
    const files = site.written;
    return { site: { filesHash, isQuick, pages, tunes: byHash, files }, said: problems };
  } catch (error) {
    site.abandon();
    throw error;
  }
}

/** Whether every file of the site is as the last build left it. Call it when the plain files have been put. */
function standsAsLeft(site: OpenSite, { files }: SiteState): boolean {
  const others = new Map(files);
  for (const [path, { hash }] of site.written) {
    if (files.get(path)?.hash !== hash) return false;
    others.delete(path);
  }
  return site.keepUnchanged([...others].map(([path, { inputHash }]) => ({ path, inputHash })));
}

const isError = ({ severity }: Problem): boolean => severity === 'error';

/** Turns an error of writing the site into a problem of the book. */
const problemOfSite = ({ rule, path, message }: SiteError, root: string): Problem =>
  problem(rule, null, {
    actual: relative(root, path).startsWith('..') ? path : relative(root, path),
    facts: { reason: message },
  });
