import type * as english from '../en/by-ear.ts';
import type { InAnyLanguage } from '../in-any-language.ts';

/** A tune shown by ear first, its notation folded away. */
export const byEarWords: InAnyLanguage<typeof english.byEarWords> = {
  title: 'Nach dem Gehör: die Töne ohne Noten',
  how: 'Eine Zeile ist eine Phrase. Der große Buchstabe ist der Ton; darunter stehen der Finger (0 ist die leere Saite) und die Saite. Töne an einem Faden teilen sich einen Strich: unten eckig ist ein Abstrich, rund ein Aufstrich.',
  notation: 'Die Noten zeigen',
};
