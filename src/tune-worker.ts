import { parentPort, workerData } from 'node:worker_threads';
import { openCache } from './cache/open-cache.ts';
import { tuneCache } from './cache/tune-cache.ts';
import { makeTune } from './make-tune.ts';
import { keepTune, placeTune } from './tune-maker.ts';
import type { Batch } from './tune-workers.ts';

/** What a worker does: takes batches of tunes, stages their files, and answers with notes and hashes. */
export function serveBatches(): void {
  const cache = tuneCache(openCache((workerData as { readonly cache: string }).cache));
  parentPort?.on('message', ({ tasks, place }: Batch) => {
    const placed = tasks.map(task => {
      const made = makeTune(task);
      keepTune(cache, task, made);
      return placeTune(made, place);
    });
    parentPort?.postMessage(placed);
  });
}
