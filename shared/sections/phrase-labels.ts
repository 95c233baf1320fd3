import type { Place } from '../problem.ts';

/** The labels that a teacher gives a tune's phrases, in written order. */
export interface LabelRequest {
  readonly labels: readonly string[];
  /** Where they are given, for messages. */
  readonly place: Place | null;
}

/**
 * Reads labels with spaces or commas between them: `a b a' c` is a, b, a′, c. A label is a letter or
 * two, then a prime for each further form, however typed. null when one of them is no label.
 */
export function parseLabels(text: string): readonly string[] | null {
  const labels = text.trim().split(/[\s,]+/);
  if (!labels.every(l => /^[A-Za-z]{1,2}['’′]{0,4}$/.test(l))) return null;
  return labels.map(l => l.replace(/['’]/g, prime));
}

export const prime = '′';

/** The label without its primes: a′ belongs to the family of a. */
export const familyOfLabel = (label: string): string => label.replace(/′+$/, '');
