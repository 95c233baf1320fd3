import { type Markup, words } from './markup.ts';
import type { Press } from './press.ts';
import { printedTunes } from './printed-tunes.ts';
import { sheetMarkup } from './sheet-markup.ts';

/** Every tune on a sheet of its own, by title, in each of the fading steps asked for. */
export function sheetsBody(press: Press): Markup {
  const { steps } = press.options;
  if (printedTunes(press).length === 0) return words(press.words.printWords.noTunes);
  return printedTunes(press)
    .flatMap(tune => steps.map(step => sheetMarkup(press, tune, { level: 1, step })))
    .join('');
}

export const sheetsTitle = (press: Press): string => {
  const { book } = press.input;
  const [only] = press.options.only === null ? [] : printedTunes(press);
  return only?.study?.tune.title ?? press.words.printWords.sheetsTitle(book.settings.title);
};
