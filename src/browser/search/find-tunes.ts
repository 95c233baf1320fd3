import MiniSearch, { type Query } from 'minisearch';
import type { NoteNames } from '../../../shared/music/note-names.ts';
import { foldText, typedNotes } from '../../../shared/search/fold-text.ts';
import { matchOpening } from '../../../shared/search/match-opening.ts';
import type { SearchEntry } from '../../../shared/search/search-entry.ts';
import { searchWords } from '../../../shared/words/en/search.ts';

/** What a student asks for. Empty strings and null ask nothing. */
export interface TuneQuery {
  /** Words of a title, alias or composer; or opening notes as letters. */
  readonly text: string;
  /** Opening notes as semitones above C in base 12, as touched on the strings. */
  readonly touched: string;
  readonly type: string | null;
  readonly key: string | null;
  readonly form: string | null;
}

export type TuneFinder = (query: TuneQuery) => readonly SearchEntry[];

/** Words that say nothing of which tune is meant. */
const idle: ReadonlySet<string> = new Set(searchWords.idle);

/**
 * Indexes the tunes once; the finder then answers as one types. Words find titles, aliases,
 * composers, types and keys, the beginning of a word and a slip of the pen allowed. Letters that
 * could be notes find openings as well, and stand first where they are set apart as notes are
 * (`D F A`), last where they could as well be a word (`bag`).
 */
export function makeTuneFinder(entries: readonly SearchEntry[], names: NoteNames): TuneFinder {
  const index = new MiniSearch({
    fields: ['title', 'aliases', 'composer', 'kind'],
    processTerm: term => (idle.has(term) ? null : term),
    tokenize: text => foldText(text).split(' '),
    searchOptions: {
      boost: { title: 4, aliases: 3 },
      prefix: true,
      // Two letters may be wrong in a word of five: `tabel`, `harbor`.
      fuzzy: term => (term.length > 3 ? 0.34 : false),
      weights: { prefix: 0.3, fuzzy: 0.1 },
    },
  });
  index.addAll(entries.map((entry, id) => wordsOf(entry, id)));

  /** Tunes that answer to every word first, then those that answer to some. */
  const byWords = (text: string): SearchEntry[] => {
    const asked: Query = { combineWith: 'OR', queries: [text, ...pairs([foldText(text)])] };
    const all = index.search(text, { combineWith: 'AND' });
    return [...all, ...index.search(asked)].flatMap(({ id }) => entries[id] ?? []);
  };

  return query => {
    const wanted = (entry: SearchEntry): boolean =>
      (query.type === null || entry.type === query.type) &&
      (query.key === null || entry.key === query.key) &&
      (query.form === null || entry.form === query.form);
    const text = query.text.trim();
    const notes = typedNotes(text, names);
    const opened = notes === null ? [] : byOpening(entries, 'letters', notes);
    const named = text === '' ? [] : byWords(text);
    const apart = /[\s,#|-]/.test(text);
    const asked = [...new Set(apart ? [...opened, ...named] : [...named, ...opened])];
    const touched = query.touched === '' ? null : byOpening(entries, 'semitones', query.touched);
    const both = touched && text !== '' ? touched.filter(e => asked.includes(e)) : touched;
    return (both ?? (text === '' ? entries : asked)).filter(wanted);
  };
}

/** Spaced words and run-together ones (`harbourmaster`, `harbour master`) find each other. */
function wordsOf(entry: SearchEntry, id: number) {
  const names = [entry.title, ...entry.aliases].map(foldText);
  const joined = names.map(name => name.replace(/ /g, ''));
  return {
    id,
    title: foldText(entry.title),
    aliases: [...entry.aliases.map(foldText), ...joined, ...pairs(names)].join(' '),
    composer: foldText(entry.composer ?? ''),
    kind: foldText(`${entry.type ?? ''} ${entry.key}`),
  };
}

/** Neighbouring words as one: `ice house stairs` gives `icehouse housestairs`. */
const pairs = (names: readonly string[]): string[] =>
  names.flatMap(name => {
    const words = name.split(' ');
    return words.slice(1).map((word, i) => `${words[i]}${word}`);
  });

function byOpening(
  entries: readonly SearchEntry[],
  field: 'letters' | 'semitones',
  asked: string,
): SearchEntry[] {
  const fits = entries.flatMap(entry => {
    const cost = matchOpening(asked, entry[field], entry.pickup);
    return cost === null ? [] : [{ entry, cost }];
  });
  return fits.sort((a, b) => a.cost - b.cost).map(fit => fit.entry);
}
