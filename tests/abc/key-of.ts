import { fifthsOf, signatureOf } from '../../shared/music/key-names.ts';
import type { Key } from '../../shared/music/tune.ts';

/** The key of a tonic and a mode, with no explicit accidentals. */
export function keyOf(tonic: string, mode: Key['mode']): Key {
  const fifths = fifthsOf(tonic, mode);
  return { tonic, mode, fifths, alters: signatureOf(fifths) };
}
