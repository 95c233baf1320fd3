import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import { kinOf } from './kin-of.ts';
import { longPhrases, type PhraseBars, phraseBars } from './phrase-bars.ts';
import type { PhraseNotes } from './phrase-notes.ts';

/** Phrases of a part, at most, for which every place is tried. */
const mostPlaces = 64;

/**
 * Finds, for each crooked part by its index, which of its phrases has the bars left over.
 *
 * Nine bars `X X d X Y`, with `d` one bar and the others two, cut as 2 2 2 3, hide the third X
 * behind the odd bar; cut as 2 3 2 2 it is heard. So every place is tried, part after part, and the
 * cut is taken in which most phrases are like an earlier one (the same counts two, any other kin but
 * a moved one counts one); of equals, the one with the long phrase last. Parts with endings keep it
 * last: there the odd bar is the ending's. So do parts of more phrases than any tune has, since
 * trying grows with the cube of their number.
 */
export function longPhraseOf(
  tune: Tune,
  unit: number,
  read: (heard: readonly number[]) => PhraseNotes,
): ReadonlyMap<number, number> {
  const long = new Map<number, number>();
  tune.parts.forEach((part, index) => {
    const bars = part.bars.map(i => at(tune.bars, i));
    const places = longPhrases(Math.max(0, ...bars.map(b => b.number)), unit);
    if (places < 2 || places > mostPlaces || bars.some(b => b.endings.length > 0)) return;
    let best = -1;
    for (let place = places - 1; place >= 0; place--) {
      const score = likeness(phraseBars(tune, unit, new Map(long).set(index, place)), read);
      if (score <= best) continue;
      best = score;
      long.set(index, place);
    }
  });
  return long;
}

/** How much of a cut is heard again: two a phrase that comes back, one for any other kin. */
function likeness(
  cuts: readonly PhraseBars[],
  read: (heard: readonly number[]) => PhraseNotes,
): number {
  const phrases = cuts.map(c => read(c.heard));
  let score = 0;
  phrases.forEach((phrase, i) => {
    let most = 0;
    for (let j = 0; j < i && most < 2; j++) {
      const kin = kinOf(phrase, at(phrases, j))?.kin;
      if (kin && kin !== 'moved') most = Math.max(most, kin === 'same' ? 2 : 1);
    }
    score += most;
  });
  return score;
}
