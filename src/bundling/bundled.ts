/** The entry of the bundle for Node: exports what the files in `src/start/` call. */
export { runCommand } from '../commands/cli.ts';

/** Runs a worker thread. Imported only there, since it loads everything that tunes are made with. */
export const serveBatches = async (): Promise<void> =>
  (await import('../workers/tune-worker.ts')).serveBatches();
