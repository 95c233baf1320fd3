/** Languages that Bowbook has words in for readers, as primary subtags of BCP 47. */
export const wordedLanguages = ['en', 'de'] as const;
export type WordedLanguage = (typeof wordedLanguages)[number];

/** The language of the words for a BCP 47 tag: `de` of `de-AT`; English where there are none. */
export function wordedIn(language: string): WordedLanguage {
  const base = language.toLowerCase().split('-')[0];
  return wordedLanguages.find(worded => worded === base) ?? 'en';
}

/**
 * As days are written: the way of the tag where there are words in its language; else, and in
 * English that names no region, the British way.
 */
export function localeOf(language: string): string {
  const base = language.toLowerCase().split('-')[0];
  return base === wordedIn(language) && language.toLowerCase() !== 'en' ? language : 'en-GB';
}
