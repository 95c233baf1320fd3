import { describe, expect, it } from 'vitest';
import { foldText, typedNotes } from '../../shared/search/fold-text.ts';
import { matchOpening, openingCost } from '../../shared/search/match-opening.ts';

describe('an opening as someone remembers it', () => {
  it.each([
    ['DFA', 'DFADFA', 0, openingCost.exact],
    ['FAD', 'DFADFA', 1, openingCost.exact], // the pickup left out
    ['DGBD', 'DDGGBBD', 0, openingCost.repeatsOnce], // a repeated note sung once
    ['DGCD', 'DGBDGB', 0, openingCost.oneWrong], // changed
    ['DGDG', 'DGBDGB', 0, openingCost.oneWrong], // left out
    ['DGABD', 'DGBDGB', 0, openingCost.oneWrong], // put in
    ['DGBDA', 'EEDGBDA', 0, openingCost.within],
    ['GBD', 'DGBDGB', 0, null], // too few to stand further on
    ['DGCC', 'DGBDGB', 0, null],
    ['', 'DFA', 0, null],
  ])('%s against %s', (asked, opening, pickup, cost) => {
    expect(matchOpening(asked, opening, pickup)).toBe(cost);
  });
});

describe('notes as typed', () => {
  it.each([
    ['D F A', 'DFA'],
    ['dfa', 'DFA'],
    ['F# E d', 'FED'],
    ['B♭, A, G', 'BAG'],
    ['F sharp E D', 'FED'],
    ["A'2 B c'", 'ABC'],
    ['Bb A', 'BA'],
    ['bag', 'BAG'],
    ['d', null],
    ['hag', null],
    ['', null],
  ])('%s', (query, notes) => {
    expect(typedNotes(query, 'letters')).toBe(notes);
  });
});

describe('text as compared', () => {
  it('knows neither case nor accents nor apostrophes', () => {
    expect(foldText('The Harbour-Master’s Céilí')).toBe('the harbour masters ceili');
  });
});
