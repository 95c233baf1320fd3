import { noteAt, topPitch } from '../music/note-at.ts';
import { type NoteNames, noteSymbol } from '../music/note-names.ts';
import { letters as allLetters } from '../music/pitch.ts';
import { at } from '../must.ts';
import type { Study } from '../study.ts';

/**
 * What can be searched of one tune. Short keys would save little once compressed; short values do:
 * the opening is two strings, one character a note.
 */
export interface SearchEntry {
  readonly id: string;
  readonly title: string;
  readonly aliases: readonly string[];
  readonly composer: string | null;
  /** `reel`; the teacher's own word where it is none of the usual types. */
  readonly type: string | null;
  /** `G major`. */
  readonly key: string;
  /** `AABB`. */
  readonly form: string;
  /**
   * Opening notes as letters, accidentals, octave and rhythm left out: `DFAFD`. Where notes have
   * their German names, `H` and `B` are two notes.
   */
  readonly letters: string;
  /** The same notes as semitones above C in base 12: `269629`, for a fiddle's strings and fingers. */
  readonly semitones: string;
  /** Notes before the first full bar: someone may begin to count there. */
  readonly pickup: number;
}

/** Notes of an opening that are kept: about four bars of quavers. */
const openingNotes = 24;

/** The opening of a tune as it is played, the top note of a chord; both strings are of one length. */
export function openingOf(
  { tune, performance }: Pick<Study, 'tune' | 'performance'>,
  names: NoteNames,
): Pick<SearchEntry, 'letters' | 'semitones' | 'pickup'> {
  const tops = performance.notes
    .slice(0, openingNotes)
    .map(sounded => topPitch(noteAt(tune, sounded.event)));
  const [first] = performance.bars;
  return {
    letters: tops
      .map(pitch => (names === 'german' ? noteSymbol(pitch, names).symbol : pitch.letter))
      .join(''),
    semitones: tops.map(pitch => (pitch.midi % 12).toString(12)).join(''),
    pickup: first && at(tune.bars, first.bar).pickup ? first.end : 0,
  };
}

/** The first of an entry's letters as the book calls them: `D F A`, `Re Fa La`. */
export const openingText = (kept: string, count: number, names: NoteNames): string =>
  [...kept.slice(0, count)]
    .map(sign => {
      const letter = allLetters.find(l => l === sign);
      return letter && names === 'solfege' ? noteSymbol({ letter, alter: 0 }, names).symbol : sign;
    })
    .join(' ');
