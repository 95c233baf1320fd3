import { printKinds } from '../../print-kinds.ts';
import type { Problem } from '../../problem.ts';
import type { FactsOf } from '../../rules.ts';
import type { Messages } from '../problem-words.ts';
import { listed } from './grammar.ts';

/** What a value should have been, where it is not one of a list. */
export const expects = {
  words: 'words, in quotes where they hold a colon',
  yesNo: '`true` or `false`',
  count: (most: number) => `a whole number from 1 to ${most}`,
  seconds: 'a number of seconds above 0',
  beats: 'beats a minute, from 10 to 400',
  pattern:
    'one of `as-printed-1883`, `dotted-pairs`, `short-into-long` and `whole-bar`, or `{ every: 1/2, slurs: [3/8-1/2] }`',
  beat: 'a length such as `1/4` or `3/8`',
  tuning: 'four strings from the lowest, such as `GDAE`, or pitches such as `[E5, A4, D4, G3]`',
  language: 'a language tag such as `en` or `en-GB`',
  table: 'names with values under them',
  date: 'a day such as `2026-09-15`',
  id: 'lower-case letters, digits and hyphens',
  labels: "labels such as `a b a' c`, a letter a phrase, a mark `'` for each other form",
  bars: 'bars such as `A5`, `A5-A6`, `A5:2-A6:4` or `B8/2`',
  time: 'a time such as `0:04`, `1:02.5` or `4.5` seconds',
  colour: 'a colour such as `#1f5a50`',
  site: 'an address such as `https://example.org/fiddles/`',
  pdf: `\`none\`, or a list of ${listed(printKinds.map(kind => `\`${kind}\``))}`,
  steps: 'numbers from 1 to 5, such as `[1, 2, 5]`',
} as const;

/** As found in the book, on one line. */
const quoted = (text: string | null): string =>
  `\`${(text ?? '').replace(/\s+/g, ' ').replace(/\p{Cc}/gu, '')}\``;

/** One of `expects`, rather than a value to be written as it stands. */
const isDescription = (text: string): boolean => text.includes('`') || text.split(' ').length > 3;

/** `a`, `b` or `c`, the first dozen of them. */
function either(names: readonly string[]): string {
  const shown = names.slice(0, 12).map(name => (isDescription(name) ? name : quoted(name)));
  const rest = names.length > 12 ? ` and ${names.length - 12} more` : '';
  const last = shown.at(-1) ?? '';
  return shown.length === 1 || rest
    ? `${shown.join(', ')}${rest}`
    : `${shown.slice(0, -1).join(', ')} or ${last}`;
}

const meant = (p: Problem, otherwise: string): string =>
  p.nearest === null ? otherwise : `Did you mean ${quoted(p.nearest)}?`;

/** The names there are to choose from, at the end of a sentence. */
const oneOf = (names: readonly string[]): string =>
  names.length === 0 ? 'this book has none yet' : `it may be ${either(names)}`;

/** What to do about a value that is none of those expected. */
const choose = (p: Problem): string =>
  p.expected.some(isDescription) ? 'Write it in that form' : 'Choose one of these';

const unreadFence: Readonly<Record<FactsOf<'fence-unread'>['why'], string>> = {
  space: 'Take out the space between the name and what follows it.',
  name: 'Write the name straight after the colons, as in `:::private`.',
  rest: 'Only `{…}` may follow the name on its line, with its brackets and quotes closed.',
};

/** Messages about Markdown, front matter and `bowbook.yaml`. */
export const readingMessages = {
  'settings-missing': () => ({
    message: 'This folder has no `bowbook.yaml`, so it is not a book.',
    mend: 'Make a file `bowbook.yaml` with at least a line such as `title: Tuesday tunes`, or name the folder that has one.',
  }),
  'yaml-broken': p => ({
    message: `The settings cannot be read from here on: ${p.actual}.`,
    mend: 'Look for a missing colon, quote or bracket, or an uneven indent, here or on the line above.',
  }),
  'yaml-repeated': p => ({
    message: `${quoted(p.actual)} is given twice.`,
    mend: 'Keep the line that you mean, and take the other out.',
  }),
  'setting-unknown': p => ({
    message: `${quoted(p.actual)} is no name to set${p.facts.under ? ` under ${quoted(p.facts.under)}` : ' here'}; you can set ${either(p.expected)}.`,
    mend: meant(p, 'Take it out, or use one of these names.'),
  }),
  'setting-value': p => ({
    message: `${p.facts.setting ? quoted(p.facts.setting) : 'This'} cannot be ${quoted(p.actual)}; it takes ${either(p.expected)}.`,
    mend: meant(p, `${choose(p)}, or take the line out.`),
  }),
  'setting-missing': p => ({
    message: `${quoted(p.facts.setting)} has no value.`,
    mend: 'Write one, or take the line out.',
  }),
  'front-matter-unclosed': () => ({
    message: 'The front matter begun with `---` is not closed.',
    mend: 'Write a second line of `---` below it.',
  }),
  'rights-twice': () => ({
    message: '`rights` and `permission` are both given.',
    mend: 'Keep `permission` where someone else owns the tune, and `rights` where nobody does or you do.',
  }),
  'lesson-date-missing': () => ({
    message:
      'This lesson has no date, neither as `date:` in its front matter nor at the start of its file name.',
    mend: 'Add a line such as `date: 2026-09-15`, or name the file as in `2026-09-15-first.md`.',
  }),
  'tune-page-empty': () => ({
    message: 'This file in `tunes` has no tune in it.',
    mend: 'Add a fenced `abc` block, or move the file to `pages`.',
  }),
  'file-name-empty': p => ({
    message: `The file name ${quoted(p.actual)} has no letter or digit to make a page's name from.`,
    mend: 'Give it a name in plain words, such as `where-we-meet.md`.',
  }),
  'file-name-repeated': p => ({
    message: `${quoted(p.actual)} and ${quoted(p.facts.other)} come to the same page of the site.`,
    mend: 'Rename one of them, or put both texts into one file.',
  }),

  'file-unread': p => ({
    message: `${quoted(p.actual)} is not read: nothing is looked for there, or under such a name.`,
    mend: meant(
      p,
      'Pages end in `.md` and stand in `lessons`, `tunes` or `pages`; pictures and recordings stand in `media`.',
    ),
  }),

  'fence-stray': p => ({
    message: `${quoted(p.actual)} closes nothing.`,
    mend: 'Take it out, or look above for a block that was closed too early.',
  }),
  'fence-unclosed': p => ({
    message: `The block ${quoted(p.actual)} is never closed.`,
    mend: `Write ${either(p.expected)} on a line of its own where it ends.`,
  }),
  'fence-length': p => ({
    message: `${quoted(p.actual)} does not match the fence of \`:::${p.facts.name}\` on line ${p.facts.opened}; that one is closed by ${either(p.expected)}.`,
    mend: 'Give the closing fence as many colons as the opening one.',
  }),
  'fence-nested': p => ({
    message: `${quoted(p.actual)} stands inside \`:::${p.facts.around}\` (line ${p.facts.opened}) with as many colons or more, so its end would close both.`,
    mend: `Close \`:::${p.facts.around}\` first, or give it more colons than ${p.facts.colons}, at both its ends.`,
  }),
  'fence-indented': p => ({
    message: `The fence ${quoted(p.actual)} does not stand at the start of its line.`,
    mend: 'Move it to the first column, out of any list or quotation; to show it as an example, put it in a code block that begins with ```md.',
  }),
  'fence-unread': p => ({
    message: `${quoted(p.actual)} is not read as a block, and would be printed as prose.`,
    mend: unreadFence[p.facts.why],
  }),
  'fence-in-code': p => ({
    message: `The fence ${quoted(p.actual)} stands in the code block that begins on line ${p.facts.opened}.`,
    mend: 'Close the code block first. If the fence is only an example, begin the code with ```md, outside any other block.',
  }),
  'fence-in-text': p => ({
    message: `${quoted(p.actual)} stands in running text, where it is no fence.`,
    mend: 'Give the fence a line of its own; to print colons, write them as `code`.',
  }),
  'fence-ambiguous': p => ({
    message: `It cannot be told for certain where \`:::${p.facts.name}\` begins and ends (lines ${p.facts.opened} to ${p.facts.closed}).`,
    mend: 'Put empty lines before and after both its fences, and look for HTML, a quotation or a code block that runs into it.',
  }),
  'private-unread': p => ({
    message: `${quoted(p.actual)} looks like a private note, but is not read as one and would be published.`,
    mend: 'Write `:::private` on a line of its own, and `:::` where the note ends.',
  }),
  'code-fence-unclosed': p => ({
    message: 'This code block is never closed.',
    mend: `Write ${p.expected.join('')} on a line of its own where it ends.`,
  }),
  'code-fence-in-code': p => ({
    message: `A code block seems to begin here, inside the one that began on line ${p.facts.opened}.`,
    mend: 'Close the first one; if this is an example, fence the outer block with more signs.',
  }),
  'comment-broken': () => ({
    message: 'A comment is only half hidden here: part of it would be published.',
    mend: 'Use `:::private` for what is not for students, or give the comment a paragraph of its own.',
  }),
  'reference-into-private': p => ({
    message: `${quoted(p.actual)} is explained only inside a private note.`,
    mend: 'Move what it refers to out of the private note.',
  }),
  'defined-in-private': p => ({
    message: `${p.actual === 'abc' ? 'A tune' : quoted(p.actual)} is defined inside a private note, so no page could show it.`,
    mend: 'Move it out of the private note; for an example, begin the code block with ```text.',
  }),

  'block-unknown': p => ({
    message: `There is no block ${quoted(p.actual)}; a block is ${either(p.expected)}.`,
    mend: meant(p, 'Use one of these, or take the colons out.'),
  }),
  'attribute-unknown': p => ({
    message: `${quoted(p.actual)} is no word of ${quoted(p.facts.block)}; it takes ${p.expected.length > 0 ? either(p.expected) : 'none'}.`,
    mend: meant(p, 'Take it out.'),
  }),
  'attribute-repeated': p => ({
    message: `${quoted(p.actual)} is given twice on ${quoted(p.facts.block)}.`,
    mend: 'Keep the one that you mean.',
  }),
  'attribute-empty': p => ({
    message: `${quoted(p.actual)} on ${quoted(p.facts.block)} has no value.`,
    mend: `Write ${quoted(`${p.actual}=…`)}, or take it out.`,
  }),
  'attribute-missing': p => ({
    message:
      p.facts.name === 'id'
        ? `${quoted(p.facts.block)} has no name of its own.`
        : `${quoted(p.facts.block)} has no ${quoted(p.facts.name)}.`,
    mend:
      p.facts.name === 'id'
        ? `Name it, as in ${quoted(`${p.facts.block}{#my-name}`)}; no space before the bracket.`
        : `Write ${quoted(`${p.facts.block}{${p.facts.name}=…}`)}, with no space before the bracket.`,
  }),
  'attribute-value': p => ({
    message: `${quoted(p.facts.name)} of ${quoted(p.facts.block)} cannot be ${quoted(p.actual)}; it takes ${either(p.expected)}.`,
    mend: meant(p, `${choose(p)}.`),
  }),
  'label-missing': p => ({
    message: `${quoted(p.facts.block)} has nothing in brackets after it.`,
    mend:
      p.facts.block === '::clip'
        ? 'Say what the recording is called, as in `::clip[At the quay]{src=media/quay.mp3}`.'
        : 'Write `:stroke[up]`, or `:notes[A (Bc) d]{from=up}`; a bare colon needs a backslash before it.',
  }),
  'label-unwanted': p => ({
    message: `${quoted(p.facts.block)} takes no words in brackets, but has ${quoted(p.actual)}.`,
    mend: 'Move the words into the block, or into the text beside it.',
  }),
  'stroke-unknown': p => ({
    message: `${quoted(p.actual)} is no stroke; a stroke is ${either(p.expected)}.`,
    mend: meant(p, 'Write `:stroke[up]` or `:stroke[down]`.'),
  }),
  'block-in-prose': p => ({
    message: `${quoted(p.actual)} is not read as a block, and would be printed as prose.`,
    mend: 'Give it a line of its own, and put no space before the name or the bracket.',
  }),

  'tune-without-abc': () => ({
    message: 'This tune has no notes, since no code block of ABC stands in it.',
    mend: 'Put its ABC into a code block fenced with ```abc.',
  }),
  'tune-twice': () => ({
    message: 'A second tune stands in one `:::tune`.',
    mend: 'Give each tune a `:::tune` of its own.',
  }),
  'tune-without-id': () => ({
    message: 'This tune has no title to make its name from.',
    mend: 'Add a line `T:` with its title, or put it into `:::tune{#its-name}`.',
  }),
  'abc-meta': p => ({
    message: `${quoted(p.actual)} stands after \`abc\`, where the line should end.`,
    mend: 'To say more about a tune, put its code block into `:::tune{#its-name}` … `:::`.',
  }),
  'abc-file-header': () => ({
    message: 'What stands before the first `X:` is read as part of the first tune only.',
    mend: 'Repeat it in each tune that needs it.',
  }),
  'id-repeated': p => ({
    message: `The name ${quoted(p.actual)} is taken: ${p.facts.file}, line ${p.facts.line}, has it already.`,
    mend: `Choose another name; to show a tune again, write \`::tune{of=${p.actual}}\`.`,
  }),
  'tune-unknown': p => ({
    message: `No tune is called ${quoted(p.actual)}; ${oneOf(p.expected)}.`,
    mend: meant(p, 'Write the name of a tune of this book.'),
  }),
  'anchor-unknown': p => ({
    message: `No anchor is called ${quoted(p.actual)}; ${oneOf(p.expected)}.`,
    mend: meant(p, 'Write the name of an anchor of this book.'),
  }),
  'of-missing': p => ({
    message: `${quoted(p.facts.block)} does not say which tune it is about, and no tune stands above it.`,
    mend: 'Add `of=` and the name of a tune.',
  }),
  'of-unclear': p => ({
    message: `${quoted(p.facts.block)} does not say which tune it is about, and several stand in the code block above it.`,
    mend: `Add \`of=\`: ${either(p.expected)}.`,
  }),

  'drill-anchor': p => ({
    message: `The anchor ${quoted(p.actual)} is of the tune ${either(p.expected)}, but this drill is on ${quoted(p.facts.tune)}.`,
    mend: 'Take `of=` out, or name an anchor of that tune.',
  }),
  'clip-missing': p => ({
    message: `The recording ${quoted(p.actual)} is not in this book.`,
    mend: meant(p, 'Put it into `media` and write `src=media/name.mp3`.'),
  }),
  'clip-elsewhere': p => ({
    message: `${quoted(p.actual)} is not a file of this book, and pages of the book ask no other site for anything.`,
    mend: 'Put the recording into `media`; or write `link=` for a link that the student opens.',
  }),
  'clip-unplayable': p => ({
    message: `${quoted(p.actual)} is not a recording that every browser could try to play.`,
    mend: `Make it one of these: ${p.expected.map(e => `.${e}`).join(' ')}.`,
  }),
  'clip-link': p => ({
    message: `${quoted(p.actual)} is no address to link to; one begins with \`https://\`.`,
    mend: 'Copy the whole address from the browser; one without https can be changed on its way.',
  }),
  'clip-twice': () => ({
    message: '`src` and `link` are both given.',
    mend: 'Keep `src` for a file in `media`, or `link` for a recording that stands elsewhere.',
  }),
  'clip-cued-twice': () => ({
    message: '`at` and `start` with `tempo` are both given.',
    mend: 'Keep `at` where you know when each bar begins, or `start` and `tempo` where the tune goes steadily.',
  }),
  'cue-unread': p => ({
    message: `${quoted(p.actual)} is no cue; a cue is a bar and a time, such as \`A1=0:04\` or \`A1/2=0:21.5\`.`,
    mend: 'Put spaces between cues and none inside; the figure after the stroke says which time through.',
  }),
  'clip-consent': p => ({
    message: `A learner is heard in ${quoted(p.actual)} and no consent is given, so it is not published.`,
    mend: 'Ask first, a parent too where the learner is a child; then write who consented and when: `consent="the learner and a parent, 3 Nov 2026"`. A no is a no. The words are not published.',
  }),
  'set-without-tunes': () => ({
    message: 'This set has no list of tunes, one to a line.',
    mend: 'Write them in order, one a line: `- the-tide-table x3`.',
  }),
  'set-item': () => ({
    message: 'This item of the set is more than a tune and its times through.',
    mend: 'Write one tune a line, `- the-tide-table x3`, and move the rest out of the list.',
  }),
  'set-times': p => ({
    message: `A tune in a set cannot be played ${quoted(p.actual)} times; write a whole number from 1 to ${p.expected.join('')}.`,
    mend: 'Write it as in `x3`.',
  }),
  'colour-faint': p => ({
    message: `The ${p.facts.name} ${quoted(p.actual)} on paper ${quoted(p.facts.paper)} has a contrast of ${p.facts.contrast} to 1, and ${p.facts.least} is the least that can be read, so the colours are left aside.`,
    mend: 'Make the lighter of the two lighter, or the darker one darker.',
  }),
  'picture-missing': p => ({
    message: `The picture ${quoted(p.actual)} is not in this book.`,
    mend: meant(p, 'Put it into `media` and write `picture: media/name.jpg`.'),
  }),

  'footnote-unknown': p => ({
    message: `The footnote ${quoted(p.actual)} is not found, so the sign is printed as it stands.`,
    mend: `Write ${quoted(`${p.actual}:`)} and its words on a line of their own, outside any block.`,
  }),
  'html-dropped': p => ({
    message: `HTML is left out: ${quoted(p.actual)}.`,
    mend: 'Write it in Markdown, or take it out.',
  }),
  'link-unsafe': p => ({
    message: `The link to ${quoted(p.actual)} is left out, because of how it begins.`,
    mend: 'Link to a page of the book, or to an address that begins with `https:`, `mailto:` or `tel:`.',
  }),
  'image-elsewhere': p => ({
    message: `The picture ${quoted(p.actual)} is left out: pages of the book ask no other site for anything.`,
    mend: 'Put the picture into `media` and name it from there.',
  }),
  'link-missing': p => ({
    message: `${quoted(p.actual)} leads to no file of this book.`,
    mend: meant(
      p,
      'Write the path from this file, such as `../tunes/name.md` or `../media/name.jpg`.',
    ),
  }),
  'link-to-unfinished': p => ({
    message: `${quoted(p.actual)} leads to an unfinished page, which is not in the site.`,
    mend: 'Take the link out for now, or take `unfinished: true` out of that page.',
  }),
  'link-to-no-tune': p => ({
    message: `${quoted(p.actual)} has no tune in it, and so no page.`,
    mend: 'Add a tune to that file, or move it to `pages`.',
  }),
} satisfies Partial<Messages>;
