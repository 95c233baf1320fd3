import { parentPort, workerData } from 'node:worker_threads';
import { openCache } from './cache/open-cache.ts';
import { tuneCache } from './cache/tune-cache.ts';
import { makeTune } from './make-tune.ts';
import { stageFile } from './output/stage-file.ts';
import { keepTune, type PlacedTune } from './tune-maker.ts';
import type { Batch } from './tune-workers.ts';

/** A worker: takes batches of tunes, stages their files, and answers with notes and hashes. */
const cache = tuneCache(openCache((workerData as { readonly cache: string }).cache));

parentPort?.on('message', ({ tasks, place }: Batch) => {
  const placed = tasks.map((task): PlacedTune => {
    const made = makeTune(task);
    keepTune(cache, task, made);
    const files = made.files.map(({ path, from, content }) => ({
      path,
      from,
      staged: stageFile(place, path, content),
    }));
    return { note: made.note, files };
  });
  parentPort?.postMessage(placed);
});
