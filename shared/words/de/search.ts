import type * as english from '../en/search.ts';
import type { InAnyLanguage } from '../in-any-language.ts';

/** Labels and sentences of finding a tune. */
export const searchWords: InAnyLanguage<typeof english.searchWords> = {
  find: 'Ein Stück suchen',
  how: notes => `Ein Name, oder die ersten Noten: ${notes}`,
  type: 'Art',
  key: 'Tonart',
  form: 'Form',
  any: 'egal',
  strings: 'Die ersten Noten spielen',
  stringsHow:
    'Tippe die Töne der Reihe nach an, wie die Finger sie finden. Auf Oktaven und Rhythmus kommt es nicht an.',
  string: 'Saite',
  finger: 'Finger',
  touched: 'Angetippt:',
  noneTouched: 'noch kein Ton',
  takeBack: 'Den letzten zurücknehmen',
  startAgain: 'Neu beginnen',
  more: 'Mehr zeigen',
  opens: 'Beginnt',
  withheld: 'seine Noten sind nicht veröffentlicht',
  count: (found, all) =>
    found === all
      ? `Alle ${all} Stücke.`
      : found === 0
        ? 'Kein Stück passt. Mit weniger Worten oder Noten findet sich mehr.'
        : `${found} von ${all} Stücken.`,
  idle: ['der', 'die', 'das', 'von'],
};
