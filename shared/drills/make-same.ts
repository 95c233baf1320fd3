import type { Phrase } from '../sections/section-map.ts';
import type { Dice } from './dice.ts';
import type { DrillAsk, NoDrill, SameDrill } from './drill.ts';
import { type DrillSource, firstFullBar, partsFor, phraseNotes } from './drill-source.ts';

/**
 * Two phrases that the map calls kin: the same, or different and from which note. Beginners get
 * those that part early or not at all, the advanced the ones that part late, and only the places of
 * their notes. The notes, not the labels, decide. A phrase that is an ending alone is left out: the map
 * compares it with the bars before it, which stand in another phrase.
 */
export function makeSame(source: DrillSource, ask: DrillAsk, dice: Dice): SameDrill | NoDrill {
  const parts = partsFor(source, ask.to);
  const { phrases } = source.map;
  const pairs = phrases.flatMap((phrase, later) => {
    const { of, kin, firstDifference } = phrase;
    const other = of === null ? undefined : phrases[of];
    if (of === null || !other || kin === 'own' || !parts.has(phrase.part)) return [];
    if (opensInEnding(source, phrase) || opensInEnding(source, other)) return [];
    const laterNotes = phraseNotes(source, phrase);
    const earlierNotes = phraseNotes(source, other);
    const at = firstDifference === null ? laterNotes.length : laterNotes.indexOf(firstDifference);
    if (at < 0 || laterNotes.length < 2 || earlierNotes.length < 2) return [];
    return [{ earlier: of, later, earlierNotes, laterNotes, parts: firstDifference, at }];
  });
  if (pairs.length === 0) return 'no-kin';
  // Half of the drills are of the same, where there are any, lest "different" be a safe guess.
  const wantSame = dice.below(2) === 0;
  const wanted = pairs.filter(p => (p.parts === null) === wantSame);
  const pool = wanted.length > 0 ? wanted : pairs;
  const share = (p: (typeof pairs)[number]): number => p.at / p.laterNotes.length;
  const byPlace = [...pool].sort((a, b) => share(a) - share(b) || a.later - b.later);
  const half = Math.ceil(byPlace.length / 2);
  const level = {
    beginner: byPlace.slice(0, half),
    improver: byPlace,
    advanced: byPlace.slice(-half),
  };
  const { at: _, ...pair } = dice.pick(level[ask.level]);
  return { ...ask, kind: 'same', ...pair, byHeart: ask.level === 'advanced' };
}

const opensInEnding = ({ tune }: DrillSource, { bars }: Phrase): boolean =>
  (firstFullBar(tune, bars)?.endings ?? []).length > 0;
