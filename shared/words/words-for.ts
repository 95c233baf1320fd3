import type { NoteNames } from '../music/note-names.ts';
import { durationWords } from './amounts.ts';
import { beatName } from './beats.ts';
import { bowPathSentences } from './bow-path.ts';
import { editSentence, planSentence, wholeTuneSentence } from './bowing.ts';
import { creditLine } from './credits.ts';
import * as german from './de/reader-words.ts';
import * as english from './en/reader-words.ts';
import { howToRead } from './how-to-read.ts';
import type { InAnyLanguage } from './in-any-language.ts';
import { keyChangeSentence, keyName, kindName } from './keys.ts';
import { longDate } from './long-date.ts';
import { kinSentence, mapSentences } from './map.ts';
import {
  arrivalSentences,
  bowingWords,
  drawnPlanTitle,
  leadInSentences,
  moreMends,
  moreWays,
  noPlanSentence,
  repeatSentences,
  strokeCount,
  varyingSentences,
} from './plans.ts';
import { speakTune, spokenNote } from './say-tune.ts';
import {
  spokenFinger,
  spokenPitch,
  spokenPitches,
  spokenStop,
  spokenStops,
  stringNames,
} from './spoken.ts';
import { standoutSentence } from './standouts.ts';
import { noDrillSentence, tellDrill } from './tell-drill.ts';
import { sortedAs } from './titles.ts';
import { localeOf, type WordedLanguage, wordedIn } from './worded-languages.ts';

/** What each language supplies: its labels, and the phrases that sentences are made of. */
export type Language = InAnyLanguage<typeof english>;

/** Sentences, each made of the phrases of the language that it is given first. */
const sentences = {
  arrivalSentences,
  beatName,
  bowingWords,
  bowPathSentences,
  creditLine,
  drawnPlanTitle,
  durationWords,
  editSentence,
  standoutSentence,
  howToRead,
  keyChangeSentence,
  keyName,
  kindName,
  kinSentence,
  leadInSentences,
  mapSentences,
  noDrillSentence,
  moreMends,
  moreWays,
  noPlanSentence,
  planSentence,
  repeatSentences,
  sortedAs,
  speakTune,
  spokenFinger,
  spokenNote,
  spokenPitch,
  spokenPitches,
  spokenStop,
  spokenStops,
  stringNames,
  strokeCount,
  tellDrill,
  varyingSentences,
  wholeTuneSentence,
};

type InOneLanguage<Sentence> = Sentence extends (
  language: never,
  ...given: infer Given
) => infer Told
  ? (...given: Given) => Told
  : never;

type Sentences = {
  readonly [Name in keyof typeof sentences]: InOneLanguage<(typeof sentences)[Name]>;
};

/** The words of one book, with what it calls its notes and how it writes days. */
export interface Words extends Language, Sentences {
  readonly noteNames: NoteNames;
  /** BCP 47: as days are written, and names sorted. */
  readonly locale: string;
  readonly dateName: typeof longDate;
}

/** A language with its sentences. As plain objects: a module is slow to copy. */
const inLanguage = (language: Language): Language & Sentences => ({
  ...language,
  ...(Object.fromEntries(
    Object.entries(sentences).map(([name, say]) => [
      name,
      (...given: unknown[]) => (say as (...given: unknown[]) => unknown)(language, ...given),
    ]),
  ) as Sentences),
});

const languages: Readonly<Record<WordedLanguage, Language & Sentences>> = {
  en: inLanguage(english),
  de: inLanguage(german),
};

/**
 * Words in the language of a BCP 47 tag, whatever its region; in English where there are none, and
 * then days are written as in English too. A page's script has its language from its bundle instead
 * (`src/bundling/bundle.mjs`), so that no reader loads words that they do not read.
 */
export const wordsFor = (language: string, noteNames: NoteNames): Words => ({
  ...languages[wordedIn(language)],
  dateName: longDate,
  noteNames,
  locale: localeOf(language),
});
