import type { NoteNames } from '../../shared/music/note-names.ts';
import { localeOf } from '../../shared/words/worded-languages.ts';

/** What the book of this page calls its notes: said on the page, where it is not by letters. */
export function noteNames(): NoteNames {
  const named = document.documentElement.dataset.noteNames;
  return named === 'german' || named === 'solfege' ? named : 'letters';
}

/** How days are written: as the page's language has it, as far as Bowbook has words in it. */
export const pageLocale = (): string => localeOf(document.documentElement.lang);
