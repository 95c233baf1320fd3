import { call, literal, type Markup, words } from './markup.ts';
import { openings } from './openings.ts';
import { type PrintContext, titleOf, tuneText } from './print-context.ts';
import { printedTunes } from './printed-tunes.ts';

/** Makes the index of titles and other names, in two columns, with the pages of the sheets. */
export function indexOfTitles(context: PrintContext): Markup {
  const { sortedAs, locale } = context.words;
  const entries = printedTunes(context).flatMap(tune => {
    const title = titleOf(tune);
    const to = `tune/${tune.block.id}`;
    const other = tune.study.tune.aliases.map(alias => ({
      key: sortedAs(alias),
      text: tuneText(context, tune, context.words.printWords.otherName(alias, title)),
      to,
    }));
    return [{ key: sortedAs(title), text: tuneText(context, tune, title), to }, ...other];
  });
  if (entries.length === 0) return '';
  const { compare } = new Intl.Collator(locale);
  const sorted = entries.toSorted((a, b) => compare(a.key, b.key));
  const lines = sorted.map(e => call('index-line', [literal(e.to), literal(e.text)]));
  const columns = context.sizes.phraseALine && context.sizes.text > 15 ? 1 : 2;
  return [
    call('chapter', ['"titles"', literal(context.words.printWords.titles)]),
    call('columns', [`${columns}`], lines.join('\n')),
  ].join('\n\n');
}

/** Size of the staff, as a share of that of the sheets. */
const openingScale = { adults: 0.6, children: 0.7, large: 0.75 } as const;

/** Makes the index of openings: the first bars of every tune in small notation. */
export function indexOfOpenings(context: PrintContext): Markup {
  const columns = context.sizes.text > 15 ? 1 : 2;
  const staff = context.sizes.staff * openingScale[context.options.audience];
  const rows = openings(context, staff, context.width / columns - 4);
  if (rows.length === 0) return '';
  return [
    call('chapter', ['"openings"', literal(context.words.printWords.openings)]),
    words(context.words.printWords.openingsLead),
    call(
      'columns',
      [`${columns}`],
      rows.map(r => call('opening', [r.row, literal(r.to), literal(r.title)])).join('\n'),
    ),
  ].join('\n\n');
}
