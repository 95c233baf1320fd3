import { describe, expect, test } from 'vitest';
import type { Edit } from '../../shared/bowing/bowing.ts';
import { editText } from '../../shared/bowing/slur-edits.ts';
import { problem } from '../../shared/problem.ts';
import { bowingMessages } from '../../shared/words/en/bowing.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { tuneOf } from './strokes-of.ts';
import { anchorAt, studyOf } from './study-of.ts';

const { editSentence, planSentence, wholeTuneSentence } = wordsFor('en', 'letters');

const tune = tuneOf('|:cdef gabc|defg abc2:|', 'M:4/4\nL:1/8\nR:reel');
const edits: readonly [Edit, string][] = [
  [{ kind: 'slur', notes: [1, 2] }, 'Slur notes 2 and 3 of A1.'],
  [{ kind: 'drop', notes: [7, 8] }, 'Take away the slur over note 8 of A1 to note 1 of A2.'],
  [
    { kind: 'lengthen', from: [0, 1], to: [0, 1, 2] },
    'Lengthen the slur over notes 1 and 2 of A1: let it hold notes 1 to 3 of A1.',
  ],
  [
    { kind: 'shorten', from: [0, 1, 2], to: [1, 2] },
    'Shorten the slur over notes 1 to 3 of A1: let it hold notes 2 and 3 of A1.',
  ],
  [
    {
      kind: 'split',
      from: [0, 1, 2, 3],
      to: [
        [0, 1],
        [2, 3],
      ],
    },
    'Split the slur over notes 1 to 4 of A1: slur notes 1 and 2 of A1 and notes 3 and 4 of A1.',
  ],
  [
    {
      kind: 'merge',
      from: [
        [0, 1],
        [2, 3],
      ],
      to: [0, 1, 2, 3],
    },
    'Make one slur of notes 1 and 2 of A1 and notes 3 and 4 of A1.',
  ],
  [
    { kind: 'retake', after: null, before: 8, direction: 'down', opening: null },
    'Lift the bow before note 1 of A2 and start it again down: write v before note 1 of A2.',
  ],
  [
    {
      kind: 'retake',
      after: 7,
      before: 8,
      direction: 'up',
      opening: { event: 0, direction: 'down' },
    },
    'Lift the bow before note 1 of A2 and start it again up: write !breath! before note 8 of A1, u before note 1 of A2 and v before note 1 of A1.',
  ],
];

describe('edits', () => {
  test.each(edits)('%o', (edit, sentence) => {
    expect(editSentence(tune, edit)).toBe(sentence);
    const facts = {
      note: 'A2:1',
      passes: '1, 2',
      since: 8,
      counted: 'down',
      mend: editText(tune, edit),
      abc: 'A1: (cd); A2: e',
      mends: 1,
    };
    const words = bowingMessages['stroke-conflict']?.(
      problem('stroke-conflict', null, { facts, actual: 'up', expected: ['down'] }),
    );
    expect(words?.mend).toBe(`${sentence} Write A1: \`(cd)\`, A2: \`e\`.`);
    expect(words?.message).toBe(
      'The sign at note 1 of A2 asks for an up-bow, but the bow comes to it down, 8 strokes after the last settled one (passes 1, 2).',
    );
  });
});

test('a plan: what it changes, and why it arrives', () => {
  const study = studyOf(tune, { anchors: [anchorAt('A2', 'up')] });
  const plan = study.bowing.anchors[0]?.leadIns[0]?.plans[0];
  expect(plan && planSentence(tune, plan)).toMatch(
    /^Slur notes 6 and 7 of A1, which turns the bow round once, so it arrives; /,
  );
});

test('demands that cannot be met together are named', () => {
  const demands = [
    { kind: 'repeat', part: 0 },
    { kind: 'sign', event: 3, pass: 2 },
  ] as const;
  expect(wholeTuneSentence(tune, { kind: 'contradiction', demands })).toBe(
    'No slurs can meet these together: part A starting the second time as the first; the sign on note 4 of A1, pass 2.',
  );
});
