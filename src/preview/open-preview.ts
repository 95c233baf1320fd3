import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join, resolve } from 'node:path';
import type { PreviewBook, PreviewNews } from '../../shared/preview-news.ts';
import { unfinishedWatch } from '../app/unfinished-watch.ts';
import { type BuildResult, openBuilds } from '../incremental/open-builds.ts';
import { packageRoot } from '../pages/package-root.ts';
import type { Progress } from '../pipeline/progress.ts';
import { countProblems } from '../report/format-problems.ts';
import { answerRequest } from './answer-request.ts';
import { listenNearby, loopback } from './listen-nearby.ts';
import { newsStream } from './news-stream.ts';
import { ownTexts } from './own-texts.ts';
import { changedFiles, readSiteState, type SiteState } from './site-state.ts';
import { watchBook } from './watch-book.ts';
import { wordProblems } from './word-problems.ts';

/** A running preview of a book. */
export interface Preview {
  /** `http://127.0.0.1:4280/`. */
  readonly address: string;
  readonly port: number;
  /** Resolves after the first build; rejects with a defect of the program in it. */
  readonly firstBuild: Promise<void>;
  /** Stops the server and the watching, and waits for a running build. */
  readonly close: () => Promise<void>;
}

/** What a preview is opened with. */
export interface PreviewOptions {
  readonly root: string;
  /** An empty folder to build in; the caller removes it. */
  readonly folder: string;
  /** The port to try first; 0 for any free one. */
  readonly port: number;
  /** Cache folder that the next preview can use too; without one nothing outlives the preview. */
  readonly cache?: string;
  readonly progress: Progress;
  /** Called after each build, when the pages have been sent its news. */
  readonly onBuild: (result: BuildResult, news: PreviewNews) => void;
  /** Called with what a later build throws: a defect of the program. */
  readonly onDefect: (error: unknown) => void;
}

/**
 * Builds a book into a separate folder, with private notes and unfinished pages, serves it to this machine only,
 * and builds again whenever a file of the book changes. Builds never overlap: a change during a build
 * starts another right after it. Throws `UsageError` where no port is free or files cannot be watched.
 */
export async function openPreview(options: PreviewOptions): Promise<Preview> {
  const { root, folder, onBuild } = options;
  const out = join(folder, 'site');
  const run = randomUUID();
  const calm = { run, problems: [], counted: '', changed: [] };
  const news = newsStream({ ...calm, buildNumber: 0, outcome: 'working' });
  let buildNumber = 0;
  let site: SiteState = new Map();
  let book: PreviewBook = { title: '', tunes: [], recordings: [] };

  let port = 0;
  const ownText = ownTexts(packageRoot(), { book: () => book, buildNumber: () => buildNumber });
  const server = createServer(
    answerRequest({
      folder: out,
      site: () => site,
      buildNumber: () => buildNumber,
      port: () => port,
      news,
      ownText,
    }),
  );
  port = await listenNearby(server, options.port);
  const builds = openBuilds({
    root,
    out,
    isPrivate: true,
    isQuick: true,
    withUnfinished: true,
    progress: options.progress,
    cache: options.cache ?? join(folder, 'cache'),
    knownAs: 'preview',
  });

  const neededDrafts = unfinishedWatch();
  const buildOnce = async (): Promise<void> => {
    const built = await builds.build();
    const before = site;
    // Set before unfinished pages are checked: a request meanwhile must find the files that exist now.
    if (!built.failed) {
      site = readSiteState(out);
      book = previewBook(built);
    }
    const needed = await neededDrafts(built.book);
    const result = { ...built, problems: [...built.problems, ...needed] };
    buildNumber++;
    const latest: PreviewNews = {
      run,
      buildNumber,
      outcome: result.failed ? 'failed' : 'built',
      changed: changedFiles(before, site),
      problems: wordProblems(result.problems, file => sourceOf(root, file)),
      counted: countProblems(result.problems),
    };
    news.send(latest);
    onBuild(result, latest);
  };

  let isClosed = false;
  let building: Promise<void> | null = null;
  let isStale = false;
  const buildWhileStale = async (): Promise<void> => {
    try {
      while (isStale && !isClosed) {
        isStale = false;
        await buildOnce();
      }
    } finally {
      building = null;
    }
  };
  const build = (): Promise<void> => {
    isStale = true;
    building ??= buildWhileStale();
    return building;
  };
  const watch = await watchBook(root, () => {
    build().catch(options.onDefect);
  }).catch(async (error: unknown) => {
    server.close();
    await builds.close();
    throw error;
  });
  return {
    address: `http://${loopback}:${port}/`,
    port,
    firstBuild: build(),
    async close() {
      isClosed = true;
      await watch.close();
      news.close();
      server.closeAllConnections();
      await new Promise(done => server.close(done));
      await building?.catch(() => {}); // who waits for the build gets its error
      await builds.close();
    },
  };
}

const playable = /\.(?:mp3|m4a|aac|og[agv]|opus|flac|wav|mp4|m4v|webm)$/i;

/** The tunes whose ABC could be read, by title, and the recordings. */
const previewBook = ({ book, tunes }: BuildResult): PreviewBook => ({
  title: book.settings.title,
  tunes: tunes
    .filter(({ isStudied }) => isStudied)
    .map(({ card: { id, title } }) => ({ id, title }))
    .sort((a, b) => a.title.localeCompare(b.title, book.settings.language)),
  recordings: book.media.filter(path => playable.test(path)),
});

function sourceOf(root: string, file: string): string | null {
  try {
    return readFileSync(resolve(root, file), 'utf8');
  } catch {
    return null; // deleted since it was read: the problem is shown without its line
  }
}
