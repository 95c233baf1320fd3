/** Labels and sentences of finding a tune. */
export const searchWords = {
  find: 'Find a tune',
  how: (notes: string): string => `A name, or its first notes as letters: ${notes}`,
  type: 'Type',
  key: 'Key',
  form: 'Form',
  any: 'any',
  strings: 'Play its first notes',
  stringsHow:
    'Touch the notes in turn, as the fingers find them. Octaves and rhythm do not matter.',
  string: 'String',
  finger: 'Finger',
  touched: 'Touched:',
  noneTouched: 'no note yet',
  takeBack: 'Take the last one back',
  startAgain: 'Begin again',
  more: 'Show more',
  opens: 'Opens',
  withheld: 'its notes are not published',
  count: (found: number, all: number): string =>
    found === all
      ? `All ${all} tunes.`
      : found === 0
        ? 'No tune fits. Fewer words or fewer notes find more.'
        : `${found} of ${all} tunes.`,
  /** Words of a title that say nothing of which tune is meant. */
  idle: ['the', 'a', 'an', 'of'],
} as const;
