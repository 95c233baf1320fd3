/** What the files for other programs say of themselves, and what `bowbook export` says. */
export const exportWords = {
  software: 'Bowbook',
  instrument: 'Fiddle',
} as const;
