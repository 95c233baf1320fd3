import type { Messages } from '../problem-words.ts';

/** What the files for other programs say of themselves, and what `bowbook export` says. */
export const exportWords = {
  software: 'Bowbook',
  instrument: 'Fiddle',
  unknownTune: (id: string, near: string | null): string =>
    `There is no tune "${id}" in this book.${near === null ? '' : ` Did you mean "${near}"?`}`,
  oneFile: (files: number, out: string): string =>
    `"${out}" is the name of one file, and ${files} would be written. Name a folder with --out, or one tune with --tune and one form with --as.`,
  zipOfTune: 'A zip is of the whole site: leave out --tune, or ask for another form with --as.',
  zipAmongOthers: 'A zip is of the whole site: ask for it by itself with --as zip.',
  written: (files: number, out: string): string =>
    files === 1 ? `Written: ${out}` : `${files} files written to ${out}`,
  nothing: 'Nothing was written.',
} as const;

export const exportingMessages = {
  'export-withheld': p => ({
    message: `It is not said who owns the tune \`${p.facts.tune}\`, so it was not exported.`,
    mend: 'Write `rights: traditional`, `rights: own` or `permission: "…"` at the head of its page, or on its `:::tune`.',
  }),
  'export-unreadable': p => ({
    message: `The ABC of the tune \`${p.facts.tune}\` could not be read, so it was not exported.`,
    mend: 'Run `bowbook check`, which says what was not understood.',
  }),
} satisfies Partial<Messages>;
