import type { CreditFacts } from '../en/credits.ts';

/** Composer, rights and their scope, learned from, version: one line. See the English one. */
export function creditLine({ abc, rights, learnedFrom, version }: CreditFacts): string {
  const composer = abc?.composer ?? null;
  const by = composer === null ? null : /^trad/i.test(composer) ? 'Überliefert' : `Von ${composer}`;
  const parts = [
    by ?? (rights?.kind === 'traditional' ? 'Überliefert' : null),
    abc?.origin ?? null,
    rights?.kind === 'permission' ? `Mit Erlaubnis: ${rights.words}` : null,
    rights === null ? 'Rechte noch nicht bekannt' : null,
    learnedFrom === null ? null : `Gelernt von ${learnedFrom}`,
    abc?.source ? `Quelle: ${abc.source}` : null,
    abc?.book ? `Aus ${abc.book}` : null,
    version,
  ];
  return parts
    .filter(p => p !== null)
    .map(p => p.replace(/[.\s]+$/, ''))
    .join('. ')
    .concat('.');
}
