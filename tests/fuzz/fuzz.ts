import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import { parseArgs } from 'node:util';
import { type Kind, kinds, makeCase } from './make-case.ts';
import { gatherSeeds } from './seeds.ts';

/**
 * Tries so many inputs of every kind, in a process of their own that is watched: one that hangs past
 * the bound, or takes the process down, is named with its seed and number, and the rest goes on.
 */
const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '20000' },
    seed: { type: 'string', default: '1' },
    kind: { type: 'string' },
    case: { type: 'string' },
    from: { type: 'string', default: '0' },
  },
});

/** Seconds after which a case counts as hung. A whole build of a small book is among them. */
const bound = 30;
/** Megabytes of JavaScript's own that the process may hold. */
const mostMemory = 1024;

interface Tally {
  tried: number;
  crashes: number;
  hangs: number;
  longest: number;
  longestCase: number;
  memory: number;
}

const seed = Number(values.seed);
const seeds = gatherSeeds();
const chosen = kinds.filter(k => values.kind === undefined || k === values.kind);
const only = values.case === undefined ? null : Number(values.case);

for (const kind of chosen) {
  const from = only ?? Number(values.from);
  const tally = await tryKind(kind, from, only === null ? from + Number(values.count) : only + 1);
  process.stdout.write(`${told(kind, tally)}\n`);
  if (tally.crashes + tally.hangs > 0) process.exitCode = 1;
}

async function tryKind(kind: Kind, first: number, stop: number): Promise<Tally> {
  const tally: Tally = { tried: 0, crashes: 0, hangs: 0, longest: 0, longestCase: 0, memory: 0 };
  // Stopped before the end, it says what was tried by then; the child ends with its pipe.
  process.removeAllListeners('SIGTERM').on('SIGTERM', () => {
    process.stdout.write(`${told(kind, tally)}, stopped\n`);
    process.exit(1);
  });
  let next = first;
  while (next < stop) next = await tryUntilFault(kind, next, stop, tally);
  return tally;
}

/** Runs the cases on until one takes its process down; the number of the next one to try. */
function tryUntilFault(kind: Kind, first: number, stop: number, tally: Tally): Promise<number> {
  const script = join(import.meta.dirname, 'try-cases.mjs');
  const child = spawn(
    process.execPath,
    [`--max-old-space-size=${mostMemory}`, script, kind, `${seed}`, `${first}`, `${stop}`],
    { stdio: ['ignore', 'ignore', 'pipe', 'pipe'] },
  );
  let at = first;
  let began = Date.now();
  let hung = false;
  let complaint = '';
  child.stderr?.on('data', data => {
    complaint = (complaint + data).slice(-2000);
  });
  const watch = setInterval(() => {
    if (Date.now() - began < bound * 1000) return;
    hung = true;
    child.kill('SIGKILL');
  }, 500);
  createInterface({ input: child.stdio[3] as Readable }).on('line', line => {
    const told = JSON.parse(line);
    if (told.begun !== undefined) {
      tally.tried += told.begun - at;
      at = told.begun;
      began = Date.now();
    } else if (told.failed !== undefined) {
      tally.crashes += 1;
      report('crash', kind, told.failed, told.fault);
    } else {
      tally.memory = Math.max(tally.memory, told.memory);
      if (told.ms > tally.longest) [tally.longest, tally.longestCase] = [told.ms, told.number];
    }
  });
  return new Promise(resolve => {
    child.on('close', code => {
      clearInterval(watch);
      if (at >= stop) return resolve(stop);
      tally.tried += 1;
      if (hung) tally.hangs += 1;
      else tally.crashes += 1;
      report(hung ? 'hang' : `process ended with ${code}`, kind, at, complaint);
      resolve(at + 1);
    });
  });
}

function report(what: string, kind: Kind, number: number, told: string): void {
  const { files } = makeCase(kind, seed, number, seeds);
  const texts = [...files].map(([path, content]) => `--- ${path}\n${content}`).join('\n');
  process.stdout.write(
    `${what}: --kind ${kind} --seed ${seed} --case ${number}\n${told}\n${texts.slice(0, 3000)}\n\n`,
  );
}

function told(kind: Kind, t: Tally): string {
  return [
    `${kind}: ${t.tried} inputs tried, ${t.crashes} crashes, ${t.hangs} hangs`,
    `longest ${(t.longest / 1000).toFixed(2)} s (case ${t.longestCase})`,
    `largest memory ${Math.round(t.memory / 2 ** 20)} MB`,
  ].join(', ');
}
