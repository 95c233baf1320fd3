import { tuneTypes } from '../../music/tune.ts';
import type { Messages } from '../problem-words.ts';

/** What `bowbook import` says, and writes into the pages that it makes. */
export const importWords = {
  askRights:
    'Who owns it? Write traditional or own here, or take the line out and write permission: "…".',
  askType: `What is it? type: ${tuneTypes.join(', ')}`,
  askLearnedFrom: 'Who is it from? learned-from: …',
  tunesIn: (tunes: number, files: number): string =>
    `${count(tunes, 'tune')} in ${count(files, 'file')}: `,
  outcome: (written: number, present: number): string =>
    `${written === 0 ? 'none' : written} written, ${present === 0 ? 'none' : present} there already.`,
  wouldBe: (written: number, present: number): string =>
    `${written} to be written, ${present} there already. Nothing was written.`,
  pages: (folder: string): string => `The new pages are in ${folder}, one for each tune.`,
  rights: (asked: number): string =>
    `${count(asked, 'page')} ${asked === 1 ? 'asks' : 'ask'} for the rights, on the line \`rights: unknown\`. Until it is filled in, notes and sound of the tune are left out of the site that you publish.`,
  notUnderstood: (tunes: number): string =>
    `${count(tunes, 'tune')} could not be read in full, and ${tunes === 1 ? 'is' : 'are'} kept as written; what was not understood is said above.`,
  more: (problems: number): string =>
    `${count(problems, 'more message')}: write --all after the command to see every one.`,
  next: 'Next: bowbook check',
} as const;

const count = (n: number, thing: string): string => `${n} ${thing}${n === 1 ? '' : 's'}`;

export const importingMessages = {
  'import-encoding': p => ({
    message: `Not every line is UTF-8: those lines were read as ${p.actual}.`,
    mend: 'Look at the accents in the new pages; where they are wrong, save the file as UTF-8 and import it again.',
  }),
  'import-no-tune': () => ({
    message:
      'No tune was found in this file: a tune of ABC begins with an `X:` line and has a `K:` line.',
    mend: 'See whether it is the right file; if it is, write `X:1` above the title of each tune.',
  }),
  'import-words-left': () => ({
    message: 'The words before the first tune belong to no tune, and were left out.',
    mend: 'Copy them into a page of the book if they are worth keeping.',
  }),
  'import-same-notes': p => ({
    message: `"${p.facts.title}" has the same notes as "${p.facts.other}" (${p.facts.where}). Both are kept.`,
    mend: 'If they are one tune, put the second title into the first page as a further `T:` line, and take the other page out.',
  }),
  'import-same-title': p => ({
    message: `"${p.facts.title}" is also the title of ${p.facts.where}, with other notes. Both are kept.`,
    mend: 'If they are two versions, say on each page what it is with `version:`; if they are two tunes, nothing need be done.',
  }),
  'import-same-twice': p => ({
    message: `"${p.facts.title}" stands twice in what was imported: ${p.facts.where} is the same. Both are kept.`,
    mend: 'Take one of the two pages out.',
  }),
} satisfies Partial<Messages>;
