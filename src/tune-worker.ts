import { parentPort, workerData } from 'node:worker_threads';
import { openCache } from './cache/open-cache.ts';
import type { KeyedJob } from './make-tunes.ts';
import { makeTune, type TuneNote } from './tune-product.ts';

/** A worker: takes batches of tunes, keeps each product in the cache, and answers with the notes. */
const cache = openCache((workerData as { readonly cache: string }).cache);

parentPort?.on('message', (jobs: readonly KeyedJob[]) => {
  const notes = jobs.map(({ key, job }): TuneNote => {
    const product = makeTune(job);
    cache.write(key, product);
    return product.note;
  });
  parentPort?.postMessage(notes);
});
