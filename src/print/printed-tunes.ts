import { isPrinted, type Press, titleOf } from './press.ts';
import type { PrintTune } from './print-input.ts';

/** A title as an index has it: a leading article left out. */
export const sortKey = (title: string): string => title.replace(/^(?:the|an?)\s+/i, '');

/** By title, the same in every run and on every machine; equal titles by id. */
export const byTitle = (tunes: readonly PrintTune[]): readonly PrintTune[] =>
  tunes.toSorted(
    (a, b) =>
      sortKey(titleOf(a)).localeCompare(sortKey(titleOf(b)), 'en') ||
      (a.block.id < b.block.id ? -1 : 1),
  );

/** The tunes that this print holds, by title: those whose rights are known, and not hidden ones. */
export function printedTunes({
  input,
  options,
}: Pick<Press, 'input' | 'options'>): readonly (PrintTune & {
  readonly study: NonNullable<PrintTune['study']>;
  readonly score: NonNullable<PrintTune['score']>;
})[] {
  const shown = publicTunes([...input.tunes.values()]).filter(isPrinted);
  const asked = options.only;
  return (byTitle(shown) as typeof shown).filter(t => asked === null || t.block.id === asked);
}

/** Tunes that the book names but may not print. */
export const withheldTunes = ({ input }: Pick<Press, 'input'>): readonly PrintTune[] =>
  byTitle(publicTunes([...input.tunes.values()]).filter(t => !t.published));

/** What stands in a private note is never told of on paper. */
export const publicTunes = (tunes: readonly PrintTune[]): readonly PrintTune[] =>
  tunes.filter(t => !t.block.hidden);
