import { describe, expect, it } from 'vitest';
import { clock, halfMinutes, liltWords, sizeWords } from '../../shared/words/amounts.ts';
import { ordinal } from '../../shared/words/en/grammar.ts';
import { inThrees } from '../../shared/words/text.ts';
import { wordsFor } from '../../shared/words/words-for.ts';

const [english, german] = [wordsFor('en', 'letters'), wordsFor('de', 'german')];

describe('amounts in words', () => {
  it('times: minutes and seconds, none of either left out', () => {
    expect([0, 65.4, 200.4].map(clock)).toEqual(['0:00', '1:05', '3:20']);
    expect([0, 1, 60, 125].map(s => english.durationWords(s))).toEqual([
      '0 seconds',
      '1 second',
      '1 minute',
      '2 minutes 5 seconds',
    ]);
    expect(german.durationWords(61)).toBe('1 Minute 1 Sekunde');
    expect([20, 60, 90, 150].map(halfMinutes)).toEqual(['½', '1', '1½', '2½']);
  });

  it('sizes and lilts, with the point of the language', () => {
    const sizes = (words: typeof english): string[] =>
      [999_001, 2_300_000].map(n => sizeWords(words.offlineWords.decimal, n));
    expect([sizes(english), sizes(german)]).toEqual([
      ['1000 KB', '2.3 MB'],
      ['1000 KB', '2,3 MB'],
    ]);
    expect(liltWords(english.playerWords, 'pairs', 1)).toBe('even');
    expect(liltWords(german.playerWords, 'pairs', 1.5)).toBe('1,50 : 1');
    expect(liltWords(english.playerWords, 'threes', 0)).toBe('even');
    expect(liltWords(english.playerWords, 'threes', 0.5)).toBe('1.20 : 0.80 : 1');
  });

  it('numbers in threes, and ordinals past those with words', () => {
    expect([7, 999, 1000, 1234567n].map(n => inThrees(n, ','))).toEqual([
      '7',
      '999',
      '1,000',
      '1,234,567',
    ]);
    expect([1, 8, 9, 11, 21, 22, 23, 112].map(ordinal)).toEqual([
      'first',
      'eighth',
      '9th',
      '11th',
      '21st',
      '22nd',
      '23rd',
      '112th',
    ]);
  });
});

describe('a title as it is sorted', () => {
  it('is without a leading article, unless that is all of it', () => {
    const titles = ['The Tide Table', 'Andy', 'A', 'an Eel', 'Der Eiskeller'];
    expect(titles.map(t => english.sortedAs(t))).toEqual([
      'Tide Table',
      'Andy',
      'A',
      'Eel',
      'Der Eiskeller',
    ]);
    expect(titles.map(t => german.sortedAs(t)).slice(-1)).toEqual(['Eiskeller']);
  });
});
