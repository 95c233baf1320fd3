import { letters } from '../../shared/music/pitch.ts';
import type { Key, Meter } from '../../shared/music/tune.ts';

/** Whether two bars stand in one metre, written in one way. */
export const sameMeter = (a: Meter, b: Meter): boolean =>
  a === b || (a.beats === b.beats && a.unit === b.unit && a.sign === b.sign && a.free === b.free);

/** Whether two bars stand in one key, signs added by hand included. */
export const sameKey = (a: Key, b: Key): boolean =>
  a === b ||
  (a.tonic === b.tonic &&
    a.mode === b.mode &&
    a.fifths === b.fifths &&
    letters.every(letter => a.alters[letter] === b.alters[letter]));
