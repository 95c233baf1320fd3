import {
  type ReviewRecord,
  readReview,
  usualMinutes,
  writeReview,
} from '../../../shared/review/review-file.ts';

/** All local folders share one store, so books are told apart by their name within the entry. */
const key = 'bowbook.review';

/** A day so late that none kept is after it: a clock set wrong once must not cost the ticks. */
const anyDay = 3_000_000;

export const emptyRecord: ReviewRecord = { minutes: usualMinutes, tunes: {} };

/** What is kept for a book on this device; the empty record where there is nothing sound. */
export function keptRecord(book: string): ReviewRecord {
  const text = readBooks()[book];
  if (typeof text !== 'string') return emptyRecord;
  const read = readReview(text, anyDay);
  return read.ok ? read.record : emptyRecord;
}

/** Keeps a book's record; false where the browser refuses. */
export function keepRecord(book: string, record: ReviewRecord): boolean {
  try {
    localStorage.setItem(key, JSON.stringify({ ...readBooks(), [book]: writeReview(record) }));
    return true;
  } catch {
    return false; // no store here, or it is full
  }
}

/** Calls back when another window of the book keeps something. */
export function whenKeptElsewhere(then: () => void): void {
  addEventListener('storage', event => {
    if (event.key === key || event.key === null) then();
  });
}

function readBooks(): Readonly<Record<string, unknown>> {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(key) ?? '{}');
    return typeof read === 'object' && read !== null ? (read as Record<string, unknown>) : {};
  } catch {
    return {}; // not ours, or no store
  }
}
