import { writeSync } from 'node:fs';
import { kinds, makeCase } from './make-case.ts';
import { gatherSeeds } from './seeds.ts';
import { tryCase } from './try-case.ts';

/**
 * The process in which cases are tried: its arguments are the kind, the seed, and the first case and
 * the one to stop before. It writes a line to its file 3 before each case and after it, at once, so
 * that whoever watches knows which one it hung or died at.
 */
const [name, seed, first, stop] = process.argv.slice(2);
const kind = kinds.find(k => k === name);
if (kind === undefined) throw new Error(`no kind ${name}`);
const tell = (line: object): void => void writeSync(3, `${JSON.stringify(line)}\n`);

const seeds = gatherSeeds();
for (let number = Number(first); number < Number(stop); number++) {
  tell({ begun: number });
  const from = performance.now();
  let fault: string | null = null;
  try {
    await tryCase(makeCase(kind, Number(seed), number, seeds));
  } catch (error) {
    fault = error instanceof Error ? (error.stack ?? error.message) : String(error);
  }
  const memory = process.memoryUsage.rss();
  tell({ done: number, ms: performance.now() - from, memory, fault });
}
