import { spawnSync } from 'node:child_process';
import { appendFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { cacheFolder } from '../../src/incremental/cache-folder.ts';
import { openBuilds } from '../../src/incremental/open-builds.ts';
import { whichTunes } from './bench-tunes.ts';
import { lessonFile, writeBigBook } from './big-book.ts';

/** Tunes of the book; the large one has ten times as many. `BOWBOOK_BENCH_TUNES` makes it smaller. */
const base = Number(process.env.BOWBOOK_BENCH_TUNES ?? 1000);
const work = mkdtempSync(join(tmpdir(), 'bowbook-bench-'));

interface Ran {
  readonly seconds: number;
  /** Processor time of all threads. */
  readonly cpu: number;
  readonly peakMb: number;
}

/** Says at its end, on the last line of stderr, what a process has used. CommonJS: Node need load nothing for it. */
const meter = join(work, 'meter.cjs');
writeFileSync(
  meter,
  `process.on('exit', () => {
    const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
    const used = [maxRSS, (userCPUTime + systemCPUTime) / 1e6];
    require('node:fs').writeSync(2, '\\n' + JSON.stringify(used));
  });`,
);

function run(...args: string[]): Ran {
  const began = performance.now();
  const { status, stderr } = spawnSync(process.execPath, ['--require', meter, ...args], {
    encoding: 'utf8',
    maxBuffer: 1 << 30,
  });
  const seconds = (performance.now() - began) / 1000;
  if (status !== 0) throw new Error(stderr.slice(-2000));
  const [rss, cpu] = JSON.parse(stderr.slice(stderr.lastIndexOf('\n'))) as [number, number];
  return { seconds, cpu, peakMb: rss / 1024 };
}

/**
 * `to`: which site and cache of the book's. A cold build has new ones, and those of the last stay: to make
 * files is several times as slow on ext4 for five minutes after as many were deleted.
 */
function build(book: string, to: number): Ran {
  const { out, cache } = placesOf(book, to);
  return run('dist/cli.js', 'build', book, '--quick', '--out', out, '--cache', cache);
}

const placesOf = (book: string, to: number) => ({
  out: `${book}-site-${to}`,
  cache: `${book}-cache-${to}`,
});

/** Seconds of builds by one process that stays, as the preview's does, after a lesson has changed. */
async function whileOpen(book: string, to: number, lesson: string): Promise<readonly number[]> {
  const { out, cache } = placesOf(book, to);
  const builds = openBuilds({
    root: book,
    out,
    cache: cacheFolder(book, false, cache),
    isPrivate: false,
    isQuick: true,
    progress: () => {},
  });
  const timed = async (): Promise<number> => {
    const began = performance.now();
    await builds.build();
    return (performance.now() - began) / 1000;
  };
  await timed(); // reads what the command left
  const times: number[] = [];
  for (const round of rounds) {
    await setTimeout(1000); // it keeps what it made for a later run meanwhile
    appendFileSync(lesson, `\nAnd another, ${round}.\n`);
    times.push(await timed());
  }
  await builds.close();
  return times;
}

/** How often what is compared is run, in turn: a machine's speed drifts. */
const rounds = [1, 2, 3, 4, 5];

const median = (numbers: readonly number[]): number =>
  numbers.toSorted((a, b) => a - b)[(numbers.length - 1) / 2] ?? Number.NaN;

/** The middle of each figure of several runs. */
const told = (ran: readonly Ran[]): string => {
  const of = (figure: keyof Ran): number => median(ran.map(r => r[figure]));
  return `${of('seconds').toFixed(2)} s (${of('cpu').toFixed(2)} s of processor), ${of('peakMb').toFixed(0)} MB at most`;
};

/** Ratios of runs to those they were made in turn with: the middle one, and all. */
const share = (a: readonly Ran[], b: readonly Ran[]): string => {
  const ratios = a.map((ran, i) => ran.seconds / (b[i]?.seconds ?? Number.NaN));
  return `${median(ratios).toFixed(3)} of its time (${ratios.map(r => r.toFixed(3)).join(', ')})`;
};

const bundled = spawnSync(process.execPath, ['src/bundling/bundle.mjs'], { encoding: 'utf8' });
if (bundled.status !== 0) throw new Error(bundled.stderr);
const book = join(work, 'book');
writeBigBook(book, base);
console.log(
  `Building: a book of ${base} ${whichTunes}, PDFs and zip apart, each run a process of its own; the middle of ${rounds.length}`,
);
const pairs = rounds.map(round => ({
  naive: run(join('tests', 'bench', 'naive-loop.mjs'), book),
  cold: build(book, round),
}));
const [naive, cold] = [pairs.map(p => p.naive), pairs.map(p => p.cold)];
console.log(`  abcjs in jsdom, drawing alone: ${told(naive)}`);
console.log(`  cold build: ${told(cold)}; ${share(cold, naive)}`);
const same = rounds.map(round => build(book, round));
const changed = rounds.map(round => {
  appendFileSync(lessonFile(book, 3), `\nAnd a word more, ${round}.\n`);
  return build(book, round);
});
console.log(`  nothing changed: ${told(same)}; of the cold build ${share(same, cold)}`);
console.log(`  one lesson changed: ${told(changed)}; of the cold build ${share(changed, cold)}`);
const open = await whileOpen(book, 1, lessonFile(book, 3));
const ofCold = median(open) / median(cold.map(r => r.seconds));
console.log(
  `  one lesson changed, in a process that stays: ${median(open).toFixed(2)} s (${open.map(s => s.toFixed(2)).join(', ')}); of the cold build ${ofCold.toFixed(3)} of its time`,
);

const large = join(work, 'large');
writeBigBook(large, 10 * base);
const ten = build(large, 1);
const each = ten.seconds / median(cold.map(r => r.seconds)) / 10;
const peak = ten.peakMb / median(cold.map(r => r.peakMb));
console.log(`  ${10 * base} tunes, cold: ${told([ten])}`);
console.log(
  `  peak memory ${peak.toFixed(2)} of ${base} tunes', time a tune ${each.toFixed(2)} of theirs`,
);
rmSync(work, { recursive: true, force: true });
