import { gzipSync } from 'node:zlib';
import { playedOrder } from '../../shared/music/played-order.ts';
import { openingOf, type SearchEntry } from '../../shared/search/search-entry.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { makeTuneFinder } from '../../src/browser/search/find-tunes.ts';
import { queries } from '../search/queries.ts';
import { benchTunes } from './bench-tunes.ts';

/**
 * Finding a tune among 1,000 and among 10,000, those to measure with over and over under numbered titles: the
 * index, made when the box is first touched, and an answer, averaged over the queries of the tests.
 * The reference is reading the same list of tunes as JSON, which no search can do without.
 */
const known = benchTunes
  .flatMap(text => parseTunes({ text, file: 'bench.abc', line: 1, indent: 0 }).tunes)
  .map(tune => ({ tune, ...openingOf({ tune, performance: playedOrder(tune) }, 'letters') }));

function entries(count: number): readonly SearchEntry[] {
  return Array.from({ length: count }, (_, i) => {
    const { tune, ...opening } = known[i % known.length] as (typeof known)[number];
    return {
      id: `tune-${i}`,
      title: `${tune.title} ${Math.floor(i / known.length) || ''}`.trim(),
      aliases: tune.aliases,
      composer: tune.credits.composer,
      type: tune.type,
      key: `${tune.key.tonic} ${tune.key.mode}`,
      form: tune.parts.map(p => p.name).join(''),
      ...opening,
    };
  });
}

const timed = <T>(work: () => T): readonly [T, number] => {
  const began = performance.now();
  const made = work();
  return [made, performance.now() - began];
};

const nothing = { touched: '', type: null, key: null, form: null };
console.log('Finding a tune: the list read as JSON, the index made of it, and an answer');
for (const count of [1000, 10_000]) {
  const json = JSON.stringify(entries(count));
  const [list, read] = timed(() => JSON.parse(json) as readonly SearchEntry[]);
  const [find, indexed] = timed(() => makeTuneFinder(list, 'letters'));
  const [, answered] = timed(() => {
    for (const [text] of queries) find({ ...nothing, text });
  });
  const each = answered / queries.length;
  console.log(
    `  ${count} tunes: ${(gzipSync(json).length / 1024).toFixed(0)} KB gzipped; read ${read.toFixed(1)} ms, indexed in ${(indexed / read).toFixed(0)} times that (${indexed.toFixed(0)} ms), an answer in ${(each / read).toFixed(2)} of it (${each.toFixed(1)} ms)`,
  );
}
