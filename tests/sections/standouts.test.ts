import { describe, expect, it } from 'vitest';
import { assignFingers } from '../../shared/fingering/assign-fingers.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { chooseStandouts, type StandoutName } from '../../shared/sections/standout-names.ts';
import { standoutsOf } from '../../shared/sections/standouts.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { readTune } from '../fingering/read-tune.ts';

const { standoutSentence } = wordsFor('en', 'letters');

/**
 * The sentences about a whole tune, with its strokes given as how many notes each has, down first.
 * `keep` chooses among them; left out, all are told.
 */
function standouts(
  abc: string,
  counts: readonly number[],
  keep?: readonly StandoutName[] | null,
): string[] {
  const tune = readTune(abc);
  const { fingering } = assignFingers(tune, fiddleTuning);
  const notes = tune.events.flatMap((e, i) => (e.kind === 'note' ? [i] : []));
  let at = 0;
  const strokes = counts.map((count, i) => {
    at += count;
    return {
      direction: i % 2 === 0 ? ('down' as const) : ('up' as const),
      notes: notes.slice(at - count, at),
    };
  });
  expect(at).toBe(notes.length);
  const passage = { first: 0, last: tune.events.length - 1 };
  const found = standoutsOf(tune, fingering, passage, strokes);
  const chosen = keep === undefined ? found : chooseStandouts(found, keep);
  return chosen.map(h => standoutSentence(tune, fiddleTuning, h, 'letters'));
}

describe('what stands out', () => {
  it('in a run there and back, slurred in twos round its top', () => {
    expect(standouts('K:G\n(GA) (Bc) d2|(cB) (AG) z2|', [2, 2, 1, 2, 2])).toEqual([
      'Slurred in twos: G–A, B–C, C–B, A–G.',
      'A run of 5 letters up: G, A, B, C, D.',
      'A run of 5 letters down: D, C, B, A, G.',
      'New strings: to A within a stroke, to D within a stroke.',
      'The strokes are the same from either end: 2 2 1 2 2.',
    ]);
  });
  it('where one finger crosses, and each new string has the same stroke', () => {
    expect(standouts('K:D\nFEBc eFcB|', [1, 1, 1, 1, 1, 1, 1, 1])).toEqual([
      'Finger 1 on two strings: E and B.',
      'Finger 2 on two strings: F sharp and C sharp.',
      'New strings: to A on a down-bow, to D on an up-bow, to A on a down-bow.',
    ]);
    expect(standouts('K:G\nGFAB z2|dB FG|', [1, 1, 1, 1, 1, 1, 1, 1]).at(-1)).toBe(
      'Every new string begins on a down-bow.',
    );
  });
  it('counts a tied note once, and three letters are no run', () => {
    expect(standouts('K:D\nA2 B2 c2 A2-|A8|', [1, 1, 1, 2])).toEqual([]);
  });
});

describe('what is shown of it', () => {
  const abc = 'K:G\n(GA) (Bc) d2|(cB) (AG) z2|';
  const strokes = [2, 2, 1, 2, 2];
  it('is one fact of each kind, then a second, four at most', () => {
    expect(standouts(abc, strokes, null)).toEqual([
      'Slurred in twos: G–A, B–C, C–B, A–G.',
      'The strokes are the same from either end: 2 2 1 2 2.',
      'New strings: to A within a stroke, to D within a stroke.',
      'A run of 5 letters up: G, A, B, C, D.',
    ]);
  });
  it('is what the teacher keeps', () => {
    expect(standouts(abc, strokes, ['run'])).toEqual([
      'A run of 5 letters up: G, A, B, C, D.',
      'A run of 5 letters down: D, C, B, A, G.',
    ]);
    expect(standouts(abc, strokes, ['finger'])).toEqual([]);
    expect(standouts(abc, strokes, [])).toEqual([]);
  });
  it('has the longest run first', () => {
    expect(standouts('K:G\nGABc Aced|cBAG F2 z2|', Array(13).fill(1), ['run'])).toEqual([
      'A run of 7 letters down: E, D, C, B, A, G, F sharp.',
      'A run of 4 letters up: G, A, B, C.',
    ]);
  });
});
