import { at } from '../../shared/must.ts';
import { imposePages } from './impose-pages.ts';
import { call, list, literal, type Markup, named } from './markup.ts';
import { type Opening, openings } from './openings.ts';
import { type PrintContext, printable } from './print-context.ts';
import { papers } from './sizes.ts';

/** Margin of a small page in millimetres; the same as in the template. */
const inset = 7;
const gap = 2.5;
const millimetresAPoint = 25.4 / 72;

/**
 * Composes the pocket booklet: the first bars of every tune by title, four small pages to a side of paper, in
 * the order of `imposePages`.
 */
export function pocketBody(context: PrintContext): Markup {
  const { staff, text } = context.sizes.pocket;
  const [width, height] = papers[context.options.paper].map(side => side / 2) as [number, number];
  const room = height - 2 * inset - text * millimetresAPoint * 1.6;
  const line = text * millimetresAPoint * 1.5;
  const found = openings(context, staff, width - 2 * inset);
  const filled = fillPages(found, o => line + o.height + gap, room);
  const { title, teacher } = context.input.book.settings;
  const own = (words: string): string => printable(context, words, 'bowbook.yaml', null);
  const cover = call('pocket-cover', [
    literal(own(title)),
    literal(own(teacher === null ? '' : context.words.printWords.writtenBy(teacher))),
    literal(context.words.printWords.pocketHow),
    literal(context.words.printWords.care),
  ]);
  const pages = [
    `[${cover}]`,
    ...filled.map(
      (page, i) => `[${call('pocket-page', [`${i + 2}`, list(page.map(openingValue))])}]`,
    ),
  ];
  const sides = imposePages(pages.length).map(side =>
    call(
      'pocket-side',
      side.map(page => (page === null ? '[]' : at(pages, page))),
    ),
  );
  return sides.join('\n\n');
}

const openingValue = ({ row, title }: Opening): string =>
  `(${named('title', literal(title))}, ${named('row', row)})`;

/** Distributes items over pages in order, as many to each as fit, and at least one. */
function fillPages<T>(items: readonly T[], height: (item: T) => number, room: number): T[][] {
  const pages: T[][] = [];
  let left = 0;
  for (const item of items) {
    const last = pages.at(-1);
    if (last && height(item) <= left) last.push(item);
    else {
      pages.push([item]);
      left = room;
    }
    left -= height(item);
  }
  return pages;
}
