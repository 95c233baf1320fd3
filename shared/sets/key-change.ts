import { type Letter, letters, parsePitch } from '../music/pitch.ts';
import type { Key } from '../music/tune.ts';

/** What a player meets when one key follows another. */
export interface KeyChange {
  readonly from: Key;
  readonly to: Key;
  /** Letters that are altered otherwise from here on, with semitones up from the plain letter. */
  readonly changes: readonly {
    readonly letter: Letter;
    readonly from: number;
    readonly to: number;
  }[];
  /** Semitones by which the home note moves, the shorter way, -5 to 6; null where a key has none. */
  readonly home: number | null;
}

/** From D major to E dorian no letter changes and home moves up 2; to G major C sharp becomes C. */
export function keyChange(from: Key, to: Key): KeyChange {
  return {
    from,
    to,
    changes: letters.flatMap(letter =>
      from.alters[letter] === to.alters[letter]
        ? []
        : [{ letter, from: from.alters[letter], to: to.alters[letter] }],
    ),
    home: homeMoves(from, to),
  };
}

function homeMoves(from: Key, to: Key): number | null {
  if (from.mode === 'none' || to.mode === 'none') return null;
  const [a, b] = [parsePitch(`${from.tonic}4`), parsePitch(`${to.tonic}4`)];
  if (!a || !b) return null;
  const up = (((b.midi - a.midi) % 12) + 12) % 12;
  return up > 6 ? up - 12 : up;
}
