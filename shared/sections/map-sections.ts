/**
 * The section map: which phrases of a tune are the same, which are forms of another, and in which
 * order a learner needs them.
 *
 * The tune is cut into phrases (`phrase-bars.ts`), each is read as places and pitches
 * (`phrase-notes.ts`), compared with those before it (`kin-of.ts`) and named (`name-phrases.ts`).
 * The first of a kind gets the next letter; a phrase that is the same as an earlier one gets that one's label; any other kin gets
 * the letter of the phrase that it differs from at the fewest places, with one more prime than the
 * last form of that letter, of which there are three at most. So equal labels mean equal notes, and equal letters mean kin, unless the
 * teacher gives other labels.
 *
 * Sixteen bars in twos, `X Y X Z | X' Y W Z`, where X' is X with its second bar changed:
 *
 *   label  a b a c | a′ b d c       kin  own own same own | ending same own same
 *
 * To learn: a, b, c, a′, d. Three of eight come free.
 */

import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import { longPhraseOf } from './crooked-parts.ts';
import { findForks } from './find-forks.ts';
import { labelAsStated, labelByEar, type NamedPhrase } from './name-phrases.ts';
import { type PhraseBars, phraseBars } from './phrase-bars.ts';
import { phraseReader } from './phrase-notes.ts';
import type { Phrase, SectionMap } from './section-map.ts';

/** Bars a phrase, unless the teacher says otherwise: four in waltzes, else two (common practice). */
export function usualUnit(tune: Tune): number {
  const { beats, unit } = tune.meter;
  const waltz = tune.type === 'waltz' || (tune.type === null && beats === 3 && unit === 4);
  return waltz ? 4 : 2;
}

/**
 * Maps a tune. `unit` is the bars a phrase, null or left out for the usual. `labels` are the
 * teacher's, one a phrase in written order; where their number is another, the labels are by ear.
 */
export function mapSections(
  tune: Tune,
  unit: number | null = null,
  labels: readonly string[] | null = null,
): SectionMap {
  const bars = unit ?? usualUnit(tune);
  const read = phraseReader(tune);
  const cuts = phraseBars(tune, bars, longPhraseOf(tune, bars, read));
  const heard = cuts.map(cut => read(cut.heard));
  const named = labels?.length === cuts.length ? labelAsStated(heard, labels) : labelByEar(heard);
  const phrases = cuts.map((cut, i) => phraseOf(tune, cut, at(named, i)));
  return { unit: bars, phrases, forks: findForks(tune, phrases), toLearn: toLearn(tune, phrases) };
}

function phraseOf(tune: Tune, cut: PhraseBars, { label, of, likeness }: NamedPhrase): Phrase {
  const bars = cut.written.map(i => at(tune.bars, i));
  const full = bars.filter(b => !b.pickup);
  const named = full.length > 0 ? full : bars;
  const ends = [at(named, 0).name, at(named, named.length - 1).name];
  return {
    bars: cut.written,
    name: [...new Set(ends)].join('-'),
    part: cut.part,
    first: at(bars, 0).first,
    end: at(bars, bars.length - 1).end,
    label,
    kin: likeness?.kin ?? 'own',
    of,
    firstDifference: likeness?.firstDifference ?? null,
  };
}

/** The first phrase of each label, in the order in which the parts are played. */
function toLearn(tune: Tune, phrases: readonly Phrase[]): number[] {
  const order = [...new Set([...(tune.order ?? []), ...tune.parts.keys()])];
  const first = new Map<string, number>();
  for (const part of order) {
    phrases.forEach((p, i) => {
      if (p.part === part && !first.has(p.label)) first.set(p.label, i);
    });
  }
  return [...first.values()];
}
