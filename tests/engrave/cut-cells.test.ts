import { expect, test } from 'vitest';
import { cutCells } from '../../src/engrave/cut-cells.ts';
import { composeStudy } from './compose-study.ts';
import { reel } from './test-tunes.ts';

test('a phrase is a cell, its pickup with it, endings named', () => {
  const { tune, map } = composeStudy(reel);
  const cells = cutCells(tune, map.phrases);
  expect(cells.map(c => c.name)).toEqual([
    'A1-A2',
    'A3-A4',
    'A5-A6',
    'A7-A8/1',
    'A8/2',
    'B1-B2',
    'B3-B4',
    'B5-B6',
    'B7-B8/1',
    'B8/2',
  ]);
  expect(cells.filter(c => c.opensPart).map(c => c.name)).toEqual(['A1-A2', 'B1-B2']);
  expect(cells.filter(c => c.closesPart).map(c => c.name)).toEqual(['A8/2', 'B8/2']);
  expect(tune.bars[cells[0]?.bars[0] ?? -1]?.name).toBe('A0');
});

test('a phrase of more than twenty notes is cut at a bar line', () => {
  const { tune, map } = composeStudy(
    'X:1\nM:4/4\nL:1/16\nK:C\nCDEF GABc defg agfe|defg agfe dcBA GFED|C4 E4 G4 c4|c4 G4 E4 C4|]',
  );
  const cells = cutCells(tune, map.phrases);
  expect(cells.map(c => c.name)).toEqual(['A1', 'A2', 'A3-A4']);
  expect(cells.map(c => c.opensPhrase)).toEqual([true, false, true]);
});
