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
 * Notes typed as letters: `D F A`, `d-f-a`, `DFA`, `F# G`; null where it is not that. Signs after a
 * letter (`#`, `b`, `♯`, `♭`, `sharp`, `flat`) are passed over, as octaves and rhythm are. A single
 * letter is not yet an opening.
 */
export function typedNotes(query: string): string | null {
  const plain = query
    .trim()
    .replace(/\s*(?:♯|♭|♮|#|\bsharp\b|\bflat\b|\bnatural\b)/gi, '')
    .replace(/[,'’|0-9/.\-–>]+/g, ' ');
  const apart = plain.split(/\s+/).filter(part => part !== '');
  const letters = apart.map(part => (/^[a-g]b?$/i.test(part) ? part.charAt(0) : part)).join('');
  if (!/^[a-g]{2,}$/i.test(letters)) return null;
  return letters.toUpperCase();
}
