import { secondsOfNotes, slowTempo } from '../../shared/bowing/paces.ts';
import type { BowingSettings } from '../../shared/bowing/settings.ts';
import { toNumber } from '../../shared/music/fraction.ts';
import { at } from '../../shared/must.ts';
import type { SearchEntry } from '../../shared/search/search-entry.ts';
import type { Study } from '../../shared/study.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { BuiltTune } from './built-tune.ts';
import { searchEntry } from './finder-view.ts';
import { aliasesOf, type FactView, titleOf, tuneFacts, tuneKind } from './lists-view.ts';
import { mayShow } from './page-context.ts';

/**
 * Everything that a list shows of a tune. Cards are small, so that those of a whole book are held at once,
 * where studies and drawings are not: a page over all tunes is made from their cards alone.
 */
export interface TuneCard {
  readonly id: string;
  readonly title: string;
  readonly aliases: string | null;
  /** `reel in G major`; empty where the tune could not be read. */
  readonly kind: string;
  readonly facts: readonly FactView[];
  /** Its parts, with the seconds of once through each at the slow tempo; none where it could not be read. */
  readonly parts: readonly { readonly name: string; readonly seconds: number }[];
  /** What can be searched of it; its notes only where they may be shown. */
  readonly search: SearchEntry;
}

/** The cards of a book, by id, in its order. */
export type TuneCards = Pick<ReadonlyMap<string, TuneCard>, 'get' | 'keys' | 'values'>;

/** Makes the card of a tune; its notes are left out where they may not be shown. */
export function tuneCard(
  tune: BuiltTune,
  isPrivate: boolean,
  bowing: BowingSettings,
  words: Words,
): TuneCard {
  const shown = mayShow(tune, { isPrivate });
  return {
    id: tune.block.id,
    title: titleOf(tune),
    aliases: aliasesOf(tune),
    kind: tune.study === null ? '' : tuneKind(tune.study, words),
    facts: tuneFacts(tune, shown, words),
    parts: tune.study === null ? [] : partSeconds(tune.study, bowing),
    search: searchEntry(tune, shown, words),
  };
}

/** Seconds of the first time through each part, in written order. */
function partSeconds({ tune, performance }: Study, bowing: BowingSettings): TuneCard['parts'] {
  const tempo = slowTempo(tune, bowing);
  const lengths = tune.parts.map(() => 0);
  const done = new Set<number>();
  let before = -1;
  for (const { bar } of performance.bars) {
    const { part, length } = at(tune.bars, bar);
    const partBefore = before < 0 ? null : at(tune.bars, before).part;
    if (partBefore !== null && (part !== partBefore || bar <= before)) done.add(partBefore);
    if (!done.has(part)) lengths[part] = at(lengths, part) + toNumber(length);
    before = bar;
  }
  return tune.parts.map(({ name }, i) => ({
    name,
    seconds: secondsOfNotes(tempo, at(lengths, i)),
  }));
}
