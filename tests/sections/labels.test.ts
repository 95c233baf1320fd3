import { describe, expect, it } from 'vitest';
import type { Tune } from '../../shared/music/tune.ts';
import { mapSections } from '../../shared/sections/map-sections.ts';
import { parseLabels } from '../../shared/sections/phrase-labels.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { studyOf } from '../bowing/study-of.ts';
import { readTune } from '../fingering/read-tune.ts';

const { mapSentences } = wordsFor('en', 'letters');

/** By ear a b a a′: the fourth ends otherwise. */
const tune = readTune('K:G\nGABc d2BG|ABcA G4|e2f2 g4|d8|GABc d2BG|ABcA G4|GABc d2BG|AFED G4|]');

const told = (t: Tune, labels: string) => {
  const map = mapSections(t, null, parseLabels(labels));
  return {
    labels: map.phrases.map(p => p.label).join(' '),
    kin: map.phrases.map(p => p.kin).join(' '),
    of: map.phrases.map(p => p.of),
    toLearn: map.toLearn,
    forks: map.forks.map(f => f.label),
  };
};

describe('labels as a teacher writes them', () => {
  it('are letters with primes, spaces or commas between', () => {
    expect(parseLabels("a b, a' c’ A′")).toEqual(['a', 'b', 'a′', 'c′', 'A′']);
  });
  it.each(['', 'a 2', 'abc', 'a b′c', '-'])('are not %j', text => {
    expect(parseLabels(text)).toBeNull();
  });
});

describe('a map with the teacher’s labels', () => {
  it('is the map by ear where they agree with it', () => {
    expect(mapSections(tune, null, parseLabels("a b a a'"))).toEqual(mapSections(tune));
  });
  it('compares a phrase with the first of its label, whatever the ear says', () => {
    expect(told(tune, 'a b a a')).toEqual({
      labels: 'a b a a',
      kin: 'own own same ending',
      of: [null, null, 0, 0],
      toLearn: [0, 1],
      forks: ['a'],
    });
  });
  it('lets a new letter be a phrase of its own', () => {
    expect(told(tune, 'a b a c')).toMatchObject({ kin: 'own own same own', toLearn: [0, 1, 3] });
  });
  it('calls phrases with nothing in common a variation where the teacher hears one', () => {
    const { kin, of } = told(tune, "a a' a b");
    expect(kin).toBe('own varied same own');
    expect(of).toEqual([null, 0, 0, null]);
    const map = mapSections(tune, null, parseLabels("a a' a b"));
    expect(mapSentences(tune, map, 'letters').phrases[1]).toBe(
      'A variation of A1-A2; they differ already at the first note.',
    );
  });
  it('is the map by ear where their number is wrong, and says so', () => {
    const labels = { labels: ['a', 'b', 'c'], place: { file: 'tunes/a.md', line: 3, column: 9 } };
    const study = studyOf(tune, { labels });
    expect(study.map).toEqual(mapSections(tune));
    const [wrong, ...more] = study.problems.filter(p => p.rule === 'labels-count');
    expect(more).toEqual([]);
    expect(wrong).toMatchObject({ severity: 'warning', place: labels.place });
    expect(wrong && wordProblem(wrong)).toEqual({
      message:
        'The tune has 4 phrases (A1-A2, A3-A4, A5-A6, A7-A8), but `labels` has 3 labels, so they are passed over.',
      mend: 'Give one label a phrase, as in `a b a a′`, or another `unit`.',
    });
  });
});
