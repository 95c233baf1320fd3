import { parentPort, workerData } from 'node:worker_threads';
import { openCache } from '../incremental/open-cache.ts';
import { tuneCache } from '../incremental/tune-cache.ts';
import type { SitePlace } from '../output/stage-file.ts';
import { makeTune } from '../pipeline/make-tune.ts';
import type { TuneTask } from '../pipeline/tune-jobs.ts';
import { pageReader } from '../read/page-reader.ts';
import type { KeptPage } from '../read/read-memo.ts';
import type { PageNames } from '../read/read-page.ts';
import { keepTune, type PlacedTune, placeTune } from './tune-maker.ts';
import type { ReadRequest, Request } from './tune-workers.ts';

/**
 * What a worker thread does: it reads pages and answers with their names, then with the pages; takes
 * batches of tunes, stages their files, and answers with notes and hashes.
 */
export function serveRequests(): void {
  const cache = tuneCache(openCache((workerData as { readonly cache: string }).cache));
  const reader = pageReader();
  const read = ({ pages, under }: ReadRequest): readonly (PageNames | KeptPage)[] =>
    pages.map(page =>
      under === null ? reader.names(page) : reader.finish(page, under.index, under.settings),
    );
  const make = (task: TuneTask, place: SitePlace): PlacedTune => {
    const made = makeTune(task);
    keepTune(cache, task, made);
    return placeTune(made, place);
  };
  parentPort?.on('message', (request: Request) => {
    parentPort?.postMessage(
      'pages' in request ? read(request) : request.tasks.map(task => make(task, request.place)),
    );
  });
}
