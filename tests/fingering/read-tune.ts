import type { Tune } from '../../shared/music/tune.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';

/** One tune from a few lines of ABC; the header is completed where it is left out. */
export function readTune(abc: string): Tune {
  const text = abc.startsWith('X:') ? abc : `X:1\nT:Test\nM:4/4\nL:1/8\n${abc}`;
  const tune = parseTunes({ text, file: 'test.md', line: 1, indent: 0 }).tunes[0];
  if (!tune) throw new Error(`not a tune: ${abc}`);
  return tune;
}
