import type { Tune } from '../../shared/music/tune.ts';

/** What tunes are compared by. */
export interface TuneMarks {
  /** Its ABC without its number, and without spaces at the ends of lines. */
  readonly text: string;
  /** Its title in lower case, letters and digits only. */
  readonly title: string;
  /** Its pitches, rests and lengths, bar by bar; null where it could not be read. */
  readonly notes: string | null;
}

/** How two tunes are alike: the same tune, or only the same notes, or only the same title. */
export type Likeness = 'same' | 'notes' | 'title';

/** What a tune is compared by; `tune` is null where its ABC could not be read. */
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
 * Compares two tunes. They are the same where their texts are equal, or title and notes are: so a tune is
 * recognised after its teacher has added slurs and fingers. Null where neither title nor notes agree.
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
