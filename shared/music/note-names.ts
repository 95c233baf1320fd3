import type { Letter, Pitch } from './pitch.ts';

/**
 * What notes are called, by convention (all common practice): by letters, where B is a semitone
 * below C; the German way, where that note is H, and B a semitone lower; or by syllables with a
 * fixed do.
 */
export const noteNamings = ['letters', 'german', 'solfege'] as const;
export type NoteNames = (typeof noteNamings)[number];

/** What a book calls its notes that does not say. `language` is a BCP 47 tag. */
export const usualNoteNames = (language: string): NoteNames =>
  /^de(?:-|$)/i.test(language) ? 'german' : 'letters';

const syllables: Readonly<Record<Letter, string>> = {
  C: 'do',
  D: 're',
  E: 'mi',
  F: 'fa',
  G: 'sol',
  A: 'la',
  B: 'si',
};

type Spelled = Pick<Pitch, 'letter' | 'alter'>;

/** "fa": the syllable of a letter, whatever its sign. */
export const syllableOf = (letter: Letter): string => syllables[letter];

/** "Fis", "Es", "H", "B", "Ceses": the German name with its sign in it. */
export function germanName({ letter, alter }: Spelled): string {
  if (letter === 'B') return { [-2]: 'Heses', [-1]: 'B' }[alter] ?? `H${'is'.repeat(alter)}`;
  if (alter >= 0) return letter + 'is'.repeat(alter);
  // After a vowel the e of "es" is not written: As, Eses.
  const flats = 'es'.repeat(-alter);
  return letter === 'A' || letter === 'E' ? letter + flats.slice(1) : letter + flats;
}

/** A note in writing: what stands for its letter, and the sign that is still to be added to that. */
export interface NoteSymbol {
  readonly symbol: string;
  /** As `alter` of a pitch. The German H and B say theirs already, and have 0. */
  readonly sign: number;
  /** The sign is in the symbol, so that no natural need be written either. */
  readonly said: boolean;
}

/** "F", "H", "Fa": for the letters under a staff, on strings and in indexes. */
export function noteSymbol({ letter, alter }: Spelled, names: NoteNames): NoteSymbol {
  if (names === 'solfege') {
    const name = syllables[letter];
    return { symbol: name.charAt(0).toUpperCase() + name.slice(1), sign: alter, said: false };
  }
  if (names === 'german' && letter === 'B') {
    if (alter === 0) return { symbol: 'H', sign: 0, said: true };
    return alter === -1
      ? { symbol: 'B', sign: 0, said: true }
      : { symbol: 'H', sign: alter, said: false };
  }
  return { symbol: letter, sign: alter, said: false };
}
