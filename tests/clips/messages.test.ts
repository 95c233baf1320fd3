import { describe, expect, it } from 'vitest';
import { checkCues } from '../../shared/clips/check-cues.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { readTune } from '../abc/read-abc.ts';

const { tune } = readTune('X:1\nT:T\nR:reel\nM:4/4\nL:1/8\nK:D\n|:D8|E8:|\n|:F8|G8:|');

/** What is said of cues, each with its mend. */
const said = (...cues: readonly (readonly [string, number])[]): readonly string[] =>
  checkCues(
    tune,
    playedOrder(tune),
    cues.map(([bar, seconds], i) => ({
      bar,
      pass: Number(bar.split('/')[1] ?? 1),
      seconds,
      place: { file: 'lesson.md', line: 1, column: i + 1 },
    })),
  ).map(problem => wordProblem(problem).message);

describe('what is said of cues', () => {
  it('names the bar, the time and what was looked for', () => {
    expect(said(['A1', 0], ['B9', 9])).toEqual([
      'The cue `B9` names a bar that the tune has not: its bars run from `A1` to `B2`.',
    ]);
    expect(said(['A1', 0], ['A1/3', 9])).toEqual([
      'The cue `A1/3` asks for time 3 through, but A1 is played 2 times.',
    ]);
    expect(said(['A1', 64], ['B1', 59.96])).toEqual([
      'The cue `B1` at 1:00 comes before `A1` at 1:04, which is played first.',
    ]);
    expect(said(['A1', 4.5], ['B1', 4.5])).toEqual([
      'The cue `B1` at 0:04.5 stands on the cue `A1` at 0:04.5.',
    ]);
    expect(said(['A1', 0], ['A1/2', 4], ['B1', 9], ['B1/2', 12])).toEqual([
      'The cue `B1` at 0:09 comes 25 % late: at the recording’s pace it would be about 0:08.',
    ]);
  });
});
