import type { Words } from '../../shared/words/words-for.ts';
import { isPrinted, type PrintContext, printedWords, titleOf } from './print-context.ts';
import type { PrintTune } from './print-input.ts';

/** Sorts tunes by title, without a leading article; equal titles by id, so that every run has the same order. */
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

/** The tunes that the print contains, by title. See `isPrinted`; tunes in private notes are left out. */
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

/** The tunes that are named but not printed, since their rights are not known; by title. */
export const withheldTunes = ({ input }: Pick<PrintContext, 'input'>): readonly PrintTune[] =>
  byTitle(
    publicTunes([...input.tunes.values()]).filter(t => !t.published),
    printedWords(input),
  );

/** Leaves out tunes that are defined in private notes: no print mentions them. */
export const publicTunes = (tunes: readonly PrintTune[]): readonly PrintTune[] =>
  tunes.filter(t => !t.block.hidden);
