import type { KeyPhrases } from '../keys.ts';
import { listed } from './grammar.ts';

/** Names of up to five semitones. */
const intervals = ['', 'a semitone', 'a tone', 'a minor third', 'a major third', 'a fourth'];

export const keys: KeyPhrases = {
  none: 'no key signature',
  name: (tonic, mode) => `${tonic} ${mode}`,
  kind: (type, key) => `${type} in ${key}`,
  stays: key => `The key stays: ${key}.`,
  moves: (from, to, notes, home) =>
    notes.length === 0
      ? `From ${from} to ${to}: the same notes${home ? `, and ${home}` : ''}.`
      : `From ${from} to ${to}: ${listed(notes)}${home ? `; ${home}` : ''}.`,
  becomes: (before, after) => `${before} becomes ${after}`,
  homeStays: 'home stays',
  homeMoves: semitones =>
    `home moves ${semitones > 0 ? 'up' : 'down'} ${intervals[Math.abs(semitones)] ?? 'three tones'}`,
};
