import type { NoteNames } from '../music/note-names.ts';
import { got } from '../must.ts';

/**
 * Text as it is compared: small letters, no accents, no apostrophes, every other sign a space. So
 * `The Harbour-Master’s Céilí` and `harbourmasters ceili` come as near each other as they can.
 */
export const foldText = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/ø/g, 'o')
    .replace(/æ/g, 'ae')
    .replace(/ß/g, 'ss')
    .replace(/['’‘`´]/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/**
 * Notes typed as the book calls them, as the letters of `SearchEntry`: `D F A`, `d-f-a`, `DFA`,
 * `F# G`; where the names are German `H` and `B`, `Fis G`; of syllables `re fa la`; null where it is
 * not that. Signs after a letter (`#`, `b`, `♯`, `♭`, `sharp`, `flat`, `-is`) are passed over, as
 * octaves and rhythm are. A single note is not yet an opening.
 */
export function typedNotes(query: string, names: NoteNames): string | null {
  const plain = query
    .trim()
    .replace(/\s*(?:♯|♭|♮|#|\b(?:sharp|flat|natural|kreuz|be)\b)/gi, '')
    .replace(/[,'’|0-9/.\-–>]+/g, ' ');
  const apart = plain.split(/\s+/).filter(part => part !== '');
  const typed = apart.map(noteOf[names]).join('');
  if (!/^[a-h]{2,}$/i.test(typed) || (names !== 'german' && /h/i.test(typed))) return null;
  return typed.toUpperCase();
}

/** A word of a query as a letter, or as letters, where it can be so called; else as it is. */
const noteOf: Readonly<Record<NoteNames, (part: string) => string>> = {
  letters: part => (/^[a-g]b?$/i.test(part) ? part.charAt(0) : part),
  german: part => (/^(?:[a-h](?:is)?|[cdfgh]es|[ae]s)$/i.test(part) ? part.charAt(0) : part),
  solfege: part => {
    const text = foldText(part);
    if (!/^(?:do|ut|re|mi|fa|sol?|la|si|ti)+$/.test(text)) return '?';
    return text.replace(/do|ut|re|mi|fa|sol?|la|si|ti/g, name =>
      got(syllables[name], 'letter of the syllable'),
    );
  },
};

const syllables: Readonly<Record<string, string>> = {
  do: 'c',
  ut: 'c',
  re: 'd',
  mi: 'e',
  fa: 'f',
  so: 'g',
  sol: 'g',
  la: 'a',
  si: 'b',
  ti: 'b',
};
