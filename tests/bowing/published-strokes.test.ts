import { describe, expect, test } from 'vitest';
import type { Direction } from '../../shared/music/tune.ts';
import { notesBowed, strokesOf, tuneOf } from './strokes-of.ts';

/**
 * Leopold Mozart, Versuch einer gründlichen Violinschule, Augsburg 1756: page and example number
 * of the first edition. One letter a stroke, by the bar in which it begins.
 */
describe('Mozart, Violinschule 1756', () => {
  const rows: [string, string, string, string, Direction | null][] = [
    ['79/1', 'M:2/4', 'c d2 e|d e2 f|', 'DUD UDU', 'down'],
    ['79/2', 'M:2/4', 'c/de/ f/ga/|', 'DUDUDU', 'down'],
    ['79/3', 'M:2/4', 'c (d2 e)|d (e2 f)|', 'DU DU', 'down'],
    ['79/4', 'M:2/4', 'c/(de/) f/(ga/)|', 'DUDU', 'down'],
    ['78/1', 'M:3/4', 'c2 c2 c2|c2 c2 c2|', 'DUD UDU', null],
    ['84/1', 'M:3/8', 'g e B|(c/B/) c/d/e/c/|', 'DUD UDUDU', null],
    ['85/1', 'M:3/8', 'ceg|ceg|ceg|ceg|ceg|ceg|ceg|ceg|', 'DUD UDU DUD UDU DUD UDU DUD UDU', null],
    ['78/3', 'M:4/4', 'vg4 ve2 uc2|vd4 vB2 uG2|', 'DDU DDU', null],
    ['74/1', 'M:4/4', 'z2 cc d2 (ee)|f2 (c/d/c/B/) A2 (d/e/d/c/)|', 'DUDU DUDU', null],
    ['76/5', 'M:2/4', 'G|c2 G2|', 'U DU', null],
  ];
  test.each(rows)('p. %s', (_, meter, abc, strokes, start) => {
    expect(strokesOf(tuneOf(abc, `${meter}\nL:1/8`), { start })).toBe(strokes);
  });

  test('p. 82/2: a tie over the bar keeps its stroke', () => {
    const tune = tuneOf('c e2 g-|g e2 c-|c G2 G/F/|', 'M:2/4\nL:1/8');
    expect(strokesOf(tune, { start: 'down' })).toBe('DUD UD UDU');
  });

  test('p. 71/5: a bar that begins with a rest, laid so that the next starts down', () => {
    expect(strokesOf(tuneOf('z g f e d c|c6|', 'M:3/4\nL:1/8')).split(' ')[0]).toMatch(/^U/);
  });

  /** Pp. 130-134: six quavers in 3/4, starting down; groups, then the strokes of bars 2 and 3. */
  const plans: [number, string, string][] = [
    [6, 'c d (ef) g a|', 'UD'],
    [12, '(cdefga)|', 'UD'],
    [22, '(cd) e f g a|', 'UD'],
  ];
  test.each(plans)('pp. 130-134, plan %i', (_, bar, starts) => {
    const bars = strokesOf(tuneOf(bar.repeat(3), 'M:3/4\nL:1/8')).split(' ');
    expect(`${bars[1]?.[0]}${bars[2]?.[0]}`).toBe(starts);
  });
});

/** Carl Schröder, Handbook of Violin Playing, on the use of down and up bow; read in an excerpt without its edition and page. */
describe('Schröder, Handbook of Violin Playing: first strokes', () => {
  test('a full bar starts down', () => {
    expect(strokesOf(tuneOf('cdef gabc|'))).toBe('DUDUDUDU');
  });
  test.each([
    ['a pickup of one stroke starts up', 'G|c8|', 'U D'],
    ['a pickup wholly slurred starts up', '(GAB)|c8|', 'U D'],
    ['of several pickup strokes the last is up', 'GA|c8|', 'DU D'],
  ])('%s', (_, abc, strokes) => {
    expect(strokesOf(tuneOf(abc))).toBe(strokes);
  });
});

/**
 * Arthur Broadley, Chats to 'Cello Students, on slurs and separate notes; read in an excerpt without its
 * edition and page. A rule in words and no exercise: the notes are ours.
 */
describe("Broadley, Chats to 'Cello Students: slurs and what stands between", () => {
  test('an even number of separate notes makes equal slurs alternate', () => {
    expect(notesBowed(tuneOf('(cd)ef (ga)gf|'))).toBe('DDUDUUDU');
  });
  test('an odd number keeps them the same', () => {
    expect(notesBowed(tuneOf('(cde)f (gab)a|'))).toBe('DDDUDDDU');
  });
});

describe('common practice, no source', () => {
  const arrives = (abc: string): string | undefined =>
    notesBowed(tuneOf(`${abc}|e8|`, 'M:none\nL:1/8')).split(' ')[1];

  /** Strokes by their notes: a slur of m notes takes m - 1 strokes away. */
  test.each([
    [1],
    [1, 1],
    [3],
    [2, 1],
    [1, 1, 1],
    [4],
    [1, 3],
    [2, 2],
    [1, 2, 1],
    [3, 1, 1],
    [2, 3],
    [5, 1],
    [3, 3],
    [2, 1, 2, 1],
    [3, 2, 1, 1],
    [1, 1, 1, 1, 1, 1, 1],
  ])('strokes of %j notes, the first down: an odd number of strokes arrives up', (...groups) => {
    const bowed = groups.map(m => (m === 1 ? 'c' : `(${'cdefg'.slice(0, m)})`)).join('');
    expect(arrives(bowed)).toBe(groups.length % 2 === 1 ? 'U' : 'D');
  });
  test('hooks are slurs; a treble for two quavers flips, for one crotchet it does not', () => {
    expect(arrives('(.c.d)ef')).toBe('U');
    expect([arrives('c2d2'), arrives('(3c/c/c/d2')]).toEqual(['D', 'D']);
    expect([arrives('ccd2'), arrives('(3c/c/c/d2')]).toEqual(['U', 'D']);
  });
  test('a roll for three separate quavers keeps', () => {
    expect([arrives('cccd'), arrives('~c3d')]).toEqual(['D', 'D']);
  });
  test.each([
    ['reel', 'M:4/4', 'cdef gabc|', 'D'],
    ['jig', 'M:6/8', 'cde fga|', 'D'],
    ['slip jig', 'M:9/8', 'cde fga gfe|', 'U'],
    ['waltz', 'M:3/4', 'c2d2e2|', 'U'],
    ['jig: crotchet, quaver, three quavers', 'M:6/8', 'c2d efg|', 'U'],
    ['jig: the same, crotchet and quaver slurred', 'M:6/8', '(c2d) efg|', 'D'],
  ])('separate notes in a bar: %s', (_, meter, bar, next) => {
    expect(strokesOf(tuneOf(bar + bar, `${meter}\nL:1/8`)).split(' ')[1]?.[0]).toBe(next);
  });
  test('grace notes, rests and chords', () => {
    expect(notesBowed(tuneOf('{d}c z [eg]2 {ga}b z3|'))).toBe('DUD');
  });
  test('u(BA) and (uBA) mean the same', () => {
    const [a, b] = ['u(BA) c2 d4|', '(uBA) c2 d4|'].map(abc => notesBowed(tuneOf(abc)));
    expect(a).toBe('UUDU');
    expect(b).toBe(a);
  });
  test('each part played twice alike takes an even number of strokes', () => {
    const tune = tuneOf('|:(cd)ef gabc:||:(cde)f (ga)bc:|');
    expect(strokesOf(tune).replaceAll(' ', '').length % 2).toBe(0);
  });
});

/**
 * Patterns that teachers name, as groups of notes; the strokes follow from them by alternation. Common
 * practice, from memory; no source is at hand for the names or the groups.
 */
describe('patterns of bowing: common practice', () => {
  test.each([
    ['reel 2-1-1: halves mirror', 'M:4/4', '(cd)ef (ga)gf|', 'DDUDUUDU'],
    ['jig 2-1: each beat down', 'M:6/8', '(cd)e (fg)a|', 'DDUDDU'],
    ['jig 1-2', 'M:6/8', 'c(de) f(ga)|', 'DUUDUU'],
    ['jig 3-1-1-1', 'M:6/8', '(cde) fga|', 'DDDUDU'],
    ['waltz: down, then 2 and 3 slurred', 'M:3/4', 'c2(d2e2)|', 'DUU'],
  ])('%s', (_, meter, bar, strokes) => {
    expect(notesBowed(tuneOf(bar, `${meter}\nL:1/8`))).toBe(strokes);
  });
  test('3-3-2 is odd: the next bar is reversed', () => {
    const bar = '(cde)(fga)(gf)|';
    expect(notesBowed(tuneOf(bar + bar))).toBe('DDDUUUDD UUUDDDUU');
  });
});
