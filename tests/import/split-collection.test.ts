import { describe, expect, it } from 'vitest';
import { splitCollection } from '../../src/import/split-collection.ts';

const abcs = (text: string) => splitCollection(text).tunes.map(t => t.abc);

describe('a collection of tunes', () => {
  it('is cut at each X:, and knows on which line each begins', () => {
    const { tunes } = splitCollection('X:1\nK:D\nD|\n\n\nX: 2\nK:G\nG|\n');
    expect(tunes).toEqual([
      { abc: 'X:1\nK:D\nD|', line: 1, headerLines: 0 },
      { abc: 'X: 2\nK:G\nG|', line: 6, headerLines: 0 },
    ]);
  });

  it('has a header that holds for every tune (ABC 2.1, section 2.2.2)', () => {
    const text =
      '%abc-2.1\n%%abc-charset iso-8859-1\nB:The Quay Book\nL:1/16\n\nX:1\nT:a\nK:D\nD|\n\nX:2\nL:1/8\nK:G\nG|\n';
    expect(abcs(text)).toEqual([
      'X:1\nB:The Quay Book\nL:1/16\nT:a\nK:D\nD|',
      'X:2\nB:The Quay Book\nL:1/16\nL:1/8\nK:G\nG|',
    ]);
  });

  it('keeps music that a blank line cuts off, and escapes of fields only', () => {
    expect(abcs('X:1\nT:Caf\\\'e\nK:D\n"^\\\'a"D|\n\nE|\n')).toEqual([
      'X:1\nT:Café\nK:D\n"^\\\'a"D|\n\nE|',
    ]);
  });

  it('may be one tune without a number, or no tune at all', () => {
    expect(abcs('\nT:a\nK:D\nD|\n')).toEqual(['T:a\nK:D\nD|']);
    expect(abcs('Dear Wenna,\nhere are no tunes.\n')).toEqual([]);
    expect(abcs('')).toEqual([]);
  });

  it('tells of words before the first tune', () => {
    expect(splitCollection('% mine\nM:4/4\n\nDear all\n\nX:1\nK:D\nD|\n').wordsBefore).toBe(4);
    expect(splitCollection('% mine\nM:4/4\n\nX:1\nK:D\nD|\n').wordsBefore).toBeNull();
  });
});
