import { spawnSync } from 'node:child_process';
import { appendFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { corpusFiles } from '../corpus/corpus.ts';
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

/** Says at its end, on the last line of stderr, what a process has used. */
const meter = `data:text/javascript,process.on('exit',()=>{const u=process.resourceUsage();process.stderr.write('\\n'+JSON.stringify([u.maxRSS,(u.userCPUTime+u.systemCPUTime)/1e6]))})`;

function run(...args: string[]): Ran {
  const began = performance.now();
  const { status, stderr } = spawnSync(process.execPath, ['--import', meter, ...args], {
    encoding: 'utf8',
    maxBuffer: 1 << 30,
  });
  const seconds = (performance.now() - began) / 1000;
  if (status !== 0) throw new Error(stderr.slice(-2000));
  const [rss, cpu] = JSON.parse(stderr.slice(stderr.lastIndexOf('\n'))) as [number, number];
  return { seconds, cpu, peakMb: rss / 1024 };
}

const build = (book: string): Ran =>
  run('dist/cli.js', 'build', book, '--quick', '--out', `${book}-site`, '--cache', `${book}-cache`);

const told = ({ seconds, cpu, peakMb }: Ran): string =>
  `${seconds.toFixed(2)} s (${cpu.toFixed(2)} s of processor), ${peakMb.toFixed(0)} MB at most`;

if (corpusFiles().length === 0) {
  console.log('Building: left out, no corpus beside the project (../shared/corpus)');
} else {
  const bundled = spawnSync(process.execPath, ['src/bundle.mjs'], { encoding: 'utf8' });
  if (bundled.status !== 0) throw new Error(bundled.stderr);
  const book = join(work, 'book');
  writeBigBook(book, base);
  console.log(
    `Building: a book of ${base} real tunes, PDFs and zip apart, each run a process of its own`,
  );
  const naive = run(join('tests', 'bench', 'naive-loop.mjs'), book);
  console.log(`  abcjs in jsdom, drawing alone: ${told(naive)}`);
  const cold = build(book);
  const share = (a: Ran, b: Ran): string =>
    `${(a.seconds / b.seconds).toFixed(3)} of its time, ${(a.cpu / b.cpu).toFixed(3)} of its processor time`;
  console.log(`  cold build: ${told(cold)}; ${share(cold, naive)}`);
  const same = build(book);
  console.log(`  nothing changed: ${told(same)}; of the cold build ${share(same, cold)}`);
  appendFileSync(lessonFile(book, 3), '\nAnd a word more.\n');
  const changed = build(book);
  console.log(`  one lesson changed: ${told(changed)}; of the cold build ${share(changed, cold)}`);

  const large = join(work, 'large');
  writeBigBook(large, 10 * base);
  const ten = build(large);
  const each = (ten.seconds / cold.seconds / 10).toFixed(2);
  console.log(`  ${10 * base} tunes, cold: ${told(ten)}`);
  console.log(
    `  peak memory ${(ten.peakMb / cold.peakMb).toFixed(2)} of ${base} tunes', time a tune ${each}`,
  );
}
rmSync(work, { recursive: true, force: true });
