import { writeSync } from 'node:fs';
import { kinds, makeCase } from './make-case.ts';
import { gatherSeeds } from './seeds.ts';
import { tryCase } from './try-case.ts';

/**
 * The process in which cases are tried: its arguments are the kind, the seed, and the first case and
 * the one to stop before. It writes a line to its file 3 before each case, at once, so that whoever
 * watches knows which one it hung or died at; and one with the longest time and the largest memory
 * so far, every hundred cases.
 */
const [name, seed, first, stop] = process.argv.slice(2);
const kind = kinds.find(k => k === name);
if (kind === undefined) throw new Error(`no kind ${name}`);
const tell = (line: object): void => void writeSync(3, `${JSON.stringify(line)}\n`);

const seeds = gatherSeeds();
let longest = { ms: 0, number: 0 };
const tellMost = (): void => tell({ ...longest, memory: process.resourceUsage().maxRSS * 1024 });
for (let number = Number(first); number < Number(stop); number++) {
  tell({ begun: number });
  const from = performance.now();
  try {
    await tryCase(makeCase(kind, Number(seed), number, seeds));
  } catch (error) {
    const fault = error instanceof Error ? (error.stack ?? error.message) : String(error);
    tell({ failed: number, fault });
  }
  const ms = performance.now() - from;
  if (ms > longest.ms) longest = { ms, number };
  if (number % 100 === 99) tellMost();
}
tellMost();
tell({ begun: Number(stop) });
