import type { NoteNames } from '../music/note-names.ts';
import { type Pitch, parsePitch } from '../music/pitch.ts';
import type { Key } from '../music/tune.ts';
import { got } from '../must.ts';
import type { KeyChange } from '../sets/key-change.ts';
import { type SpokenLanguage, spokenPitch } from './spoken.ts';

export interface KeyPhrases {
  readonly none: string;
  readonly name: (tonic: string, mode: Exclude<Key['mode'], 'none'>) => string;
  /** A kind of tune in a key. */
  readonly kind: (type: string, key: string) => string;
  /** One key after another. */
  readonly stays: (key: string) => string;
  /** `home` is a clause of the two below; null where a key has no home note. */
  readonly moves: (
    from: string,
    to: string,
    notes: readonly string[],
    home: string | null,
  ) => string;
  readonly becomes: (before: string, after: string) => string;
  readonly homeStays: string;
  /** By -5 to 6 semitones. */
  readonly homeMoves: (semitones: number) => string;
}

export interface KeyLanguage extends SpokenLanguage {
  readonly keys: KeyPhrases;
}

/** `F sharp minor`: words, since text fonts seldom hold the signs. */
export function keyName(language: KeyLanguage, { tonic, mode }: Key, names: NoteNames): string {
  if (mode === 'none') return language.keys.none;
  const note = got(parsePitch(`${tonic}4`), `note ${tonic}`);
  return language.keys.name(spokenPitch(language, note, names), mode);
}

/** `reel in G major`, of a type and a key in words; the key alone where there is no type. */
export const kindName = (
  { keys }: { readonly keys: Pick<KeyPhrases, 'kind'> },
  type: string | null,
  key: string,
): string => (type === null ? key : keys.kind(type, key));

/** "From G major to D major: C becomes C sharp; home moves down a fourth." */
export function keyChangeSentence(
  language: KeyLanguage,
  { from, to, changes, home }: KeyChange,
  names: NoteNames,
): string {
  const { keys } = language;
  if (changes.length === 0 && home === 0) return keys.stays(keyName(language, to, names));
  const note = (letter: Pitch['letter'], alter: number): string =>
    spokenPitch(language, { letter, alter }, names);
  return keys.moves(
    keyName(language, from, names),
    keyName(language, to, names),
    changes.map(c => keys.becomes(note(c.letter, c.from), note(c.letter, c.to))),
    home === null ? null : home === 0 ? keys.homeStays : keys.homeMoves(home),
  );
}
