import { measureText } from '../../shared/engraving/measure-text.ts';
import type { NoteNames } from '../../shared/music/note-names.ts';
import { noteLetter } from '../../shared/notation/note-letter.ts';
import type { Study } from '../../shared/study.ts';
import { isTiedOn, markWidth } from './place-above.ts';
import type { CellLine } from './split-lines.ts';

export const letterSize = 12;

/** A character of a note's letter: its middle, counted from the note's. */
export interface LetterSign {
  readonly text: string;
  readonly dx: number;
  readonly width: number;
}

/** The letters of a tune's notes by event, the signs of each; a note that is tied on has none. */
export type Letters = ReadonlyMap<number, readonly LetterSign[]>;

/** The letters of all notes of a tune. Chords by their highest note. */
export function lettersOf({ tune }: Study, names: NoteNames): Letters {
  const letters = new Map<number, readonly LetterSign[]>();
  tune.events.forEach((event, e) => {
    if (event.kind !== 'note' || isTiedOn(tune.events, e)) return;
    const pitch = event.pitches[event.pitches.length - 1];
    if (!pitch) return;
    const key = tune.bars[event.bar]?.key ?? tune.key;
    letters.set(e, letterSigns(noteLetter(pitch, key, names)));
  });
  return letters;
}

/** A letter under its note's head, what belongs to it at its right: `F♯,`. */
function letterSigns(letter: string): readonly LetterSign[] {
  let edge = 0;
  return [...letter].map((text, i) => {
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
  { tune }: Study,
  events: CellLine['events'],
  letters: Letters,
): ReadonlyMap<number, number> {
  const room = new Map<number, number>();
  for (const [start, event] of events) {
    if (tune.events[event]?.kind !== 'note') continue;
    const last = letters.get(event)?.at(-1);
    const right = last ? last.dx + last.width / 2 + 1 : 0;
    room.set(start, Math.max(side, right) + side);
  }
  return room;
}
