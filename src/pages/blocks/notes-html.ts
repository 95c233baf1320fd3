import type { Direction } from '../../../shared/music/tune.ts';
import type { NotesBlock } from '../../read/book.ts';
import type { PageContext } from '../page-context.ts';
import { render } from '../render.ts';
import type { ChainNote } from '../site.ts';

/** Makes the HTML of a chain of notes; its ABC as written where that could not be read. */
export function notesHtml(block: NotesBlock, context: PageContext): string {
  const notes = context.input.noteChain(block);
  if (notes === null) return render('parts/verbatim', { text: block.abc }, context.words).trim();
  return render('parts/notes', { strokes: chainStrokes(notes, context) }, context.words).trim();
}

interface ChainStroke {
  readonly direction: Direction;
  readonly alt: string;
  readonly slurred: boolean;
  readonly notes: readonly ChainNote[];
}

/** Groups the notes of a chain by stroke. */
function chainStrokes(notes: readonly ChainNote[], { words }: PageContext): readonly ChainStroke[] {
  const strokes: ChainNote[][] = [];
  for (const note of notes) {
    const last = strokes.at(-1);
    if (note.slurred && last) last.push(note);
    else strokes.push([note]);
  }
  return strokes.flatMap(group => {
    const direction = group[0]?.direction;
    if (direction === undefined) return [];
    return [
      { direction, alt: words.siteWords[direction], slurred: group.length > 1, notes: group },
    ];
  });
}
