import type { AbcCredits } from '../../music/tune.ts';

/** What a tune's credits are made from, besides its ABC. */
export interface CreditFacts {
  readonly abc: AbcCredits | null;
  readonly rights: {
    readonly kind: 'traditional' | 'own' | 'permission';
    readonly words?: string;
  } | null;
  readonly learnedFrom: string | null;
  readonly version: string | null;
}

/**
 * Composer and year, rights and their scope, learned from, version: one line, in the order that
 * is usual in tune books. "Traditional" and "by permission" are the teacher's own word; local law
 * and the rights holder decide.
 */
export function creditLine({ abc, rights, learnedFrom, version }: CreditFacts): string {
  const composer = abc?.composer ?? null;
  const by = composer === null ? null : /^trad/i.test(composer) ? 'Traditional' : `By ${composer}`;
  const parts = [
    by ?? (rights?.kind === 'traditional' ? 'Traditional' : null),
    abc?.origin ?? null,
    rights?.kind === 'permission' ? `By permission: ${rights.words}` : null,
    rights === null ? 'Rights not yet known' : null,
    learnedFrom === null ? null : `Learned from ${learnedFrom}`,
    abc?.source ? `Source: ${abc.source}` : null,
    abc?.book ? `From ${abc.book}` : null,
    version,
  ];
  return parts
    .filter(p => p !== null)
    .map(p => p.replace(/[.\s]+$/, ''))
    .join('. ')
    .concat('.');
}
