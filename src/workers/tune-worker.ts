import { parentPort, workerData } from 'node:worker_threads';
import { tuneStore } from '../incremental/tune-store.ts';
import type { StagedTune } from '../pipeline/made-tune.ts';
import { makeTune } from '../pipeline/pipeline.ts';
import { stageTune } from './tune-maker.ts';
import type { Batch, ThreadData } from './tune-threads.ts';

/** Runs in a worker thread: makes the tunes of each batch, stages their files, and sends back the summaries. */
export function serveBatches(): void {
  const { cache, program } = workerData as ThreadData;
  const store = tuneStore(cache, program);
  const serve = async ({ tasks, place }: Batch): Promise<void> => {
    const staged: StagedTune[] = [];
    for (const task of tasks) {
      const made = await makeTune(task);
      store.keep(task, made);
      staged.push(stageTune(made, place));
    }
    parentPort?.postMessage(staged);
  };
  // One batch after another, since the main thread expects answers in the order of its batches.
  let served = Promise.resolve();
  parentPort?.on('message', (batch: Batch) => {
    served = served.then(() => serve(batch));
  });
}
