import { call, literal, type Markup, words } from './markup.ts';
import { openings } from './openings.ts';
import { type Press, titleOf, tuneText } from './press.ts';
import { printedTunes } from './printed-tunes.ts';

/** Titles and other names of the tunes, in two columns, with the pages of their sheets. */
export function indexOfTitles(press: Press): Markup {
  const { sortedAs, locale } = press.words;
  const entries = printedTunes(press).flatMap(tune => {
    const title = titleOf(tune);
    const to = `tune/${tune.block.id}`;
    const other = tune.study.tune.aliases.map(alias => ({
      key: sortedAs(alias),
      text: tuneText(press, tune, press.words.printWords.otherName(alias, title)),
      to,
    }));
    return [{ key: sortedAs(title), text: tuneText(press, tune, title), to }, ...other];
  });
  if (entries.length === 0) return '';
  const { compare } = new Intl.Collator(locale);
  const sorted = entries.toSorted((a, b) => compare(a.key, b.key));
  const lines = sorted.map(e => call('index-line', [literal(e.to), literal(e.text)]));
  const columns = press.sizes.phraseALine && press.sizes.text > 15 ? 1 : 2;
  return [
    call('chapter', ['"titles"', literal(press.words.printWords.titles)]),
    call('columns', [`${columns}`], lines.join('\n')),
  ].join('\n\n');
}

/** Of the staff of the sheets. */
const openingScale = { adults: 0.6, children: 0.7, large: 0.75 } as const;

/** The first bars of every tune in small notation. */
export function indexOfOpenings(press: Press): Markup {
  const columns = press.sizes.text > 15 ? 1 : 2;
  const staff = press.sizes.staff * openingScale[press.options.audience];
  const rows = openings(press, staff, press.width / columns - 4);
  if (rows.length === 0) return '';
  return [
    call('chapter', ['"openings"', literal(press.words.printWords.openings)]),
    words(press.words.printWords.openingsLead),
    call(
      'columns',
      [`${columns}`],
      rows.map(r => call('opening', [r.row, literal(r.to), literal(r.title)])).join('\n'),
    ),
  ].join('\n\n');
}
