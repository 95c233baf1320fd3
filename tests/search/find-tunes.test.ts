import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { playedOrder } from '../../shared/music/played-order.ts';
import type { SearchEntry } from '../../shared/search/search-entry.ts';
import { openingOf } from '../../shared/search/search-entry.ts';
import type { Study } from '../../shared/study.ts';
import { makeTuneFinder } from '../../src/browser/search/find-tunes.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { onTunes, readTunes } from '../tunes/on-tunes.ts';
import { queries } from './queries.ts';

const nothing = { text: '', touched: '', type: null, key: null, form: null };

const entryOf = (study: Pick<Study, 'tune' | 'performance'>, id: string): SearchEntry => ({
  id,
  title: study.tune.title,
  aliases: study.tune.aliases,
  composer: study.tune.credits.composer,
  type: study.tune.type,
  key: `${study.tune.key.tonic} ${study.tune.key.mode}`,
  form: study.tune.parts.map(p => p.name).join(''),
  ...openingOf(study, 'letters'),
});

const { tunes } = await studyBook(join(import.meta.dirname, '../../content'), () => {});
const demo = tunes.flatMap(({ block, study }) => (study ? [entryOf(study, block.id)] : []));

describe('finding a tune', () => {
  const find = makeTuneFinder(demo, 'letters');

  it.each(queries)('%s finds %s', (text, id) => {
    const first = find({ ...nothing, text }).slice(0, 3);
    expect(first.map(e => e.id)).toContain(id);
  });

  onTunes('still finds nine in ten of them among others', 1, tunes => {
    const others = readTunes(tunes).map((tune, i) =>
      entryOf({ tune, performance: playedOrder(tune) }, `other-${i}`),
    );
    const among = makeTuneFinder([...others, ...demo], 'letters');
    const missed = queries.filter(
      ([text, id]) =>
        !among({ ...nothing, text })
          .slice(0, 3)
          .some(e => e.id === id),
    );
    expect(missed.length, JSON.stringify(missed)).toBeLessThanOrEqual(queries.length / 10);
  });

  it('shows every tune where nothing is asked, and combines filters with words', () => {
    expect(find(nothing)).toHaveLength(demo.length);
    const reels = find({ ...nothing, type: 'reel' });
    expect(reels.length).toBeGreaterThan(2);
    expect(reels.every(e => e.type === 'reel')).toBe(true);
    expect(find({ ...nothing, text: 'rope', type: 'reel', key: 'E dorian' })).toHaveLength(1);
    expect(find({ ...nothing, text: 'rope', type: 'waltz' })).toEqual([]);
  });

  it('finds an opening touched on the strings, where letters would not tell C from C sharp', () => {
    // Four Ropes Ashore opens A, C sharp, E.
    expect(find({ ...nothing, touched: '914' }).map(e => e.id)).toContain('four-ropes-ashore');
    expect(find({ ...nothing, touched: '904' }).map(e => e.id)).not.toContain('four-ropes-ashore');
  });
});
