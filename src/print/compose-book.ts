import type { MarkExplained } from '../../shared/words/how-to-read.ts';
import type { Page, SetBlock } from '../read/book.ts';
import { pageMarkup, setMarkup, sheetsAfter } from './block-markup.ts';
import { indexOfOpenings, indexOfTitles } from './book-indexes.ts';
import { drillsChapter } from './compose-drills.ts';
import { call, list, literal, type Markup, words } from './markup.ts';
import { type PrintContext, printable, titleOf, tuneReference, tuneText } from './print-context.ts';
import type { PrintTune } from './print-input.ts';
import { printedTunes, withheldTunes } from './printed-tunes.ts';
import { sheetMarkup } from './sheet-markup.ts';

/**
 * Composes the tune book: title page, contents, explanations of the marks, then the lessons, oldest first, each
 * with the sheets of its tunes, or the tunes by title; sets, withheld tunes, and indexes.
 */
export function bookBody(context: PrintContext): Markup {
  const inLessons = context.options.order === 'lessons' && context.input.book.lessons.length > 0;
  return [
    titlePage(context),
    call('chapter', ['"contents"', literal(context.words.printWords.contents)]),
    call('the-contents', [inLessons ? '2' : '1']),
    marksChapter(context),
    ...(inLessons ? lessonChapters(context) : [tunesByTitle(context)]),
    setsChapter(context),
    drillsChapter(context),
    withheldChapter(context),
    indexOfTitles(context),
    indexOfOpenings(context),
  ]
    .filter(part => part !== '')
    .join('\n\n');
}

function titlePage(context: PrintContext): Markup {
  const { title, teacher, about } = context.input.book.settings;
  const own = (text: string): string => printable(context, text, 'bowbook.yaml', null);
  const lines = [about, teacher === null ? null : context.words.printWords.writtenBy(teacher)];
  const given = lines.flatMap(l => (l === null ? [] : [literal(own(l))]));
  return call('title-page', [literal(own(title)), list(given)]);
}

/** Explains the marks, with their drawings, in the words of the page of the site. */
function marksChapter(context: PrintContext): Markup {
  const sections = context.words
    .howToRead(context.words.noteNames)
    .map(({ heading, lead, marks }) =>
      [
        call('inner', ['2'], words(heading)),
        words(lead),
        ...marks.map(m => call('mark', [drawingOf(m), literal(m.name), literal(m.text)])),
      ].join('\n\n'),
    );
  return [
    call('chapter', ['"how-to-read"', literal(context.words.printWords.howToRead)]),
    ...sections,
  ].join('\n\n');
}

function drawingOf({ sign }: MarkExplained): Markup {
  if (sign === null) return '[]';
  const isSign = sign === 'down' || sign === 'up' || sign === 'slur';
  return isSign ? `text(size: 1.8em, sign(${literal(sign)}, ""))` : `sample(${literal(sign)})`;
}

function lessonChapters(context: PrintContext): readonly Markup[] {
  const tunes = new Map(printedTunes(context).map(t => [t.block.id, t] as const));
  const left = new Map<string, PrintTune>(tunes);
  const chapters = context.input.book.lessons.toReversed().map(lesson => {
    const own = sheetsAfter(lesson).flatMap(id => left.get(id) ?? []);
    for (const tune of own) left.delete(tune.block.id);
    return [
      lessonText(context, lesson),
      ...own.map(t => sheetMarkup(context, t, { level: 2, step: 1 })),
    ].join('\n\n');
  });
  if (left.size === 0) return chapters;
  const rest = [...left.values()];
  const more = [
    call('chapter', ['"more-tunes"', literal(context.words.printWords.moreTunes)]),
    words(context.words.printWords.moreTunesLead),
    call(
      'list',
      rest.map(t => `[${tuneReference(context, t.block.id)}]`),
    ),
    ...rest.map(t => sheetMarkup(context, t, { level: 2, step: 1 })),
  ];
  return [...chapters, more.join('\n\n')];
}

function lessonText(context: PrintContext, lesson: Page): Markup {
  const title = printable(context, lesson.title, lesson.title, {
    file: lesson.file,
    line: 1,
    column: 1,
  });
  return [
    call('chapter', [literal(`lesson/${lesson.slug}`), literal(title)]),
    lesson.date === null
      ? ''
      : call('quiet', [], words(context.words.dateName(lesson.date, context.words.locale))),
    pageMarkup(context, lesson, 2),
  ].join('\n\n');
}

const tunesByTitle = (context: PrintContext): Markup =>
  [
    call('begin', [literal(context.words.printWords.tunes)]),
    ...printedTunes(context).map(t => sheetMarkup(context, t, { level: 1, step: 1 })),
  ].join('\n\n');

function setsChapter(context: PrintContext): Markup {
  const { lessons, tunePages, pages } = context.input.book;
  const sets = [...lessons.toReversed(), ...tunePages, ...pages]
    .flatMap(p => p.blocks)
    .filter((b): b is SetBlock => b.kind === 'set' && !b.hidden);
  if (sets.length === 0) return '';
  return [
    call('chapter', ['"sets"', literal(context.words.printWords.sets)]),
    words(context.words.printWords.setsLead),
    ...sets.flatMap(set => [
      call('inner', ['2'], words(printable(context, set.title, set.title, set.place))),
      setMarkup(set.tunes, context),
    ]),
  ].join('\n\n');
}

/** Names the tunes whose rights are not known, and says why they are not printed. */
function withheldChapter(context: PrintContext): Markup {
  const withheld = withheldTunes(context);
  if (withheld.length === 0) return '';
  return [
    call('chapter', ['"withheld"', literal(context.words.printWords.withheld)]),
    words(context.words.printWords.withheldLead),
    call(
      'list',
      withheld.map(t => `[${words(tuneText(context, t, `${titleOf(t)}. ${t.credits}`))}]`),
    ),
  ].join('\n\n');
}
