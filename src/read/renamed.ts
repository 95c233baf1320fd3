import { nearest } from '../../shared/nearest.ts';

/** Words of earlier versions, each with the present one. */
const renamed: Readonly<Record<string, string>> = { draft: 'unfinished', hooks: 'stands-out' };

/** The known name that an unknown one most likely means: its present form, else the nearest; null where none is near. */
export function meantName(found: string, known: readonly string[]): string | null {
  const now = Object.hasOwn(renamed, found) ? renamed[found] : undefined;
  return now !== undefined && known.includes(now) ? now : nearest(found, known);
}
