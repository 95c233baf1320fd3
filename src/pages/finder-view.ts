import type { Tuning } from '../../shared/fingering/fingering.ts';
import { plainLetter } from '../../shared/notation/plain-letter.ts';
import { openingOf, openingText, type SearchEntry } from '../../shared/search/search-entry.ts';
import { stringGrid } from '../../shared/search/string-grid.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { BuiltTune } from './built-tune.ts';
import { formOf } from './map-view.ts';
import { scriptCall } from './script-call.ts';

/** The search form. It is hidden until its script has made it work. */
export interface FinderView {
  readonly words: Words['searchWords'];
  /** How to search, with the note names of the book. */
  readonly how: string;
  /** Path from the page to the file that lists the tunes. */
  readonly entries: string;
  readonly filters: readonly {
    readonly name: string;
    readonly label: string;
    readonly options: readonly string[];
  }[];
  /** Names of the strings from low to high. */
  readonly strings: readonly string[];
  /** One for each place of a finger, from the nut. */
  readonly rows: readonly {
    readonly finger: string;
    readonly places: readonly {
      /** Semitones above C as a digit in base 12, the form in which openings are stored. */
      readonly semitone: string;
      readonly sign: string;
      readonly heard: string;
    }[];
  }[];
}

/** Makes the search entry of a tune; its notes are left out where they may not be shown. */
export function searchEntry(
  { block, study }: BuiltTune,
  shown: boolean,
  { keyName, typeName, noteNames }: Words,
): SearchEntry {
  if (study === null) {
    const nothing = { letters: '', semitones: '', pickup: 0 };
    return {
      id: block.id,
      title: block.id,
      aliases: [],
      composer: null,
      type: null,
      key: '',
      form: '',
      ...nothing,
    };
  }
  const { title, aliases, credits, type, rhythm, key } = study.tune;
  const opening = shown ? openingOf(study, noteNames) : { letters: '', semitones: '', pickup: 0 };
  return {
    id: block.id,
    title,
    aliases,
    composer: credits.composer,
    type: type === null ? rhythm : typeName[type],
    key: keyName(key, noteNames),
    form: formOf(study),
    ...opening,
  };
}

/** Makes the data of the search form. */
export function finderView(
  entries: readonly SearchEntry[],
  tuning: Tuning,
  words: Words,
): FinderView {
  const { searchWords, spokenFinger, noteNames } = words;
  const strings = stringGrid(tuning);
  const names = words.stringNames(tuning, noteNames).toReversed();
  const fingers = strings[0]?.map(spokenFinger) ?? [];
  const values = (of: (e: SearchEntry) => string | null): string[] =>
    [...new Set(entries.map(of))].filter((v): v is string => v !== null && v !== '').sort();
  return {
    words: searchWords,
    how: searchWords.how(openingText('DFA', 3, noteNames)),
    entries: 'entries.js',
    filters: [
      { name: 'type', label: searchWords.type, options: values(e => e.type) },
      { name: 'key', label: searchWords.key, options: values(e => e.key) },
      { name: 'form', label: searchWords.form, options: values(e => e.form) },
    ].filter(filter => filter.options.length > 1),
    strings: names,
    rows: fingers.map((finger, row) => ({
      finger,
      places: strings.flatMap(places => {
        const place = places[row];
        if (!place) return [];
        const { pitch } = place;
        const at = words.spokenStop(place, tuning, noteNames);
        return {
          semitone: (pitch.midi % 12).toString(12),
          sign: plainLetter(pitch, noteNames),
          heard: place.finger === 0 ? at : `${at}, ${words.spokenPitch(pitch, noteNames)}`,
        };
      }),
    })),
  };
}

/** Lists the tunes as a script, which a page can load from a folder too, unlike JSON. */
export const entriesScript = (entries: readonly SearchEntry[]): string =>
  scriptCall('bowbookEntries', entries);
