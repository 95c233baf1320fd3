import type { CreditPhrases } from '../credits.ts';

export const credits: CreditPhrases = {
  traditional: 'Traditional',
  by: composer => `By ${composer}`,
  byPermission: words => `By permission: ${words}`,
  rightsUnknown: 'Rights not yet known',
  learnedFrom: from => `Learned from ${from}`,
  source: source => `Source: ${source}`,
  book: book => `From ${book}`,
};
