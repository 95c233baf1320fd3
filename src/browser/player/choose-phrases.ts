import type { PassageChoice } from '../../../shared/sound/passage.ts';

/**
 * What is chosen after a phrase is touched. With nothing narrower chosen, the phrase; with one
 * phrase chosen, a second reaches from the one to the other, and the same one again lets go; with
 * several chosen, one begins anew.
 */
export function touchPhrase(
  chosen: PassageChoice,
  phrase: number,
  whole: PassageChoice,
): PassageChoice {
  const one: PassageChoice = { kind: 'phrases', first: phrase, last: phrase };
  if (chosen.kind !== 'phrases' || chosen.first !== chosen.last) return one;
  if (chosen.first === phrase) return whole;
  const [first, last] = [Math.min(chosen.first, phrase), Math.max(chosen.first, phrase)];
  return { kind: 'phrases', first, last };
}

/** Reads `all`, `part-0`, `phrases-2-3`, `into-the-close`, as the page's buttons name them. */
export function readChoice(value: string): PassageChoice {
  const [, kind, rest = ''] = /^(part|phrases|into)-(.*)$/.exec(value) ?? [];
  if (kind === 'part') return { kind, part: Number(rest) };
  if (kind === 'into') return { kind, anchor: rest };
  const [first = 0, last = 0] = rest.split('-').map(Number);
  return kind === 'phrases' ? { kind, first, last } : { kind: 'all' };
}
