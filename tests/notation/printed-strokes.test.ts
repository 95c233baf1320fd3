import { expect, test } from 'vitest';
import { parsePitch } from '../../shared/music/pitch.ts';
import { noteLetter } from '../../shared/notation/note-letter.ts';
import { printedStrokes } from '../../shared/notation/printed-strokes.ts';
import { composeStudy } from '../engrave/compose-study.ts';

test('weights: phrase starts, slurs and what follows one tell more than the rest; anchors most', () => {
  const text = 'X:1\nM:4/4\nL:1/4\nK:G\nGABc|d(cB)A|GABc|dcBA|]';
  const study = composeStudy(text, [{ first: 12, last: 13 }]);
  const printed = printedStrokes(study);
  const shown = [...printed].map(([e, { direction, weight }]) => `${e}${direction[0]}${weight[0]}`);
  expect(shown.join(' ')).toBe('0dc 1ua 2da 3ua 4da 5uc 7dc 8uc 9da 10ua 11da 12ua 13da 14ua 15da');
  expect(printed.get(12)?.weight).toBe('anchor');
  expect(printed.get(13)?.weight).toBe('anchor');
  expect(printed.get(14)?.weight).toBe('all');
});

test('a note that the second time plays the other way is flagged, with the first sign', () => {
  const study = composeStudy('X:1\nM:3/4\nL:1/4\nK:G\n|:GAB:|');
  const printed = printedStrokes(study);
  expect([...printed.values()].map(s => [s.direction, s.varies])).toEqual([
    ['down', true],
    ['up', true],
    ['down', true],
  ]);
});

test('letters tell octaves apart, and sign only what the key does not', () => {
  const { tune } = composeStudy('X:1\nM:4/4\nL:1/4\nK:D\nDEFG|]');
  const names = ['G3', 'D4', 'F#4', 'F4', 'B4', 'C#5', 'C5', 'B5', 'C#6'];
  const letters = names.map(name => {
    const pitch = parsePitch(name);
    return pitch && noteLetter(pitch, tune.key, 'letters');
  });
  expect(letters).toEqual(['G,', 'D', 'F', 'F♮', 'B', 'c', 'c♮', 'b', 'c’']);
});
