import type { FactsOf } from '../../rules.ts';
import type { Messages } from '../problem-words.ts';

/** What of a tune can be too much, and of what kind its number is. */
const ofTune: Readonly<
  Record<FactsOf<'tune-past-limit'>['what'], (found: number, most: number) => string>
> = {
  length: (found, most) => `Its ABC has ${found} characters; a tune has ${most} at most.`,
  line: (found, most) => `A line of its ABC has ${found} characters; a line has ${most} at most.`,
  notes: (found, most) => `It has ${found} notes and rests; a tune has ${most} at most.`,
  meter: (found, most) => `Its metre has the number ${found}; ${most} is the most there is.`,
  chord: (found, most) => `A chord has ${found} notes; a chord has ${most} at most.`,
  graces: (found, most) => `A group has ${found} grace notes; a group has ${most} at most.`,
  'note-length': (_, most) =>
    `The length of a note or rest here cannot be counted, or is more than ${most} whole notes.`,
  'rest-bars': (found, most) => `A rest is ${found} bars long; a rest has ${most} at most.`,
};

/** A sign that is not to be seen by its number. */
const signText = (sign: string): string =>
  /\p{Cc}/u.test(sign) ? `U+${(sign.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}` : sign;

const nameMend =
  'Give the file a name of letters, digits, hyphens and dots, and change what refers to it.';

const fileMend = 'Make it smaller, or cut it into several.';

/** Messages about what is too much: the numbers are those of `limits`. */
export const limitMessages = {
  'tune-past-limit': p => ({
    message: `This tune is left out. ${ofTune[p.facts.what](p.facts.found, p.facts.most)}`,
    mend: 'Look for a slip of the keys here; if the music is meant so, cut the tune into several.',
  }),
  'tunes-past-limit': p => ({
    message: `There are ${p.facts.found} tunes here; only the first ${p.facts.most} are read.`,
    mend: 'Cut the file into several.',
  }),
  'page-past-limit': p => ({
    message: `This page has ${p.facts.found} characters; a page has ${p.facts.most} at most.`,
    mend: fileMend,
  }),
  'lines-past-limit': p => ({
    message: `This page has ${p.facts.found} lines; a page has ${p.facts.most} at most.`,
    mend: fileMend,
  }),
  'line-past-limit': p => ({
    message: `This line has ${p.facts.found} characters; a line has ${p.facts.most} at most.`,
    mend: 'Break the line; if it is a picture written out as text, put the picture into `media`.',
  }),
  'nested-past-limit': p => ({
    message: `Lists, quotes, blocks or emphasis stand inside one another here more than ${p.facts.most} deep.`,
    mend: 'Look for a slip of the keys here, such as a key that was held down, and take it out.',
  }),
  'table-past-limit': p => ({
    message: `This table has ${p.facts.found} cells; a table has ${p.facts.most} at most.`,
    mend: 'Cut the table into several.',
  }),
  'link-past-limit': p => ({
    message: `The address of this link has ${p.facts.found} characters; an address has ${p.facts.most} at most, so it is left out.`,
    mend: 'Look for a shorter address of the same page.',
  }),
  'media-past-limit': p => ({
    message: `The file "${p.actual}" has ${p.facts.found} bytes; a ${p.facts.what === 'picture' ? 'picture' : 'recording'} has ${p.facts.most} at most.`,
    mend: 'Save it smaller: a phone has to hold it.',
  }),
  'media-name': p => ({
    message: `The name of the file "${p.actual}" has the sign ${p.facts.sign}, which memory sticks and some computers cannot have in a name.`,
    mend: nameMend,
  }),
  'media-name-impossible': p => ({
    message: `The name of the file "${p.actual}" has the sign ${signText(p.facts.sign)}, which no site can have in a name.`,
    mend: nameMend,
  }),
  'media-runs': p => ({
    message: `The file "${p.actual}" is a program or a page, or a drawing with a program in it, which would run on the reader’s machine.`,
    mend: 'Keep recordings and pictures alone in `media`; save the drawing without its script, or as PNG.',
  }),
  'files-past-limit': p => ({
    message: `The book has ${p.facts.found} files in "${p.actual}"; it may have ${p.facts.most}.`,
    mend: 'Cut the book into several.',
  }),
  'abc-past-limit': p => ({
    message: `The file "${p.actual}" has ${p.facts.found} bytes; a file of ABC has ${p.facts.most} at most, so it was not read.`,
    mend: fileMend,
  }),
  'outside-the-book': p => ({
    message: `"${p.actual}" is a link to somewhere outside the book, and was not followed.`,
    mend: 'Put a copy of the file into the book in place of the link.',
  }),
} satisfies Partial<Messages>;
