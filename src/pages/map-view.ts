import type { Stop } from '../../shared/fingering/fingering.ts';
import { type NoteNames, noteSymbol } from '../../shared/music/note-names.ts';
import { timesThrough } from '../../shared/music/times-through.ts';
import type { NoteEvent } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';
import { familyOfLabel } from '../../shared/sections/phrase-labels.ts';
import type { Phrase } from '../../shared/sections/section-map.ts';
import type { Study } from '../../shared/study.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { BuiltTune } from './built-tune.ts';
import { cellId } from './notation-view.ts';
import { mayShow, type PageContext } from './page-context.ts';

/** Fields of `parts/map`: parts and their phrases, in fields and in sentences. */
export interface MapView {
  readonly parts: readonly {
    readonly name: string;
    readonly times: string;
    readonly phrases: readonly PhraseView[];
  }[];
  /** The map as sentences. */
  readonly told: readonly string[];
}

/** One phrase on the map: its label, bars, first notes, and what it is like. */
export interface PhraseView {
  readonly label: string;
  readonly bars: string;
  readonly firstNotes: string;
  /** Fingers and strings of its first notes: `0 2 on D, 0 on A`. */
  readonly firstFingers: string;
  /** Its first notes for screen readers; empty where the notes are withheld. */
  readonly heard: string;
  readonly kin: string;
  readonly kinSentence: string;
  /** Which eighth of the phrase, from 1, holds the first note that differs; null where none is known. */
  readonly differsAt: number | null;
  /** Number of the pattern for its family, from 1 to 6. */
  readonly family: number;
  /** Link to its notation; null where that is not drawn. */
  readonly link: string | null;
}

/**
 * Makes the section map of a tune: one block a phrase, in rows by part. `notationPath` is the path of the page
 * with its notation, `''` for this page. null where the tune could not be read or has no phrases.
 */
export function tuneMap(
  tune: BuiltTune,
  context: PageContext,
  notationPath: string,
): MapView | null {
  const { study, score, block } = tune;
  if (study === null || study.map.phrases.length === 0) return null;
  const { phrases } = study.map;
  const { words } = context;
  const { siteWords, noteNames } = words;
  const { forks, toLearn } = words.mapSentences(study.tune, study.map, noteNames);
  const shown = mayShow(tune, context.input);
  // The first note that differs is a note of the tune, so it is withheld with the others.
  const kin = (phrase: Phrase): string =>
    words.kinSentence(
      study.tune,
      study.map,
      shown ? phrase : { ...phrase, firstDifference: null },
      noteNames,
    );
  const families = [...new Set(phrases.map(familyOf))];
  const view = (phrase: Phrase, index: number): PhraseView => {
    const opening = shown ? openingOf(study, phrase, words) : [];
    const cell = shown ? score?.cells.find(c => c.phrase === index) : undefined;
    return {
      label: phrase.label,
      bars: phrase.name,
      firstNotes: opening.map(o => o.letter).join(' '),
      firstFingers: fingersByString(opening, study, words),
      heard: siteWords.begins(opening.map(o => o.spoken)),
      kin: phrase.kin,
      kinSentence: kin(phrase),
      differsAt: eighthOf(study, phrase),
      family: (families.indexOf(familyOf(phrase)) % 6) + 1,
      link: cell ? `${notationPath}#${cellId(block.id, cell.name)}` : null,
    };
  };
  const views = phrases.map(view);
  return {
    parts: study.tune.parts.map((part, index) => ({
      name: siteWords.part(part.name),
      times: siteWords.timesThrough(timesThrough(study.tune, study.performance, index)),
      phrases: views.filter((_, i) => phrases[i]?.part === index),
    })),
    told: [
      toLearn,
      ...views.flatMap((v, i) =>
        phrases[i]?.firstDifference == null || !shown ? [] : [`${v.label}: ${v.kinSentence}`],
      ),
      ...forks,
    ],
  };
}

const familyOf = (phrase: Phrase): string => familyOfLabel(phrase.label);

/**
 * The eighth of a phrase, from 1, in which the first note that differs from its kin stands, all bars taken as
 * equally long. It is shown even where notes are withheld, since it names none.
 */
function eighthOf({ tune }: Study, phrase: Phrase): number | null {
  if (phrase.firstDifference === null) return null;
  const event = at(tune.events, phrase.firstDifference);
  const { length } = at(tune.bars, event.bar);
  const bars = phrase.bars.filter(b => !at(tune.bars, b).pickup);
  const before = bars.indexOf(event.bar);
  if (before < 0) return null;
  const within = event.onset.n / event.onset.d / (length.n / length.d);
  return Math.min(8, Math.floor(((before + within) / bars.length) * 8) + 1);
}

/** Most notes that a block names. */
const named = 3;

interface Opening {
  readonly letter: string;
  readonly stop: Stop | null;
  readonly spoken: string;
}

/** The first notes of a phrase, without second notes of ties. */
function openingOf(study: Study, phrase: Phrase, words: Words): readonly Opening[] {
  const { noteNames } = words;
  const first = firstFullBar(study, phrase);
  const opening: Opening[] = [];
  let tied = false;
  for (let i = first; i < phrase.end && opening.length < named; i++) {
    const e = study.tune.events[i];
    if (e?.kind !== 'note') continue;
    const top = e.pitches.at(-1);
    if (top && !tied) {
      const stop = study.fingering[i]?.at(-1) ?? null;
      const spoken = `${words.spokenPitch(top, noteNames)}, ${words.spokenStop(stop, study.tuning, noteNames)}`;
      opening.push({ letter: noteSymbol(top, noteNames).symbol, stop, spoken });
    }
    tied = e.tied;
  }
  return opening;
}

/** Fingers grouped by string, in the order of the notes: `0 2 on D, 0 on A`. */
function fingersByString(
  opening: readonly Opening[],
  { tuning }: Study,
  { siteWords, stringNames, noteNames }: Words,
): string {
  const groups: { string: number; fingers: number[] }[] = [];
  for (const { stop } of opening) {
    if (!stop) return '';
    const last = groups.at(-1);
    if (last?.string === stop.string) last.fingers.push(stop.finger);
    else groups.push({ string: stop.string, fingers: [stop.finger] });
  }
  const names = stringNames(tuning, noteNames);
  return groups.map(g => siteWords.onString(g.fingers, at(names, g.string - 1))).join(', ');
}

/** Index of the first event in the first full bar of a phrase: its pickup is left out, as in its name. */
function firstFullBar({ tune }: Study, phrase: Phrase): number {
  const full = phrase.bars.map(b => tune.bars[b]).find(bar => bar && !bar.pickup);
  return full?.first ?? phrase.first;
}

/** The first few notes as letters, without the sharps and flats of the key: `D F A`. */
export function openingLetters(
  study: Study,
  first: number,
  end: number,
  count: number,
  names: NoteNames,
): string {
  return study.tune.events
    .slice(first, end)
    .filter((e): e is NoteEvent => e.kind === 'note')
    .slice(0, count)
    .flatMap(e => e.pitches.at(-1) ?? [])
    .map(top => noteSymbol(top, names).symbol)
    .join(' ');
}

/** Names of the parts in the order they are played: `A A B B`. */
export function formOf({ tune, performance }: Study): string {
  const names: string[] = [];
  let [part, pass] = [-1, 0];
  for (const played of performance.bars) {
    const next = at(tune.bars, played.bar).part;
    // A second ending is played once only: its pass is 1 while its part is in its second.
    if (next === part && played.pass <= pass) continue;
    names.push(at(tune.parts, next).name);
    [part, pass] = [next, played.pass];
  }
  return names.join(' ');
}
