import { type Letter, letters, parsePitch } from '../music/pitch.ts';
import type { Key } from '../music/tune.ts';
import { got } from '../must.ts';

/** What changes for a player where one key follows another. */
export interface KeyChange {
  readonly from: Key;
  readonly to: Key;
  /** Letters whose accidental changes; `from` and `to` are semitones above the natural, -2 to 2. */
  readonly changes: readonly {
    readonly letter: Letter;
    readonly from: number;
    readonly to: number;
  }[];
  /** Semitones that the tonic moves up, -5 to 6; null where a key has no tonic (`K:none`). */
  readonly home: number | null;
}

/**
 * Compares two keys. From D major to E dorian no accidental changes and the tonic moves up 2; from D
 * major to G major C sharp becomes C natural.
 */
export function keyChange(from: Key, to: Key): KeyChange {
  return {
    from,
    to,
    changes: letters.flatMap(letter =>
      from.alters[letter] === to.alters[letter]
        ? []
        : [{ letter, from: from.alters[letter], to: to.alters[letter] }],
    ),
    home: tonicMove(from, to),
  };
}

function tonicMove(from: Key, to: Key): number | null {
  if (from.mode === 'none' || to.mode === 'none') return null;
  const midi = ({ tonic }: Key): number => got(parsePitch(`${tonic}4`), `tonic ${tonic}`).midi;
  const up = (((midi(to) - midi(from)) % 12) + 12) % 12;
  return up > 6 ? up - 12 : up;
}
