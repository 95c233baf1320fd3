import { nearest } from '../../shared/nearest.ts';

/** What a book of an earlier version calls otherwise: the old word, and the new. */
const renamed: Readonly<Record<string, string>> = { draft: 'unfinished', hooks: 'stands-out' };

/** The known name that is meant by another: its new one, or the nearest; null where none is near. */
export function meantName(found: string, known: readonly string[]): string | null {
  const now = Object.hasOwn(renamed, found) ? renamed[found] : undefined;
  return now !== undefined && known.includes(now) ? now : nearest(found, known);
}
