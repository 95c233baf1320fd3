import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import type { Study } from '../../shared/study.ts';
import { engraveTune } from '../../src/engrave/engrave-tune.ts';
import type { Score } from '../../src/engrave/score.ts';
import { onTunes } from '../tunes/on-tunes.ts';
import { composeStudy } from './compose-study.ts';
import { jig, reel, slipJig } from './test-tunes.ts';

const tunes = [
  ['reel', reel],
  ['jig', jig],
  ['slip jig', slipJig],
] as const;

const svgOf = (score: Score): string => score.cells.map(c => c.svg).join('');
const everything = (score: Score): string =>
  score.symbols + score.cells.map(c => c.prelude).join('') + svgOf(score);
const notesIn = (svg: string): readonly number[] =>
  [...svg.matchAll(/data-n="(\d+)"/g)].map(m => Number(m[1]));
const writtenNotes = ({ tune }: Study): readonly number[] =>
  tune.events.flatMap((e, i) => (e.kind === 'note' ? [i] : []));

/** Stroke signs of a cell from left to right: a bracket goes up first, a V goes down, a dot along. */
function signsOf(svg: string): readonly { x: number; direction: 'down' | 'up' }[] {
  return [...svg.matchAll(/<path class="mark-(?:all|change|anchor)" d="([^"]*)"/g)]
    .flatMap(([, d]) =>
      subpaths(d ?? '').flatMap(({ x, first }) =>
        first === 'h'
          ? []
          : [{ x, direction: first === 'v' ? ('down' as const) : ('up' as const) }],
      ),
    )
    .sort((a, b) => a.x - b.x);
}

/** Where each stroke of a path begins, and the command that it begins with. */
function subpaths(d: string): readonly { x: number; first: string }[] {
  const found: { x: number; first: string }[] = [];
  let x = 0;
  let moved = false;
  for (const [, command = '', rest = ''] of d.matchAll(/([Mmhlv])([^Mmhlv]*)/g)) {
    const numbers = (rest.match(/-?(?:\d+\.?\d*|\.\d+)/g) ?? []).map(Number);
    if (moved) found.push({ x, first: command });
    moved = /m/i.test(command);
    if (command === 'M') x = numbers[0] ?? 0;
    if (command === 'm') x += numbers[0] ?? 0;
    if (command === 'h') x += numbers.reduce((sum, n) => sum + n, 0);
    if (command === 'l') x += (numbers[0] ?? 0) + (numbers[2] ?? 0);
  }
  return found;
}

describe.each(tunes)('%s', (_, text) => {
  const study = composeStudy(text);
  const score = engraveTune(study);
  const svg = svgOf(score);

  test('every written note is drawn once, in order', () => {
    expect(notesIn(svg)).toEqual(writtenNotes(study));
  });

  test('every bar is in one cell', () => {
    expect(score.cells.flatMap(c => c.bars)).toEqual(study.tune.bars.map((_bar, b) => b));
  });

  test('the signs drawn are the strokes of the first pass', () => {
    const first = new Map<number, string>();
    for (const { notes, direction } of study.bowing.plan.strokes) {
      const event = study.performance.notes[notes[0] ?? -1]?.event;
      if (event !== undefined && !first.has(event)) first.set(event, direction);
    }
    for (const cell of score.cells) {
      const wanted = cell.bars.flatMap(b => {
        const bar = study.tune.bars[b];
        return bar ? [...first].filter(([e]) => bar.first <= e && e < bar.end) : [];
      });
      const inOrder = wanted.sort(([a], [b]) => a - b).map(([, direction]) => direction);
      expect([cell.name, signsOf(cell.svg).map(s => s.direction)]).toEqual([cell.name, inOrder]);
    }
  });

  test('cells share height and staff, so that they join, and are of two widths', () => {
    expect(new Set(score.cells.map(c => c.width)).size).toBeLessThanOrEqual(2);
    for (const cell of score.cells) {
      expect([cell.height, cell.staffTop]).toEqual([
        score.cells[0]?.height,
        score.cells[0]?.staffTop,
      ]);
      const staff = /class="staff"[^>]*d="M0 ([\d.]+)H([\d.]+)/.exec(cell.svg);
      expect(Number(staff?.[1])).toBeCloseTo(cell.staffTop, 1);
      const prelude = /class="staff"[^>]*d="M0 ([\d.]+)/.exec(cell.prelude);
      expect(prelude?.[1]).toBe(staff?.[1]);
    }
  });

  test('symbols that are used exist, and no other', () => {
    const used = new Set(
      [...(svg + score.cells.map(c => c.prelude).join('')).matchAll(/href="#([^"]+)"/g)].map(
        m => m[1],
      ),
    );
    expect([...used].sort()).toEqual([...score.glyphs.keys()].sort());
    for (const id of used) expect(score.symbols).toMatch(new RegExp(`<(?:path|g) id="${id}"`));
  });

  test('nothing that a strict policy forbids, and well-formed', () => {
    const all = everything(score);
    expect(all).not.toMatch(/ style=|<style| on\w+=|NaN|undefined|Infinity/);
    expect(all.match(/<g[ >]/g)?.length).toBe(all.match(/<\/g>/g)?.length);
  });

  test('nothing is drawn above the top or below the bottom', () => {
    for (const cell of score.cells) {
      const ys = [...cell.svg.matchAll(/ y="([\d.-]+)"/g)].map(m => Number(m[1]));
      expect(Math.min(...ys)).toBeGreaterThan(0);
      expect(Math.max(...ys)).toBeLessThan(cell.height);
    }
  });
});

test('a slur over the edge of a cell is drawn on both sides', () => {
  const cut = composeStudy(jig);
  const bare = composeStudy(jig.replace('(D|G2)B', 'D|G2B').replace('(a|b)', 'a|b'));
  const curves = (study: Study): Record<string, number> =>
    Object.fromEntries(
      engraveTune(study).cells.map(c => [
        c.name,
        (c.svg.match(/M[\d. -]+c[\d. -]+c[\d. -]+(?=[M"])/g) ?? []).length,
      ]),
    );
  const [with_, without] = [curves(cut), curves(bare)];
  const added = Object.keys(with_).filter(name => (with_[name] ?? 0) > (without[name] ?? 0));
  expect(added).toEqual(['A3-A4', 'A5-A6', 'A7-A8']);
  expect(with_['A5-A6']).toBe((without['A5-A6'] ?? 0) + 2);
});

test('an anchor is set off by class, tint and outline', () => {
  const plain = composeStudy(reel);
  const bar = plain.tune.bars.find(b => b.name === 'B3');
  if (!bar) throw new Error('no bar B3');
  const score = engraveTune(composeStudy(reel, [{ first: bar.first, last: bar.end - 1 }]));
  const cell = score.cells.find(c => c.name === 'B3-B4');
  const anchored = [...(cell?.svg.matchAll(/data-n="(\d+)" class="in-anchor"/g) ?? [])].map(m =>
    Number(m[1]),
  );
  expect(anchored).toEqual(notesIn(cell?.svg ?? '').filter(n => bar.first <= n && n < bar.end));
  expect(cell?.svg).toContain('class="anchor-band"');
  expect(cell?.svg).toContain('class="anchor-edge"');
  expect(cell?.svg).toContain('class="mark-anchor"');
  expect(svgOf(score).match(/anchor-band/g)?.length).toBe(1);
});

test('layers can be left out', () => {
  const bare = svgOf(
    engraveTune(composeStudy(reel), { marks: false, fingers: false, letters: false }),
  );
  expect(bare).not.toMatch(/layer-marks|layer-fingers|layer-letters/);
});

test('each cell has its bars in words, and its name in the drawing', () => {
  const score = engraveTune(composeStudy(jig), {
    describe: bar => (bar === 2 ? '' : `bar ${bar}`),
  });
  expect(score.cells[0]?.svg).toContain('role="img" aria-label="A1-A2"');
  expect(score.cells[0]?.spoken).toEqual([
    { bar: 'A0', text: 'bar 0' },
    { bar: 'A1', text: 'bar 1' },
  ]);
  expect(score.cells[0]?.partName).toBe('A');
});

test('a reel of thirty-two bars keeps to its budget of bytes', () => {
  const score = engraveTune(composeStudy(reel), { fingers: false, letters: false });
  const preludes = [...new Set(score.cells.map(c => c.prelude))].join('');
  const page = score.symbols + preludes + svgOf(score);
  console.log(`reel with all marks: ${page.length} bytes, ${gzipSync(page).length} gzipped`);
  expect(page.length).toBeLessThan(25 * 1024);
  expect(gzipSync(page).length).toBeLessThan(6 * 1024);
});

onTunes('every note is drawn once', 7, tunes => {
  for (const { name, abc } of tunes) {
    const study = composeStudy(abc);
    const svg = svgOf(engraveTune(study));
    expect(notesIn(svg), name).toEqual(writtenNotes(study));
    expect(svg, name).not.toMatch(/NaN|undefined|Infinity|element type|no symbol/);
  }
});
