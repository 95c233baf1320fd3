import { type Day, dayText, readDay } from './day.ts';
import { intervals, type ReviewState, type TuneState } from './review-state.ts';

/** What is kept of one student's review: on the device, and in the file that is taken away. */
export interface ReviewRecord {
  readonly minutes: number;
  readonly tunes: ReviewState;
}

export const leastMinutes = 5;
export const mostMinutes = 120;
export const usualMinutes = 20;

/** Why a file cannot be taken over. */
export type FileFault = 'too-long' | 'not-json' | 'not-review' | 'newer' | 'tune' | 'day';

export type FileReading =
  | { readonly ok: true; readonly record: ReviewRecord }
  | { readonly ok: false; readonly fault: FileFault; readonly at: string };

/** The file as text: `{"bowbookReview":1,"minutes":20,"tunes":{"wet-rope":{"step":2,"last":"2026-11-25"}}}`. */
export const writeReview = ({ minutes, tunes }: ReviewRecord): string =>
  `${JSON.stringify({ bowbookReview: 1, minutes, tunes: writtenTunes(tunes) }, null, 1)}\n`;

const writtenTunes = (tunes: ReviewState): object =>
  Object.fromEntries(
    Object.entries(tunes).map(([id, { step, last }]) => [id, { step, last: dayText(last) }]),
  );

const longestFile = 1_000_000;
/** Ids are lower-case letters, digits and hyphens of any script. */
const isId = (id: string): boolean => /^[\p{Ll}\p{Lo}\p{N}-]{1,200}$/u.test(id);

/**
 * Reads such a file, all of it or nothing. A day after tomorrow cannot have been ticked; tomorrow
 * may, by a student who has travelled.
 */
export function readReview(text: string, today: Day): FileReading {
  if (text.length > longestFile) return fault('too-long');
  const read = parsed(text);
  if (read === undefined) return fault('not-json');
  if (!isTable(read) || !Object.hasOwn(read, 'bowbookReview')) return fault('not-review');
  if (read.bowbookReview !== 1) return fault('newer');
  if (!isTable(read.tunes)) return fault('not-review');
  const tunes: [string, TuneState][] = [];
  for (const [id, entry] of Object.entries(read.tunes)) {
    const state = readTune(id, entry);
    if (state === null) return fault('tune', id);
    if (state.last > today + 1) return fault('day', id);
    tunes.push([id, state]);
  }
  return {
    ok: true,
    record: { minutes: readMinutes(read.minutes), tunes: Object.fromEntries(tunes) },
  };
}

function readTune(id: string, entry: unknown): TuneState | null {
  if (!isId(id) || !isTable(entry)) return null;
  const { step, last } = entry;
  const day = typeof last === 'string' ? readDay(last) : null;
  const known = typeof step === 'number' && Number.isInteger(step) && step >= 0;
  return known && step < intervals.length && day !== null ? { step, last: day } : null;
}

/** Whole minutes within bounds; the usual ones where none are given. */
export function readMinutes(value: unknown): number {
  const minutes = typeof value === 'number' && Number.isFinite(value) ? value : usualMinutes;
  return Math.min(Math.max(Math.round(minutes), leastMinutes), mostMinutes);
}

const fault = (why: FileFault, at = ''): FileReading => ({ ok: false, fault: why, at });

const isTable = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return undefined;
  }
}
