import { describe, expect, it } from 'vitest';
import type { Tune } from '../../shared/music/tune.ts';
import { mapSections, usualUnit } from '../../shared/sections/map-sections.ts';
import type { SectionMap } from '../../shared/sections/section-map.ts';
import { readTune } from '../fingering/read-tune.ts';
import { weighbridge } from '../try/try-tunes.ts';

const labels = (map: SectionMap): string => map.phrases.map(p => p.label).join(' ');
const names = (map: SectionMap): string => map.phrases.map(p => p.name).join(' ');
const kin = (map: SectionMap): string => map.phrases.map(p => p.kin).join(' ');

/** The id of the note at which a phrase first differs from the one it is compared with. */
function firstDifference(tune: Tune, map: SectionMap, phrase: number): string | null {
  const e = tune.events[map.phrases[phrase]?.firstDifference ?? -1];
  return e?.kind === 'note' ? e.id : null;
}

describe('a whole tune', () => {
  const tune = readTune(weighbridge);

  it('by the bar: A7 equals B7, the second ending of A the first of B', () => {
    const map = mapSections(tune, 1);
    const label = (bar: string): string | undefined => map.phrases.find(p => p.name === bar)?.label;
    expect(label('A7')).toBe(label('B7'));
    expect(label('A8/2')).toBe(label('B8/1'));
    expect(label('A8/1')).not.toBe(label('A8/2'));
    expect(label('A8/1')?.charAt(0)).toBe(label('A8/2')?.charAt(0));
    expect(new Set(map.phrases.map(p => p.label)).size).toBe(18 - 5);
  });

  it('in twos: endings are heard after the bar before them', () => {
    const map = mapSections(tune);
    expect(names(map)).toBe('A1-A2 A3-A4 A5-A6 A7-A8/1 A8/2 B1-B2 B3-B4 B5-B6 B7-B8/1 B8/2');
    expect(labels(map)).toBe('a b c d d′ e b′ e d′ d′′');
    expect(kin(map)).toBe('own own own own ending own ending same same ending');
    expect(firstDifference(tune, map, 4)).toBe('A8/2:5');
    expect(map.phrases.map(p => p.bars.length)).toEqual([3, 2, 2, 2, 1, 2, 2, 2, 2, 1]);
  });
});

describe('phrases', () => {
  it('are two bars, four in waltzes, or what the teacher says', () => {
    const reel = readTune('R:reel\nK:D\nd8|e8|f8|g8|');
    const waltz = readTune('X:1\nT:W\nR:waltz\nM:3/4\nL:1/4\nK:D\nd3|e3|f3|g3|d3|e3|f3|a3|]');
    expect(usualUnit(reel)).toBe(2);
    expect(names(mapSections(waltz))).toBe('A1-A4 A5-A8');
    expect(names(mapSections(reel, 1))).toBe('A1 A2 A3 A4');
  });

  it('take in the pickup that leads into them, without comparing it', () => {
    const tune = readTune('K:D\nAG|F2A2 d4|e2f2 g4|F2A2 d4|e2f2 g2||ag|f2d2 A4|B8|f2d2 A4|B6|]');
    const map = mapSections(tune);
    expect(map.phrases[0]?.bars).toHaveLength(3);
    expect(tune.events[map.phrases[0]?.first ?? -1]).toMatchObject({ id: 'A0:1' });
    expect(map.phrases[0]?.name).toBe('A1-A2');
    expect(map.phrases[1]?.kin).toBe('same');
  });

  it('hold every written bar once, in crooked tunes too', () => {
    const bar = (n: number): string => `${'CDEFGABcdef'.charAt(n)}8|`;
    for (const [count, unit, sizes] of [
      [9, 2, [2, 2, 2, 3]],
      [7, 2, [2, 2, 3]],
      [1, 2, [1]],
      [10, 4, [4, 6]],
      [11, 4, [4, 4, 3]],
      [3, 4, [3]],
    ] as const) {
      const abc = Array.from({ length: count }, (_, i) => bar(i)).join('');
      const map = mapSections(readTune(`K:C\n${abc}]`), unit);
      expect(map.phrases.map(p => p.bars.length)).toEqual(sizes);
    }
  });

  it('put the bar left over where most of the tune is heard alike', () => {
    const [x, y] = ['GABc d2BG|ABcA G2FE|', 'e2f2 g4|f2d2 e4|'];
    const crooked = (abc: string): SectionMap => mapSections(readTune(`K:G\n${abc}]`));
    const early = crooked(`${x}${x}d8|${x}${y}`);
    expect(names(early)).toBe('A1-A2 A3-A5 A6-A7 A8-A9');
    expect(labels(early)).toBe('a a′ a b');
    const late = crooked(`${x}${y}${x}${y}d8|`);
    expect(names(late)).toBe('A1-A2 A3-A4 A5-A6 A7-A9');
    expect(labels(late)).toBe('a b a b′');
  });

  it('of endings as long as a phrase are phrases', () => {
    const map = mapSections(readTune('K:C\n|:CDEF G4|ABcd e4|1 f2e2 d4|c8:|2 g2f2 e4|c8|]'));
    expect(names(map)).toBe('A1-A2 A3/1-A4/1 A3/2-A4/2');
    // The endings share their last bar.
    expect(kin(map)).toBe('own own start');
  });
});

describe('kin', () => {
  const first = 'GABc d2BG|ABcA G2FE|';
  const pair = (second: string): { tune: Tune; map: SectionMap } => {
    const tune = readTune(`K:G\n${first}${second}]`);
    return { tune, map: mapSections(tune) };
  };
  it.each([
    ['same', 'GABc d2BG|ABcA G2FE|', 'a a', null],
    ['ending', 'GABc d2BG|ABcA D2DD|', 'a a′', 'A4:5'],
    ['ending', 'GABc d2BG|e2e2 e4|', 'a a′', 'A4:1'],
    ['start', 'efge d2BA|ABcA G2FE|', 'a a′', 'A3:1'],
    ['varied', 'GABe d2BG|ABcA G2FE|', 'a a′', 'A3:4'],
    ['varied', 'GABe d2BG|ABcA G2FD|', 'a a′', 'A3:4'],
    ['moved', 'ABcd e2cA|BcdB A2GF|', 'a a′', 'A3:1'],
    ['moved', "gabc' d'2bg|abc'a g2fe|", 'a a′', 'A3:1'],
    ['own', 'e2d2 B2e2|f4 e4|', 'a b', null],
    ['own', 'G2d2 e2f2|a4 b4|', 'a b', null],
  ])('%s: %s', (kind, second, label, difference) => {
    const { tune, map } = pair(second);
    expect(map.phrases[1]?.kin).toBe(kind);
    expect(labels(map)).toBe(label);
    expect(firstDifference(tune, map, 1)).toBe(difference);
  });

  it('hears a held note and the same note repeated as a small difference', () => {
    const { tune, map } = pair('GABc ddBG|ABcA G2FE|');
    expect(map.phrases[1]?.kin).toBe('varied');
    expect(firstDifference(tune, map, 1)).toBe('A3:6');
    const other = readTune('K:G\nGABc ddBG|ABcA G2FE|GABc d2BG|ABcA G2FE|]');
    // Where the later phrase holds on, the note that is held is the one that differs.
    expect(firstDifference(other, mapSections(other), 1)).toBe('A3:5');
  });

  it('hears a tied note as one', () => {
    expect(pair('GABc d-dBG|ABcA G-GFE|').map.phrases[1]?.kin).toBe('same');
    expect(pair('GABc d2BA-|ABcA G2FE|').map.phrases[1]?.kin).toBe('varied');
  });

  it('takes the top note of a chord', () => {
    expect(pair('[DG]ABc [Bd]2BG|ABcA [DG]2FE|').map.phrases[1]?.kin).toBe('same');
  });

  it('gives each form its own primes', () => {
    const tune = readTune(
      `K:G\n${first}GABc d2BG|e8|${first}GABc d2BG|g8|GABc d2BG|e8|c2e2 f2a2|b8|]`,
    );
    expect(labels(mapSections(tune))).toBe('a a′ a a′′ a′ b');
    expect(mapSections(tune).phrases[4]).toMatchObject({ kin: 'same', of: 1 });
    expect(mapSections(tune).toLearn).toEqual([0, 1, 3, 5]);
  });
});

describe('forks', () => {
  const x = 'GABc d2BG|c8|';
  const [y, z, w] = ['e2e2 f4|g8|', 'A2F2 D4|D8|', 'b2a2 g4|d8|'];
  const forks = (abc: string): string[] => {
    const map = mapSections(readTune(`K:G\n${abc}`));
    const way = (g: { after: number; to: number }): string =>
      `${map.phrases[g.after]?.name}>${map.phrases[g.to]?.label}`;
    return map.forks.map(f => `${f.label}: ${f.goesOn.map(way).join(' ')}`);
  };
  it('are where the same phrase goes on differently', () => {
    expect(forks(`${x}${y}${x}${z}]`)).toEqual(['a: A1-A2>b A5-A6>c']);
  });
  it('are not made by repeats, endings or the end of the tune', () => {
    expect(forks(`|:${x}${y}:||:${z}${w}:|`)).toEqual([]);
    expect(forks(`|:${x}|1 e2e2 f4|g8:|2 b2a2 g4|g8|]`)).toEqual([]);
    expect(forks(`${x}${y}${z}${y}]`)).toEqual([]);
  });
  it('lead on into the part that follows', () => {
    expect(forks(`|:${x}${y}:||:${z}${y}${w}${z}:|`)).toEqual(['b: A3-A4>c B3-B4>d']);
  });
  it('follow the order of P:', () => {
    const tune = readTune(`P:BA\nK:G\nP:A\n${x}${y}\nP:B\n${z}${x}|`);
    expect(mapSections(tune).toLearn.map(i => mapSections(tune).phrases[i]?.name)).toEqual([
      'B1-B2',
      'B3-B4',
      'A3-A4',
    ]);
  });
});
