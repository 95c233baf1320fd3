import { type Markup, words } from './markup.ts';
import type { PrintContext } from './print-context.ts';
import { printedTunes } from './printed-tunes.ts';
import { sheetMarkup } from './sheet-markup.ts';

/** Composes the sheets of all tunes, by title, each in the fading steps of the options. */
export function sheetsBody(context: PrintContext): Markup {
  const { steps } = context.options;
  if (printedTunes(context).length === 0) return words(context.words.printWords.noTunes);
  return printedTunes(context)
    .flatMap(tune => steps.map(step => sheetMarkup(context, tune, { level: 1, step })))
    .join('');
}

/** Title of a print of sheets: that of its tune where it has only one, else that of the book. */
export const sheetsTitle = (context: PrintContext): string => {
  const { book } = context.input;
  const [only] = context.options.only === null ? [] : printedTunes(context);
  return only?.study?.tune.title ?? context.words.printWords.sheetsTitle(book.settings.title);
};
