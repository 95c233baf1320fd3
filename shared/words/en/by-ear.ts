/** A tune shown by ear first, its notation folded away. */
export const byEarWords = {
  title: 'By ear: the notes without notation',
  how: 'One line is one phrase. The large letter is the note; under it stand the finger (0 is the open string) and the string. Notes on one thread share a stroke: square at the foot is a down-bow, round an up-bow.',
  notation: 'Show the notation',
} as const;
