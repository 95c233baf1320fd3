import { noteAt, topPitch } from '../music/note-at.ts';
import type { NoteNames } from '../music/note-names.ts';
import type { Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import type { Fork, Phrase, SectionMap } from '../sections/section-map.ts';
import { noteWords, type PlaceLanguage } from './note-places.ts';
import { type SpokenLanguage, spokenPitch } from './spoken.ts';

export interface MapPhrases {
  readonly own: string;
  readonly same: (other: string) => string;
  /** What a phrase is to another; `difference` is one of the clauses below. */
  readonly kin: Readonly<
    Record<'ending' | 'start' | 'varied' | 'moved', (other: string, difference: string) => string>
  >;
  /** Clauses after a sentence's own words: "; they differ …". */
  readonly atFirstNote: string;
  readonly firstDifference: (place: string, note: string) => string;
  readonly fork: (label: string, ways: readonly ForkWay[], kinds: number) => string;
  /** `labels` in order, and how many phrases come free. */
  readonly toLearn: (labels: readonly string[], free: number) => string;
}

/** After a phrase comes the next one, by its label and its bars. */
export interface ForkWay {
  readonly after: string;
  readonly label: string;
  readonly bars: string;
}

export interface MapLanguage extends PlaceLanguage, SpokenLanguage {
  readonly map: MapPhrases;
}

/** The section map in sentences, one for each of its phrases and forks. */
export interface MapSentences {
  readonly phrases: readonly string[];
  readonly forks: readonly string[];
  readonly toLearn: string;
}

export const mapSentences = (
  language: MapLanguage,
  tune: Tune,
  map: SectionMap,
  names: NoteNames,
): MapSentences => ({
  phrases: map.phrases.map(p => kinSentence(language, tune, map, p, names)),
  forks: map.forks.map(f => forkSentence(language, map, f)),
  toLearn: language.map.toLearn(
    map.toLearn.map(i => at(map.phrases, i).label),
    map.phrases.length - map.toLearn.length,
  ),
});

/** "Starts like A1-A2 and ends in its own way; the first note that differs is note 3 of A6, E." */
export function kinSentence(
  language: MapLanguage,
  tune: Tune,
  map: SectionMap,
  phrase: Phrase,
  names: NoteNames,
): string {
  const said = language.map;
  if (phrase.of === null || phrase.kin === 'own') return said.own;
  const other = at(map.phrases, phrase.of).name;
  if (phrase.kin === 'same') return said.same(other);
  return said.kin[phrase.kin](other, differenceWords(language, tune, phrase, names));
}

function differenceWords(
  language: MapLanguage,
  tune: Tune,
  phrase: Phrase,
  names: NoteNames,
): string {
  const difference = phrase.firstDifference;
  if (firstNote(tune, phrase) === difference) return language.map.atFirstNote;
  if (difference === null || at(tune.events, difference).kind === 'rest') return '';
  const top = topPitch(noteAt(tune, difference));
  const place = noteWords(language, tune, difference);
  return language.map.firstDifference(place, spokenPitch(language, top, names));
}

/** Event index of a phrase's first note, the pickup into it left out. */
function firstNote(tune: Tune, phrase: Phrase): number | null {
  const full = phrase.bars.map(b => at(tune.bars, b)).find(bar => !bar.pickup);
  for (let e = full?.first ?? phrase.first; e < phrase.end; e++) {
    if (at(tune.events, e).kind === 'note') return e;
  }
  return null;
}

/** "Phrase a goes on in two ways: after A1-A2 comes b (A3-A4), after A5-A6 comes c (A7-A8)." */
export function forkSentence(language: MapLanguage, { phrases }: SectionMap, fork: Fork): string {
  const ways = fork.goesOn.map(({ after, to }) => {
    const { label, name } = at(phrases, to);
    return { after: at(phrases, after).name, label, bars: name };
  });
  return language.map.fork(fork.label, ways, new Set(ways.map(way => way.label)).size);
}
