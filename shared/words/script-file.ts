import { wordedIn } from './worded-languages.ts';

/**
 * The file of a script for a book in some language, without its ending: `player`, `player.de`. Each
 * has one language in it, so that no reader loads words that they do not read.
 */
export function scriptFile(name: string, language: string): string {
  const base = wordedIn(language);
  return base === 'en' ? name : `${name}.${base}`;
}
