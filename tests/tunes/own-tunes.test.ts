import { describe, expect, it } from 'vitest';
import { type Tune, tuneTypes } from '../../shared/music/tune.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { traits } from './make-tune.ts';
import { ownTunes } from './own-tunes.ts';

const read = ownTunes.map(({ name, abc }) => ({
  name,
  ...parseTunes({ text: abc, file: 'own.abc', line: 1, indent: 0 }),
}));
const tunes = read.flatMap(r => r.tunes);
const lowest = (tune: Tune): number =>
  Math.min(...tune.events.flatMap(e => (e.kind === 'note' ? e.pitches.map(p => p.midi) : [])));

describe('the project’s own tunes to test with', () => {
  it('are 80 different ones that can be read, and nothing is wrong with them', () => {
    expect(read.flatMap(r => r.problems.map(p => [r.name, p.rule]))).toEqual([]);
    expect(tunes.length).toBe(80);
    const melodies = tunes.map(t => t.source.text.replace(/^[XT]:.*\n/gm, ''));
    expect(new Set(melodies).size).toBe(80);
  });

  it('are of every type, with every trait', () => {
    for (const type of tuneTypes) {
      expect(tunes.filter(t => t.type === type).length, type).toBe(traits.length);
    }
    expect(new Set(tunes.map(t => `${t.key.tonic} ${t.key.mode}`)).size).toBeGreaterThanOrEqual(8);
  });

  const withSome = (has: (tune: Tune) => boolean): number => tunes.filter(has).length;

  it.each<[string, (tune: Tune) => boolean]>([
    ['pickups', t => t.bars.some(b => b.pickup)],
    ['two endings', t => t.bars.some(b => b.endings.length === 1)],
    ['endings for two times each', t => t.bars.some(b => b.endings.length === 2)],
    ['parts of another length than eight bars', t => t.parts.some(p => p.bars.length !== 8)],
    ['bars of another metre', t => t.bars.some(b => b.meter.beats !== t.meter.beats)],
    ['notes below the lowest string as usual', t => lowest(t) < 58 && t.type !== null],
    ['ties', t => t.events.some(e => e.kind === 'note' && e.tied)],
    ['triplets', t => t.events.some(e => e.duration.d % 3 === 0)],
    ['slurs', t => t.events.some(e => e.kind === 'note' && e.slursOpened > 0)],
    ['slurs over a bar line', t => /\([^()|]*\|[^()|]*\)/.test(t.source.text)],
    ['another key on the way', t => t.bars.some(b => b.key.tonic !== t.key.tonic)],
    ['an order of parts', t => t.order !== null],
    ['rests', t => t.events.some(e => e.kind === 'rest')],
    ['double stops', t => t.events.some(e => e.kind === 'note' && e.pitches.length > 1)],
    ['grace notes', t => t.events.some(e => e.kind === 'note' && e.graces.length > 0)],
    ['strokes by hand', t => t.events.some(e => e.kind === 'note' && e.mark !== null)],
  ])('have %s', (_, has) => {
    expect(withSome(has)).toBeGreaterThanOrEqual(4);
    expect(withSome(has)).toBeLessThan(80);
  });

  it('are retuned in one of each type', () => {
    expect(ownTunes.filter(t => t.tuning !== null).length).toBe(tuneTypes.length);
  });
});
