import { at, got } from '../../shared/must.ts';
import { type Place, type Problem, problem } from '../../shared/problem.ts';
import type { Study } from '../../shared/study.ts';
import { type Words, wordsFor } from '../../shared/words/words-for.ts';
import type { DrawnRow, Look } from './draw-row.ts';
import { call, literal, type Markup, mm, named, words } from './markup.ts';
import type { PrintFonts } from './print-fonts.ts';
import type { PrintInput, PrintOptions, PrintTune } from './print-input.ts';
import { margins, papers, type Sizes, sizesFor } from './sizes.ts';

/** What one print is composed with. Composing it adds to `files` and `problems`. */
export interface PrintContext {
  readonly input: PrintInput;
  readonly options: PrintOptions;
  /** Words in the book's language. */
  readonly words: Words;
  readonly sizes: Sizes;
  readonly look: Look;
  readonly fonts: PrintFonts;
  /** Width between the margins in millimetres. */
  readonly width: number;
  /** Pictures, by the path that the source names them by. */
  readonly files: Map<string, string | Buffer>;
  readonly problems: Problem[];
  /** Labels that links may refer to: `tune/wet-rope`. Known before anything is composed. */
  readonly places: ReadonlySet<string>;
}

/** Makes the context of a print from its options. `places`: labels that links may refer to. */
export function printContext(
  input: PrintInput,
  options: PrintOptions,
  fonts: PrintFonts,
  places: ReadonlySet<string>,
): PrintContext {
  const sizes = sizesFor[options.audience];
  const [paperWidth] = papers[options.paper];
  return {
    input,
    options,
    words: printedWords(input),
    sizes,
    look: {
      sizes,
      marks: options.marks,
      fingers: options.fingers ?? sizes.fingers,
      letters: options.letters ?? sizes.letters,
    },
    fonts,
    width: paperWidth - margins.spine - margins.edge,
    files: new Map(),
    problems: [],
    places,
  };
}

/** Words in the language of a print's book. */
export const printedWords = ({ book }: Pick<PrintInput, 'book'>): Words =>
  wordsFor(book.settings.language, book.settings.noteNames);

/** Whether a tune is printed with its notes: its rights are known, and it could be read and drawn. */
export const isPrinted = (
  tune: PrintTune,
): tune is PrintTune & { readonly study: Study; readonly score: NonNullable<PrintTune['score']> } =>
  tune.published && tune.study !== null && tune.score !== null;

/** The title of a tune; its id where its ABC could not be read. */
export const titleOf = (tune: PrintTune): string => tune.study?.tune.title ?? tune.block.id;

/**
 * Returns a text in which each character that no font has is replaced by its number, `U+2603`. Adds a problem
 * for each, once at each place.
 */
export function printable(
  context: PrintContext,
  text: string,
  where: string,
  place: Place | null,
): string {
  if (/^[\x20-\x7e]*$/.test(text)) return text;
  const missing = new Set([...text].filter(c => !context.fonts.has(c)));
  for (const c of missing) {
    const facts = { where };
    const actual = `${c} (${numberOf(c)})`;
    const known = context.problems.some(
      p => p.actual === actual && p.place?.file === place?.file && p.place?.line === place?.line,
    );
    if (!known) context.problems.push(problem('print-character', place, { facts, actual }));
  }
  return missing.size === 0
    ? text
    : [...text].map(c => (missing.has(c) ? `[${numberOf(c)}]` : c)).join('');
}

/** The number of a character as Unicode writes it: `U+2603`. */
const numberOf = (c: string): string =>
  `U+${got(c.codePointAt(0), 'character').toString(16).toUpperCase().padStart(4, '0')}`;

/** A text about a tune, made printable. */
export const tuneText = (context: PrintContext, tune: PrintTune, text: string): string =>
  printable(context, text, titleOf(tune), tune.block.place);

/** Adds the picture of a row to the files, and returns it as an argument of the template's `row`. */
export function rowValue(
  context: PrintContext,
  tune: PrintTune,
  row: DrawnRow,
  alt: string,
): string {
  const texts = [...row.svg.matchAll(/>([^<>]*[^\x20-\x7e<>][^<>]*)</g)].map(m => at(m, 1));
  let { svg } = row;
  for (const text of texts) {
    const printed = tuneText(context, tune, text);
    if (printed !== text) svg = svg.replaceAll(`>${text}<`, `>${printed}<`);
  }
  const path = `row-${context.files.size}.svg`;
  context.files.set(path, svg);
  return `(${[
    named('file', literal(`/${path}`)),
    named('width', mm(row.width)),
    named('height', mm(row.height)),
    named('opens', row.opensPart),
    named('alt', literal(alt)),
  ].join(', ')})`;
}

/** Returns the text of a row for screen readers, from its bars: every note in words. */
export function sayBars(study: Study, words: Words): (bars: readonly number[]) => string {
  const said = new Map(
    words
      .speakTune(study, words.noteNames)
      .flatMap(p => p.bars.map(b => [b.name, b.text] as const)),
  );
  return bars =>
    bars
      .map(b => at(study.tune.bars, b).name)
      .map(name => `${name}. ${said.get(name) ?? ''}`)
      .join(' ');
}

/** Makes a link to a tune with its page number where the tune is in this print; else its title alone. */
export function tuneReference(context: PrintContext, id: string): Markup {
  const tune = context.input.tunes.get(id);
  const title = tune ? tuneText(context, tune, titleOf(tune)) : id;
  const place = `tune/${id}`;
  if (!context.places.has(place)) return words(title);
  return `${call('see', [literal(place)], words(title))}, ${call('page-of', [literal(place)])}`;
}
