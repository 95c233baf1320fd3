import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import type { Fork, Phrase } from './section-map.ts';

/**
 * Places where the same phrase leads on to different things: where a player takes the wrong turn.
 *
 * A phrase goes on to the next one written, from the end of a part into the part that follows. What
 * a repeat sign makes is left out: the way back to the start of the part, first against second
 * ending, and the end of the tune. With phrases a b a c | d b d c, `a` is a fork (b after A1-A2, c
 * after A5-A6), `d` too, and `b` (to a, to d); `c` is not: it goes on to d once, and then the tune
 * ends.
 */
export function findForks(tune: Tune, phrases: readonly Phrase[]): Fork[] {
  const goesOn = new Map<string, { after: number; to: number }[]>();
  phrases.forEach((phrase, after) => {
    const to = nextPhrase(tune, phrases, after);
    if (to !== null) goesOn.set(phrase.label, [...(goesOn.get(phrase.label) ?? []), { after, to }]);
  });
  return [...goesOn].flatMap(([label, ways]) => {
    const ends = new Set(ways.map(w => at(phrases, w.to).label));
    return ends.size > 1 ? [{ label, goesOn: ways }] : [];
  });
}

/** Index of the phrase that a phrase leads on to; null where it goes back, or ends the tune. */
function nextPhrase(tune: Tune, phrases: readonly Phrase[], after: number): number | null {
  const here = at(phrases, after);
  const next = phrases[after + 1];
  if (next && next.part === here.part) return leadsBack(tune, here, next) ? null : after + 1;
  const part = partAfter(tune, here.part);
  const first = phrases.findIndex(p => p.part === part);
  return first < 0 ? null : first;
}

/** An ending followed by another ending goes back, not on. */
function leadsBack(tune: Tune, here: Phrase, next: Phrase): boolean {
  const endings = (bar: number): string => at(tune.bars, bar).endings.join();
  const from = endings(at(here.bars, here.bars.length - 1));
  const to = endings(at(next.bars, 0));
  return from !== '' && to !== '' && from !== to;
}

/** The part that follows: in the order of `P:` where the tune gives one, else as written. */
function partAfter(tune: Tune, part: number): number | null {
  if (!tune.order) return part + 1 < tune.parts.length ? part + 1 : null;
  const { order } = tune;
  return order.find((p, i) => p !== part && order[i - 1] === part) ?? null;
}
