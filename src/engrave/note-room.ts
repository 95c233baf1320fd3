import type { NoteNames } from '../../shared/music/note-names.ts';
import { noteLetter } from '../../shared/notation/note-letter.ts';
import type { Study } from '../../shared/study.ts';
import { measureText } from './measure-text.ts';
import { isTiedOn, markWidth } from './place-above.ts';
import type { CellLine } from './split-lines.ts';

export const letterSize = 12;

/** A character of a note's letter: its middle, counted from the note's. */
export interface LetterSign {
  readonly text: string;
  readonly dx: number;
  readonly width: number;
}

/** The letter of a note under its head, what belongs to it at its right: `F♯,`. Chords by their highest note. */
export function letterSigns(
  { tune }: Study,
  event: number,
  names: NoteNames,
): readonly LetterSign[] {
  const note = tune.events[event];
  if (note?.kind !== 'note' || isTiedOn(tune.events, event)) return [];
  const pitch = note.pitches[note.pitches.length - 1];
  if (!pitch) return [];
  let edge = 0;
  return [...noteLetter(pitch, tune.bars[note.bar]?.key ?? tune.key, names)].map((text, i) => {
    const { width } = measureText(text, letterSize);
    const dx = i === 0 ? 0 : edge + width / 2;
    edge = dx + width / 2;
    return { text, dx, width };
  });
}

/** Half of what stands over a note, with a hair of air. */
const side = markWidth / 2 + 2;

/**
 * How far the note after must stand from each note, so that their signs, fingers and letters keep
 * clear of one another: units by the offset at which abcjs says that the note starts.
 */
export function noteRoom(
  study: Study,
  line: CellLine,
  names: NoteNames,
): ReadonlyMap<number, number> {
  return new Map(
    [...line.events].flatMap(([start, event]) => {
      if (study.tune.events[event]?.kind !== 'note') return [];
      const last = letterSigns(study, event, names).at(-1);
      const right = last ? last.dx + last.width / 2 + 1 : 0;
      return [[start, Math.max(side, right) + side] as const];
    }),
  );
}
