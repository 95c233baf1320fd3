import type { Tune } from '../../shared/music/tune.ts';

/** What a tune is known again by. */
export interface TuneMarks {
  /** Its ABC without its number, and without spaces at the ends of lines. */
  readonly text: string;
  /** Its title, in small letters and without signs. */
  readonly title: string;
  /** Its notes and rests as they sound, bar by bar; null where it could not be read. */
  readonly notes: string | null;
}

/** How a tune stands to one that is there: the same, or like it in one way. */
export type Likeness = 'same' | 'notes' | 'title';

export const marksOf = (abc: string, title: string, tune: Tune | null): TuneMarks => ({
  text: abc
    .split('\n')
    .filter(line => !/^X:/.test(line))
    .map(line => line.trimEnd())
    .join('\n')
    .trim(),
  title: title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ''),
  notes: tune === null ? null : notesOf(tune),
});

/**
 * The same: the same text, or the same title and the same notes, so that a tune is known again
 * after its teacher has put in slurs and fingers. Null where they have nothing in common.
 */
export function likeness(a: TuneMarks, b: TuneMarks): Likeness | null {
  const sameTitle = a.title === b.title;
  const sameNotes = a.notes !== null && a.notes === b.notes;
  if (a.text === b.text || (sameTitle && sameNotes)) return 'same';
  if (sameNotes) return 'notes';
  return sameTitle && a.title !== '' ? 'title' : null;
}

const notesOf = (tune: Tune): string =>
  tune.bars
    .map(bar =>
      tune.events
        .slice(bar.first, bar.end)
        .map(e => {
          const sounds = e.kind === 'note' ? e.pitches.map(p => p.midi).join('+') : 'z';
          return `${sounds}:${e.duration.n}/${e.duration.d}`;
        })
        .join(' '),
    )
    .join('|');
