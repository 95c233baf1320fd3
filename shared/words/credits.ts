import type { AbcCredits } from '../music/tune.ts';

export interface CreditPhrases {
  readonly traditional: string;
  readonly by: (composer: string) => string;
  readonly byPermission: (words: string) => string;
  readonly rightsUnknown: string;
  readonly learnedFrom: (from: string) => string;
  readonly source: (source: string) => string;
  readonly book: (book: string) => string;
}

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
export function creditLine(
  { credits }: { readonly credits: CreditPhrases },
  { abc, rights, learnedFrom, version }: CreditFacts,
): string {
  const composer = abc?.composer ?? null;
  const isTraditional =
    composer === null ? rights?.kind === 'traditional' : /^trad/i.test(composer);
  const parts = [
    isTraditional ? credits.traditional : composer && credits.by(composer),
    abc?.origin,
    rights?.kind === 'permission' ? credits.byPermission(`${rights.words}`) : null,
    rights === null ? credits.rightsUnknown : null,
    learnedFrom && credits.learnedFrom(learnedFrom),
    abc?.source && credits.source(abc.source),
    abc?.book && credits.book(abc.book),
    version,
  ];
  return parts
    .flatMap(part => part?.replace(/[.\s]+$/, '') ?? [])
    .join('. ')
    .concat('.');
}
