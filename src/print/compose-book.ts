import type { MarkExplained } from '../../shared/words/how-to-read.ts';
import type { Page, SetBlock } from '../read/book.ts';
import { pageMarkup, setMarkup, sheetsAfter } from './block-markup.ts';
import { indexOfOpenings, indexOfTitles } from './book-indexes.ts';
import { drillsChapter } from './compose-drills.ts';
import { call, list, literal, type Markup, words } from './markup.ts';
import { type Press, printable, titleOf, tuneReference, tuneText } from './press.ts';
import type { PrintTune } from './print-input.ts';
import { printedTunes, withheldTunes } from './printed-tunes.ts';
import { sheetMarkup } from './sheet-markup.ts';

/**
 * The tune book: title page, contents, the marks explained, then the lessons, oldest first, each
 * with the sheets of the tunes that it takes up, or the tunes by title; sets, what is withheld, and
 * the indexes.
 */
export function bookBody(press: Press): Markup {
  const inLessons = press.options.order === 'lessons' && press.input.book.lessons.length > 0;
  return [
    titlePage(press),
    call('chapter', ['"contents"', literal(press.words.printWords.contents)]),
    call('the-contents', [inLessons ? '2' : '1']),
    marksChapter(press),
    ...(inLessons ? lessonChapters(press) : [tunesByTitle(press)]),
    setsChapter(press),
    drillsChapter(press),
    withheldChapter(press),
    indexOfTitles(press),
    indexOfOpenings(press),
  ]
    .filter(part => part !== '')
    .join('\n\n');
}

function titlePage(press: Press): Markup {
  const { title, teacher, about } = press.input.book.settings;
  const own = (text: string): string => printable(press, text, 'bowbook.yaml', null);
  const lines = [about, teacher === null ? null : press.words.printWords.writtenBy(teacher)];
  const given = lines.flatMap(l => (l === null ? [] : [literal(own(l))]));
  return call('title-page', [literal(own(title)), list(given)]);
}

/** Each mark with its drawing, in the words of the site's own page. */
function marksChapter(press: Press): Markup {
  const sections = press.words
    .howToRead(press.words.noteNames)
    .map(({ heading, lead, marks }) =>
      [
        call('inner', ['2'], words(heading)),
        words(lead),
        ...marks.map(m => call('mark', [drawingOf(m), literal(m.name), literal(m.text)])),
      ].join('\n\n'),
    );
  return [
    call('chapter', ['"how-to-read"', literal(press.words.printWords.howToRead)]),
    ...sections,
  ].join('\n\n');
}

function drawingOf({ sign }: MarkExplained): Markup {
  if (sign === null) return '[]';
  const isSign = sign === 'down' || sign === 'up' || sign === 'slur';
  return isSign ? `text(size: 1.8em, sign(${literal(sign)}, ""))` : `sample(${literal(sign)})`;
}

function lessonChapters(press: Press): readonly Markup[] {
  const tunes = new Map(printedTunes(press).map(t => [t.block.id, t] as const));
  const left = new Map<string, PrintTune>(tunes);
  const chapters = press.input.book.lessons.toReversed().map(lesson => {
    const own = sheetsAfter(lesson).flatMap(id => left.get(id) ?? []);
    for (const tune of own) left.delete(tune.block.id);
    return [
      lessonText(press, lesson),
      ...own.map(t => sheetMarkup(press, t, { level: 2, step: 1 })),
    ].join('\n\n');
  });
  if (left.size === 0) return chapters;
  const rest = [...left.values()];
  const more = [
    call('chapter', ['"more-tunes"', literal(press.words.printWords.moreTunes)]),
    words(press.words.printWords.moreTunesLead),
    call(
      'list',
      rest.map(t => `[${tuneReference(press, t.block.id)}]`),
    ),
    ...rest.map(t => sheetMarkup(press, t, { level: 2, step: 1 })),
  ];
  return [...chapters, more.join('\n\n')];
}

function lessonText(press: Press, lesson: Page): Markup {
  const title = printable(press, lesson.title, lesson.title, {
    file: lesson.file,
    line: 1,
    column: 1,
  });
  return [
    call('chapter', [literal(`lesson/${lesson.slug}`), literal(title)]),
    lesson.date === null
      ? ''
      : call('quiet', [], words(press.words.dateName(lesson.date, press.words.locale))),
    pageMarkup(press, lesson, 2),
  ].join('\n\n');
}

const tunesByTitle = (press: Press): Markup =>
  [
    call('begin', [literal(press.words.printWords.tunes)]),
    ...printedTunes(press).map(t => sheetMarkup(press, t, { level: 1, step: 1 })),
  ].join('\n\n');

function setsChapter(press: Press): Markup {
  const { lessons, tunePages, pages } = press.input.book;
  const sets = [...lessons.toReversed(), ...tunePages, ...pages]
    .flatMap(p => p.blocks)
    .filter((b): b is SetBlock => b.kind === 'set' && !b.hidden);
  if (sets.length === 0) return '';
  return [
    call('chapter', ['"sets"', literal(press.words.printWords.sets)]),
    words(press.words.printWords.setsLead),
    ...sets.flatMap(set => [
      call('inner', ['2'], words(printable(press, set.title, set.title, set.place))),
      setMarkup(set.tunes, press),
    ]),
  ].join('\n\n');
}

/** Tunes whose rights are not known: their names, and why there is no more. */
function withheldChapter(press: Press): Markup {
  const withheld = withheldTunes(press);
  if (withheld.length === 0) return '';
  return [
    call('chapter', ['"withheld"', literal(press.words.printWords.withheld)]),
    words(press.words.printWords.withheldLead),
    call(
      'list',
      withheld.map(t => `[${words(tuneText(press, t, `${titleOf(t)}. ${t.credits}`))}]`),
    ),
  ].join('\n\n');
}
