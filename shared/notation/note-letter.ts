import type { Pitch } from '../music/pitch.ts';
import type { Key } from '../music/tune.ts';

const signs: Readonly<Record<number, string>> = { [-2]: '𝄫', [-1]: '♭', 0: '♮', 1: '♯', 2: '𝄪' };

/**
 * The letter of a note as ABC 2.1 writes it, octaves told apart: `G,` on the G string, `G` on the
 * D string, `g` on the E string, `c'` above that. A sign is added only where the key does not say it.
 */
export function noteLetter(pitch: Pitch, key: Key): string {
  const { letter, octave, alter } = pitch;
  const sign = alter === key.alters[letter] ? '' : (signs[alter] ?? '');
  const low = octave < 4 ? ','.repeat(4 - octave) : '';
  const high = octave > 5 ? '’'.repeat(octave - 5) : '';
  return `${octave >= 5 ? letter.toLowerCase() : letter}${sign}${low}${high}`;
}
