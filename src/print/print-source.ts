import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { list, literal, type Markup, mm, named } from './markup.ts';
import { type PrintContext, printable } from './print-context.ts';
import { margins, papers } from './sizes.ts';

/** Form of the pages of a print. */
export interface PageCut {
  readonly title: string;
  /** A book with a spine: margins mirrored, and two-page tunes on pages that face each other. */
  readonly bound: boolean;
  readonly heads: boolean;
  /** Pages are imposed on the whole sheet, which then has no margins of its own. */
  readonly imposed: boolean;
}

const noMargins = { spine: 0, edge: 0, top: 0, bottom: 0 };

/** Writes the source of a print: its measures and words, the template, then the composed body. */
export function printSource(
  context: PrintContext,
  cut: PageCut,
  body: Markup,
  packageRoot: string,
): Markup {
  const { book } = context.input;
  const { sizes, fonts } = context;
  const [width, height] = papers[context.options.paper];
  const [lang = 'en', region] = book.settings.language.split('-');
  const own = (text: string): string => printable(context, text, 'bowbook.yaml', null);
  const author = book.settings.teacher;
  const given: readonly (readonly [string, readonly string[]])[] = [
    [
      'book',
      [
        named('title', literal(own(cut.title))),
        named('author', author === null ? '()' : list([literal(own(author))])),
        named('lang', literal(lang.toLowerCase())),
        named('region', region?.length === 2 ? literal(region.toLowerCase()) : 'none'),
      ],
    ],
    [
      'paper',
      [
        named('width', mm(width)),
        named('height', mm(height)),
        ...Object.entries(cut.imposed ? noMargins : margins).map(([side, m]) => named(side, mm(m))),
        named('bound', cut.bound),
        named('heads', cut.heads),
      ],
    ],
    [
      'size',
      [
        named('text', `${sizes.text}pt`),
        named('small', `${sizes.small}pt`),
        named('pocket', `${sizes.pocket.text}pt`),
      ],
    ],
    [
      'faces',
      [
        named('reading', list(fonts.reading.map(literal))),
        named('plain', list(fonts.plain.map(literal))),
      ],
    ],
    [
      'say',
      [
        named('page', literal(context.words.printWords.page)),
        named('down', literal(context.words.siteWords.down)),
        named('up', literal(context.words.siteWords.up)),
      ],
    ],
  ];
  const measures = given.map(([name, fields]) => `#let ${name} = (${fields.join(', ')})`);
  const template = readFileSync(join(packageRoot, 'templates', 'print', 'print.typ'), 'utf8');
  return [...measures, `#let plain = ${sizes.plain}`, template, '#show: print', body].join('\n');
}
