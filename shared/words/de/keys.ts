import type { KeyPhrases } from '../keys.ts';
import { uncapital } from '../text.ts';
import { listed } from './grammar.ts';

const modes = {
  dorian: 'dorisch',
  phrygian: 'phrygisch',
  lydian: 'lydisch',
  mixolydian: 'mixolydisch',
  locrian: 'lokrisch',
};

/** Names of up to five semitones. */
const intervals = [
  '',
  'einen Halbton',
  'einen Ganzton',
  'eine kleine Terz',
  'eine große Terz',
  'eine Quarte',
];

export const keys: KeyPhrases = {
  none: 'ohne Vorzeichen',
  /** „Fis-Dur“, „e-Moll“, „A dorisch“: the tonic of a minor key is a small letter (common practice). */
  name: (tonic, mode) => {
    if (mode === 'major') return `${tonic}-Dur`;
    return mode === 'minor' ? `${uncapital(tonic)}-Moll` : `${tonic} ${modes[mode]}`;
  },
  kind: (type, key) => `${type} in ${key}`,
  stays: key => `Die Tonart bleibt: ${key}.`,
  moves: (from, to, notes, home) =>
    notes.length === 0
      ? `Von ${from} nach ${to}: dieselben Töne${home ? `, und ${home}` : ''}.`
      : `Von ${from} nach ${to}: ${listed(notes)}${home ? `; ${home}` : ''}.`,
  becomes: (before, after) => `${before} wird ${after}`,
  homeStays: 'der Grundton bleibt',
  homeMoves: semitones =>
    `der Grundton geht ${intervals[Math.abs(semitones)] ?? 'drei Ganztöne'} ${semitones > 0 ? 'hinauf' : 'hinunter'}`,
};
