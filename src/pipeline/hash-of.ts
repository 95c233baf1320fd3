import { hash } from 'node:crypto';

/** Hash over texts, as 40 hexadecimal digits: other texts, or the same divided otherwise, have another. */
export const hashOf = (...texts: readonly string[]): string =>
  hash('sha256', texts.map(text => `${text.length} ${text}`).join('')).slice(0, 40);
