import type { CreditPhrases } from '../credits.ts';

export const credits: CreditPhrases = {
  traditional: 'Überliefert',
  by: composer => `Von ${composer}`,
  byPermission: words => `Mit Erlaubnis: ${words}`,
  rightsUnknown: 'Rechte noch nicht bekannt',
  learnedFrom: from => `Gelernt von ${from}`,
  source: source => `Quelle: ${source}`,
  book: book => `Aus ${book}`,
};
