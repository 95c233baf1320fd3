import { element, type XmlElement } from './xml.ts';

/** Chord qualities as tune books write them, and their names in MusicXML (`kind-value`). */
const kinds: Readonly<Record<string, string>> = {
  '': 'major',
  maj: 'major',
  M: 'major',
  m: 'minor',
  min: 'minor',
  '-': 'minor',
  '7': 'dominant',
  maj7: 'major-seventh',
  M7: 'major-seventh',
  m7: 'minor-seventh',
  min7: 'minor-seventh',
  '-7': 'minor-seventh',
  dim: 'diminished',
  o: 'diminished',
  dim7: 'diminished-seventh',
  o7: 'diminished-seventh',
  m7b5: 'half-diminished',
  aug: 'augmented',
  '+': 'augmented',
  '6': 'major-sixth',
  m6: 'minor-sixth',
  '9': 'dominant-ninth',
  m9: 'minor-ninth',
  sus: 'suspended-fourth',
  sus4: 'suspended-fourth',
  sus2: 'suspended-second',
  '5': 'power',
};

const alterOf = (sign: string): number | null => (sign === '' ? null : sign === 'b' ? -1 : 1);

/** A chord symbol, such as `Am7/G`, as a `harmony` element; null for text that is no chord symbol. */
export function harmonyOf(symbol: string): XmlElement | null {
  const plain = symbol.trim().replaceAll('♭', 'b').replaceAll('♯', '#');
  const m = /^([A-G])([#b]?)([^/]*)(?:\/([A-Ga-g])([#b+]?))?$/.exec(plain);
  if (!m?.[1]) return null;
  const [root, sign, quality, bass, bassSign] = [m[1], m[2] ?? '', m[3] ?? '', m[4], m[5] ?? ''];
  const known = Object.hasOwn(kinds, quality) ? kinds[quality] : undefined;
  // Words such as "Fine" begin with a letter of a chord: a chord's kind holds no such run of them.
  if (known === undefined && !/^(?:[\d#b+°ø().-]|maj|min|dim|aug|sus|add|m|M|o)+$/u.test(quality)) {
    return null;
  }
  const rootAlter = alterOf(sign);
  const bassAlter = alterOf(bassSign);
  return element('harmony', [
    element('root', [
      element('root-step', root),
      rootAlter === null ? null : element('root-alter', rootAlter),
    ]),
    element('kind', known ?? 'other', quality === '' ? {} : { text: quality }),
    bass === undefined
      ? null
      : element('bass', [
          element('bass-step', bass.toUpperCase()),
          bassAlter === null ? null : element('bass-alter', bassAlter),
        ]),
  ]);
}
