import { describe, expect, test } from 'vitest';
import { bowPath } from '../../shared/bowing/bow-path.ts';
import { fraction } from '../../shared/music/fraction.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { tuneOf } from '../bowing/strokes-of.ts';
import { anchorAt, studyOf } from '../bowing/study-of.ts';

const { bowPathSentences, noPlanSentence, varyingSentences } = wordsFor('en', 'letters');

describe('notes whose stroke changes from time to time', () => {
  test('are named, whole bars as such', () => {
    // Seven strokes: what is down the first time is up the second.
    const study = studyOf(tuneOf('|:ABcd|e2 f2 g4:|', 'M:none\nL:1/8'));
    expect(varyingSentences(study)).toEqual([
      'A dot over a sign means: not the same stroke every time through. The sign is the first time’s. So it is with all of A1 and all of A2.',
    ]);
  });

  test('only those that change', () => {
    // A sign fixes each time from its note on, so only the notes before it differ.
    const study = studyOf(tuneOf('|:AB vcd|e2 f2 g4:|', 'M:none\nL:1/8'));
    expect(varyingSentences(study).join()).toContain('So it is with notes 1 and 2 of A1.');
  });

  test('nothing is said where all stay', () => {
    expect(varyingSentences(studyOf(tuneOf('|:ABcd|e2 f2:|', 'M:none\nL:1/8')))).toEqual([]);
  });
});

describe('the drift of the bow in words', () => {
  const said = (body: string, bow: number): readonly string[] => {
    const { tune, performance } = studyOf(tuneOf(body, 'M:none\nL:1/8'));
    const notes = performance.notes.map(n => n.event);
    const path = bowPath(
      performance,
      { notes, start: 'down', passes: [1] },
      { slurs: [] },
      fraction(bow, 8),
    );
    const [start, end] = [path.start, path.end];
    const drift = fraction(end.n * start.d - start.n * end.d, end.d * start.d);
    return bowPathSentences(tune, path, { drift }, 'letters');
  };

  test('its way, its size and where to begin', () => {
    expect(said('A6 B2|', 8)).toEqual([
      'The bow drifts 2 crotchets toward the tip: the down-bows take that much more time than the up-bows.',
      'It lasts if it begins nearer the frog than the tip.',
    ]);
    expect(said('A B2|', 8)[0]).toContain('drifts one quaver toward the frog: the up-bows');
    expect(said('A B|', 8)[0]).toBe(
      'The bow ends where it began: down-bows and up-bows take the same time.',
    );
  });

  test('where it runs out', () => {
    expect(said('A3 B A3|', 4)[1]).toBe(
      'At one speed it runs out at the tip by note 3 of A1 (A), even if it begins at the frog: save bow on the down-bows before that.',
    );
    expect(said('A B4|', 3)[1]).toContain('runs out at the frog by note 2 of A1 (B)');
  });
});

describe('why no way to a passage is shown', () => {
  const said = (body: string, bars: string): string | null => {
    const tune = tuneOf(body, 'M:none\nL:1/8');
    const [anchor] = studyOf(tune, { anchors: [anchorAt(bars, 'down')] }).bowing.anchors;
    if (!anchor) throw new Error(`no anchor at ${bars}`);
    return noPlanSentence(anchor);
  };

  test('nothing, where a way is shown', () => {
    expect(said('ABcd|efga|gfed|', 'A2')).toBeNull();
  });

  test('the passage opens the tune', () => {
    expect(said('ABcd|efga|', 'A1')).toContain('where the strokes do');
  });

  test('its first note is held over', () => {
    expect(said('ABcd-|d2ef|', 'A2')).toContain('held over from the bar before');
  });

  test('the bow sets out differently each time', () => {
    // Three strokes from the passage to the repeat sign: the second time sets out on an up-bow.
    expect(said('|:ABcd|efg|a2 b2|1 c2:|2 c2 d2|]', 'A3')).toContain('sets out on one stroke');
  });

  test('no way within the level arrives', () => {
    // Repeated notes take no slurs, and three separate strokes leave the bow going up.
    expect(said('AAA|efga|', 'A2')).toContain('no way arrives');
  });
});
