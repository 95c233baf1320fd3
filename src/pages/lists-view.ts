import { asIfStandard } from '../../shared/fingering/as-if-standard.ts';
import { retuned } from '../../shared/fingering/tunings.ts';
import type { Pitch } from '../../shared/music/pitch.ts';
import { got } from '../../shared/must.ts';
import { printPaths } from '../../shared/print-kinds.ts';
import type { SearchEntry } from '../../shared/search/search-entry.ts';
import { siteZipPath } from '../../shared/site-zip-path.ts';
import type { Study } from '../../shared/study.ts';
import { scriptFile } from '../../shared/words/script-file.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { Page } from '../read/book.ts';
import type { BuiltTune } from './built-tune.ts';
import { type FinderView, finderView } from './finder-view.ts';
import { type LessonLink, lessonLink } from './lesson-link.ts';
import { formOf, openingLetters } from './map-view.ts';
import { openingFileOf } from './openings.ts';
import { type PageContext, tunePath } from './page-context.ts';
import type { SiteInput } from './site.ts';
import type { TuneCard } from './tune-card.ts';

/** A name and its value, such as key and `G major`. */
export interface FactView {
  readonly name: string;
  readonly value: string;
}

/** A link to the page of a tune. */
export interface TuneLink {
  readonly href: string;
  readonly title: string;
  /** `reel in G major`; empty where the tune could not be read. */
  readonly kind: string;
}

/** The title of a tune; its id where its ABC could not be read. */
export const titleOf = (tune: BuiltTune): string => tune.study?.tune.title ?? tune.block.id;

/** `reel in G major`, in the book's language. */
export function tuneKind(study: Study, { keyName, kindName, typeName, noteNames }: Words): string {
  const { type, rhythm, key } = study.tune;
  const name = type === null ? rhythm : typeName[type];
  return kindName(name, keyName(key, noteNames));
}

/** Fields of a link to the page of a tune; `root` leads from the linking page to the site's root. */
export const tuneLink = ({ id, title, kind }: TuneCard, root: string): TuneLink => ({
  href: root + tunePath(id),
  title,
  kind,
});

/**
 * Lists the type, key, metre and form of a tune, with `shown` its opening notes, and its tuning where that is not
 * the standard one. Empty where the tune could not be read.
 */
export function tuneFacts(tune: BuiltTune, shown: boolean, words: Words): readonly FactView[] {
  const { siteWords, keyName, typeName, noteNames } = words;
  const { study } = tune;
  if (study === null) return [];
  const { type, rhythm, key, meter, events } = study.tune;
  const kind = type === null ? rhythm : typeName[type];
  return [
    ...(kind === null ? [] : [{ name: siteWords.type, value: kind }]),
    { name: siteWords.key, value: keyName(key, noteNames) },
    ...(meter.free ? [] : [{ name: siteWords.metre, value: `${meter.beats}/${meter.unit}` }]),
    { name: siteWords.form, value: formOf(study) },
    ...(shown
      ? [{ name: siteWords.opening, value: openingLetters(study, 0, events.length, 7, noteNames) }]
      : []),
    ...(retuned(study.tuning).length > 0 ? tuningFacts(study, shown, words) : []),
  ];
}

/** The tuning and, with `shown`, the opening as its fingers would sound in standard tuning. */
function tuningFacts(
  study: Study,
  shown: boolean,
  { siteWords, spokenPitch, noteNames }: Words,
): readonly FactView[] {
  const said = (p: Pitch): string => spokenPitch(p, noteNames);
  const asIf = study.tune.events
    .flatMap((e, i) => {
      const top = e.kind === 'note' ? e.pitches.at(-1) : undefined;
      const stop = study.fingering[i]?.at(-1);
      return top ? [said(stop ? asIfStandard(top, stop, study.tuning) : top)] : [];
    })
    .slice(0, 7);
  const strings = study.tuning.toReversed().map(said).join(' ');
  return [
    { name: siteWords.tuning, value: siteWords.tunedTo(strings) },
    ...(shown ? [{ name: siteWords.asIfOpening, value: asIf.join(', ') }] : []),
  ];
}

/** Fields of the front page: the newest lesson with its tunes, and the lessons before it. */
export interface FrontView {
  readonly title: string;
  readonly taughtBy: string | null;
  readonly about: string | null;
  /** Path of the book's picture from the front page; null for none. */
  readonly picture: string | null;
  readonly newest:
    | (LessonLink & {
        readonly tunes: readonly TuneLink[];
        /** Link to the player of the first of its tunes that may be heard; null where there is none. */
        readonly hear: string | null;
      })
    | null;
  readonly earlier: readonly LessonLink[];
  readonly moreLessons: boolean;
  readonly tunes: readonly TuneLink[];
  /** Heading over the links to the PDF files. */
  readonly forPaper: string;
  readonly prints: readonly { readonly href: string; readonly name: string }[];
  /** Link to the zip of the site; null in a private copy, which has none. */
  readonly wholeSite: string | null;
}

/** Earlier lessons that the front page lists; the rest stand on a page of their own. */
const onFront = 6;

/** Makes the data of the front page: newest lesson, earlier ones, tunes and downloads. */
export function frontView(context: PageContext): FrontView {
  const { book, cards } = context.input;
  const { siteWords, printWords } = context.words;
  const [first, ...rest] = book.lessons;
  const idsOn = ({ file }: Page): readonly string[] =>
    got(context.references.tunesOf.get(file), `list of tunes of ${file}`);
  const tunesOf = (page: Page): readonly TuneLink[] =>
    idsOn(page).flatMap(id => {
      const card = cards.get(id);
      return card ? [tuneLink(card, context.root)] : [];
    });
  return {
    title: book.settings.title,
    taughtBy: book.settings.teacher === null ? null : siteWords.taughtBy(book.settings.teacher),
    about: book.settings.about,
    picture: book.settings.theme?.picture ?? null,
    newest: first
      ? {
          ...lessonLink(first, context),
          tunes: tunesOf(first),
          hear: hearIn(idsOn(first), context),
        }
      : null,
    earlier: rest.slice(0, onFront).map(l => lessonLink(l, context)),
    moreLessons: rest.length > onFront,
    tunes: byTitle([...cards.values()], context.words).map(t => tuneLink(t, context.root)),
    forPaper: printWords.forPaper,
    prints: printLinks(context),
    wholeSite: context.input.isPrivate ? null : context.root + siteZipPath,
  };
}

const printLinks = ({ input, root, words }: PageContext): FrontView['prints'] =>
  input.book.settings.print.map(kind => ({
    href: root + printPaths[kind],
    name: words.printWords.download[kind],
  }));

/** Link to the player of the first of some tunes whose notes may be shown; null where there is none. */
function hearIn(ids: readonly string[], { input, root }: PageContext): string | null {
  const heard = ids.find(id => input.cards.get(id)?.search.letters);
  return heard === undefined ? null : `${root}${tunePath(heard)}#notation`;
}

/** Fields of the list of all tunes, with the finder. */
export interface RepertoireView {
  readonly title: string;
  readonly finder: FinderView;
  /** File of the script that makes the finder work. */
  readonly script: string;
  readonly tunes: readonly (TuneLink & {
    readonly id: string;
    /** File with the drawing of its opening. */
    readonly openings: string;
    readonly aliases: string | null;
    readonly facts: readonly FactView[];
  })[];
}

/** Data of the page that lists every tune, by title. */
export function repertoireView(context: PageContext): RepertoireView {
  const { cards, book } = context.input;
  const openings = openingFileOf([...cards.keys()]);
  return {
    title: context.words.siteWords.tunes,
    script: `${scriptFile('search', book.settings.language)}.js`,
    finder: finderView(
      searchEntries(context.input, context.words),
      book.settings.tuning,
      context.words,
    ),
    tunes: byTitle([...cards.values()], context.words).map(card => ({
      ...tuneLink(card, context.root),
      id: card.id,
      openings: got(openings.get(card.id), `file of the opening of ${card.id}`),
      aliases: card.aliases,
      facts: card.facts,
    })),
  };
}

/** The search entries of all tunes, by title. */
export const searchEntries = (
  input: Pick<SiteInput, 'cards'>,
  words: Words,
): readonly SearchEntry[] => byTitle([...input.cards.values()], words).map(card => card.search);

/** The other titles of a tune, commas between them; null where it has none. */
export const aliasesOf = (tune: BuiltTune): string | null =>
  tune.study?.tune.aliases.length ? tune.study.tune.aliases.join(', ') : null;

/** Sorts tunes by title, without a leading article, as indexes do. */
function byTitle(tunes: readonly TuneCard[], { sortedAs, locale }: Words): readonly TuneCard[] {
  const { compare } = new Intl.Collator(locale);
  const filed = tunes.map(tune => ({ tune, as: sortedAs(tune.title) }));
  return filed.sort((a, b) => compare(a.as, b.as)).map(({ tune }) => tune);
}
