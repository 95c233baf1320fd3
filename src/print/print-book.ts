import { type Problem, problem } from '../../shared/problem.ts';
import { bookBody } from './compose-book.ts';
import { drillPlace, paperDrills } from './compose-drills.ts';
import { pocketBody } from './compose-pocket.ts';
import { sheetsBody, sheetsTitle } from './compose-sheets.ts';
import type { Markup } from './markup.ts';
import { type PrintContext, printContext, titleOf } from './print-context.ts';
import { printFonts } from './print-fonts.ts';
import type { PrintInput, PrintOptions } from './print-input.ts';
import { type PageCut, printSource } from './print-source.ts';
import { printedTunes } from './printed-tunes.ts';
import { type Typeset, typeset } from './typeset.ts';

/** A PDF, and what was found amiss in making it. */
export interface Printed extends Typeset {
  readonly problems: readonly Problem[];
}

/**
 * Makes one PDF of a book: the tune book, its sheets or the pocket booklet. The same book, options
 * and version of Bowbook give the same bytes.
 */
export function printBook(input: PrintInput, options: PrintOptions, packageRoot: string): Printed {
  const fonts = printFonts(packageRoot);
  const context = printContext(input, options, fonts, placesOf(input, options));
  const { body, cut } = compose(context);
  const source = printSource(context, cut, body, packageRoot);
  const set = typeset({ source, files: context.files }, fonts);
  const long = set.notes
    .filter(n => n.kind === 'long')
    .map(({ of }) => {
      const tune = input.tunes.get(of);
      const facts = { tune: tune ? titleOf(tune) : of };
      return problem('print-long', tune?.block.place ?? null, { facts });
    });
  return { ...set, problems: [...context.problems, ...long] };
}

/** Labels that links may refer to. Lessons and drills are only in a book in the order of its lessons. */
function placesOf(input: PrintInput, options: PrintOptions): ReadonlySet<string> {
  const tunes = printedTunes({ input, options }).map(t => `tune/${t.block.id}`);
  const withLessons = options.what === 'book' && options.order === 'lessons';
  const drills = withLessons ? paperDrills({ input }).map(d => drillPlace(d.number)) : [];
  return new Set([
    ...tunes,
    ...drills,
    ...(withLessons ? input.book.lessons.map(l => `lesson/${l.slug}`) : []),
  ]);
}

function compose(context: PrintContext): { readonly body: Markup; readonly cut: PageCut } {
  const { title } = context.input.book.settings;
  switch (context.options.what) {
    case 'book':
      return { body: bookBody(context), cut: { title, bound: true, heads: true, imposed: false } };
    case 'sheets':
      return {
        body: sheetsBody(context),
        cut: { title: sheetsTitle(context), bound: false, heads: false, imposed: false },
      };
    case 'pocket':
      return {
        body: pocketBody(context),
        cut: {
          title: context.words.printWords.pocketTitle(title),
          bound: false,
          heads: false,
          imposed: true,
        },
      };
  }
}
