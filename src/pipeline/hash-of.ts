import { hash } from 'node:crypto';

/**
 * SHA-256 of a list of texts, cut to 40 hexadecimal digits. The length of each text is hashed too, so that
 * `'ab', 'c'` and `'a', 'bc'` differ.
 */
export const hashOf = (...texts: readonly string[]): string =>
  hash('sha256', texts.map(text => `${text.length} ${text}`).join('')).slice(0, 40);
