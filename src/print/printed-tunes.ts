import type { Words } from '../../shared/words/words-for.ts';
import { isPrinted, type PrintContext, printedWords, titleOf } from './print-context.ts';
import type { PrintTune } from './print-input.ts';

/** By title, the same in every run and on every machine; equal titles by id. */
export function byTitle(
  tunes: readonly PrintTune[],
  { sortedAs, locale }: Words,
): readonly PrintTune[] {
  const { compare } = new Intl.Collator(locale);
  return tunes.toSorted(
    (a, b) =>
      compare(sortedAs(titleOf(a)), sortedAs(titleOf(b))) || (a.block.id < b.block.id ? -1 : 1),
  );
}

/** The tunes that this print holds, by title: those whose rights are known, and not hidden ones. */
export function printedTunes({
  input,
  options,
}: Pick<PrintContext, 'input' | 'options'>): readonly (PrintTune & {
  readonly study: NonNullable<PrintTune['study']>;
  readonly score: NonNullable<PrintTune['score']>;
})[] {
  const shown = publicTunes([...input.tunes.values()]).filter(isPrinted);
  const asked = options.only;
  return (byTitle(shown, printedWords(input)) as typeof shown).filter(
    t => asked === null || t.block.id === asked,
  );
}

/** Tunes that the book names but may not print. */
export const withheldTunes = ({ input }: Pick<PrintContext, 'input'>): readonly PrintTune[] =>
  byTitle(
    publicTunes([...input.tunes.values()]).filter(t => !t.published),
    printedWords(input),
  );

/** What stands in a private note is never told of on paper. */
export const publicTunes = (tunes: readonly PrintTune[]): readonly PrintTune[] =>
  tunes.filter(t => !t.block.hidden);
