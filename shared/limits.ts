/**
 * The most that a book may contain: far more than a teacher writes, and little enough that no file can
 * hang a build or exhaust memory. `docs/limits.md` gives the reasons; a test compares it with this
 * table.
 */
export const limits = {
  /** Pages of a book, and media files of a book. */
  files: 20_000,
  /** Characters of a page, or of the settings, and lines of a page. */
  pageLength: 200_000,
  pageLines: 6_000,
  /** Characters of a line of a page. */
  lineLength: 10_000,
  /** Lists, quotes, blocks and emphasis inside one another. */
  nesting: 50,
  /** Cells of a table, those that a short row leaves out among them. */
  tableCells: 20_000,
  /** Characters of the address of a link. */
  linkLength: 2_000,
  /** Bytes of a picture, and of a recording. */
  pictureSize: 20_000_000,
  recordingSize: 200_000_000,
  /** Bytes of a file of ABC, and tunes in one. */
  abcSize: 20_000_000,
  tunes: 5_000,
  /** Characters of one tune's ABC, and of a line of it. */
  tuneLength: 30_000,
  tuneLine: 2_000,
  /** Notes and rests of a tune as written, and as played with its repeats. */
  notes: 2_000,
  playedNotes: 20_000,
  /** Notes of a chord, and of a group of grace notes. */
  chord: 8,
  graces: 16,
  /** Any number of a metre. */
  beats: 999,
  /** Length of a note or rest in whole notes, and bars of one rest. */
  noteLength: 16,
  restBars: 100,
  /** Times through that an ending or a repeat sign may name. */
  times: 99,
  /** Messages of one kind about one tune; further ones are left out. */
  messages: 100,
} as const;
