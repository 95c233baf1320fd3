/** Slurs that abcjs would lose, by ABC 2.1, sections 4.11 and 4.20, as they are read and drawn. */
import { expect, it, test } from 'vitest';
import { parseAll } from '../../src/abc/abcjs-parse.ts';
import { forAbcjs } from '../../src/abc/for-abcjs.ts';
import { engraveTune } from '../../src/engrave/engrave-tune.ts';
import { studyOf } from '../bowing/study-of.ts';
import { notesOf, readTune } from './read-abc.ts';

const head = 'X:1\nT:T\nM:4/4\nL:1/8\nK:D\n';

/** Notes as written, and the slurs that open before and close after each. */
const slurs = (body: string) => {
  const { tune, problems } = readTune(`${head}${body}`);
  expect(problems).toEqual([]);
  return notesOf(tune).map(n =>
    [
      '<'.repeat(n.slursOpened),
      tune.source.text.slice(n.start, n.stop),
      '>'.repeat(n.slursClosed),
    ].join(''),
  );
};

it.each([
  ['d2(cB A2{GA}) F2|', ['d2', '<(c', 'B', 'A2{GA})>', 'F2']],
  ['d2(cB A2 {GA}) (F2|G8)|', ['d2', '<(c', 'B', 'A2 {GA})>', '<(F2', 'G8)>']],
  ['(A(Bc2 f2{ef})) a2|', ['<(A', '<(B', 'c2', 'f2{ef}))>>', 'a2']],
  ['(c>B-)B2 d4|', ['<(c>', 'B-)>', 'B2', 'd4']],
  ['"^a:]-)"A4 (B2c2)|', ['"^a:]-)"A4', '<(B2', 'c2)>']],
])('%s', (body, expected) => expect(slurs(body)).toEqual(expected));

test('each note is drawn as itself', () => {
  const { tune } = readTune(`${head}d2(cB A2{GA}) (F2|c>B-)B2 d4:]`);
  const score = engraveTune(studyOf(tune), { parse: text => parseAll(forAbcjs(text)) });
  const drawn = score.cells.flatMap(cell => cell.notes.map(n => n.event));
  expect(drawn).toEqual(tune.events.map((_, e) => e));
});
