import type { Messages } from '../problem-words.ts';
import { noteNamed } from './note-name.ts';

/** Wording of what can be wrong with a tune's ABC. */
export const abcMessages = {
  'abc-unreadable': () => ({
    message: 'This tune cannot be read past this line, so it is left out.',
    mend: 'Look in the line for a bracket, a brace or a `!` that is opened and not closed.',
  }),
  'abc-warning': p => ({
    message: `Something in this tune was not understood: ${p.actual ?? 'unknown'}.`,
    mend: 'Write it as the ABC standard 2.1 does, or take it out.',
  }),
  'abc-blank-line': () => ({
    message: 'There is music after a blank line, and a blank line ends a tune, so it was not read.',
    mend: 'Take out the blank line, or begin it with `%` to keep the space.',
  }),
  'no-notes': p => ({
    message: `The tune ${quoted(p.facts.title)} has no notes.`,
    mend: 'Write its notes under the line that begins with `K:`.',
  }),
  'several-voices': () => ({
    message:
      'This tune has several voices; only the first was read, since a bowing is for one line.',
    mend: 'Give each voice a tune of its own, or keep only the melody.',
  }),
  'part-unknown': p => ({
    message: `The order of parts names ${p.actual}, but the tune has only ${list(p.expected)}.`,
    mend: `Write \`P:${p.actual ?? ''}\` where that part begins, or change the line \`P:\` of the header.`,
  }),
  'too-long-to-play': p => ({
    message: `Played through with all its repeats, this tune has more than ${p.facts.notes} notes; the rest was left out.`,
    mend: 'Check the repeat signs and the order of parts.',
  }),
  'bar-length': p => ({
    message: `Bar ${p.facts.bar} is too ${p.facts.by}: it adds up to ${p.actual} of a whole note, and a bar of ${p.facts.meter} has ${list(p.expected)}.`,
    mend:
      p.facts.by === 'long'
        ? 'Look for a missing bar line, or a note that is too long.'
        : 'Look for a note that is too short, or write a rest, `z`, to fill the bar.',
  }),
  'endings-mismatch': p => ({
    message: `The endings at bar ${p.facts.bar} are numbered ${p.actual}, and should be ${list(p.expected)}.`,
    mend: 'Number the endings so that each time through has one, as in `[1 … :|[2 … |]`.',
  }),
  'slur-open': p => ({
    message: `The slur that opens at ${noteNamed(p.facts.note)} is never closed.`,
    mend: 'Write `)` after the last note of the slur.',
  }),
  'slur-not-opened': p => ({
    message: `A slur closes at ${noteNamed(p.facts.note)}, but none is open there.`,
    mend: 'Write `(` before the first note of the slur, or take out the `)`.',
  }),
  'slur-over-repeat': p => ({
    message: `The slur from ${noteNamed(p.facts.note)} goes over the repeat sign before bar ${p.facts.bar}.`,
    mend: 'Close the slur before the repeat sign, and open a new one after it if it is wanted.',
  }),
  'slur-over-rest': p => ({
    message: `The slur from ${noteNamed(p.facts.note)} goes over a rest in bar ${p.facts.bar}.`,
    mend: 'Close the slur before the rest.',
  }),
  'slur-on-rest': p => ({
    message: `A slur opens at a rest in bar ${p.facts.bar}; it was left out.`,
    mend: 'Open the slur at the first note after the rest.',
  }),
  'mark-inside-slur': p => ({
    message: `${capital(noteNamed(p.facts.note))} has a sign for ${p.facts.mark}-bow, but it is in the slur that opens at ${noteNamed(p.facts.first)}, and a slur is one stroke.`,
    mend: 'Put the sign on the first note of the slur, or end the slur before this note.',
  }),
  'mark-on-tied-note': p => ({
    message: `${capital(noteNamed(p.facts.note))} has a sign for ${p.facts.mark}-bow, but it is tied to the note before it, and a tie keeps its stroke.`,
    mend: 'Put the sign on the first of the tied notes, or take out the tie.',
  }),
  'tie-to-nothing': p => ({
    message: `${capital(noteNamed(p.facts.note))} is tied, but the next note is not the same.`,
    mend: 'Take out the `-`, or write a slur, `(` and `)`, if one stroke is meant.',
  }),
  'accidental-elsewhere': p => ({
    message: `${capital(noteNamed(p.facts.note))} is ${p.actual}, because of a sign in another octave earlier in its bar; a player reading the page may take it for ${list(p.expected)}.`,
    mend: 'Write the sign you mean before the note: `^`, `=` or `_`.',
  }),
} satisfies Partial<Messages>;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const list = (words: readonly string[]): string => words.join(', ') || 'none';

const quoted = (title: string | number | undefined): string => (title ? `“${title}”` : 'here');
