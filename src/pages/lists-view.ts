import { asIfStandard } from '../../shared/fingering/as-if-standard.ts';
import { retuned } from '../../shared/fingering/tunings.ts';
import type { Study } from '../../shared/study.ts';
import { keyName, siteWords, typeName } from '../../shared/words/en/site.ts';
import { spokenPitch } from '../../shared/words/en/spoken.ts';
import type { Page } from '../read/book.ts';
import type { BuiltTune } from './built-tune.ts';
import { type LessonLink, lessonLink } from './lesson-view.ts';
import { formOf, openingLetters } from './map-view.ts';
import { mayShow, type PageContext, tunePath } from './page-context.ts';

export interface FactView {
  readonly name: string;
  readonly value: string;
}

export interface TuneLink {
  readonly href: string;
  readonly title: string;
  /** `reel in G major`; empty where the tune could not be read. */
  readonly kind: string;
}

export const titleOf = (tune: BuiltTune): string => tune.study?.tune.title ?? tune.block.id;

export function tuneKind(study: Study): string {
  const { type, rhythm, key } = study.tune;
  const name = type === null ? rhythm : typeName[type];
  return name === null ? keyName(key) : `${name} in ${keyName(key)}`;
}

export const tuneLink = (tune: BuiltTune, root: string): TuneLink => ({
  href: root + tunePath(tune.block.id),
  title: titleOf(tune),
  kind: tune.study === null ? '' : tuneKind(tune.study),
});

/** Type, key, metre and form, and the opening notes unless they are withheld. */
export function tuneFacts(tune: BuiltTune, context: PageContext): readonly FactView[] {
  const { study } = tune;
  if (study === null) return [];
  const { type, rhythm, key, meter, events } = study.tune;
  const shown = mayShow(tune, context.input);
  const kind = type === null ? rhythm : typeName[type];
  return [
    ...(kind === null ? [] : [{ name: siteWords.type, value: kind }]),
    { name: siteWords.key, value: keyName(key) },
    ...(meter.free ? [] : [{ name: siteWords.metre, value: `${meter.beats}/${meter.unit}` }]),
    { name: siteWords.form, value: formOf(study) },
    ...(shown
      ? [{ name: siteWords.opening, value: openingLetters(study, 0, events.length, 7) }]
      : []),
    ...(retuned(study.tuning).length > 0 ? tuningFacts(study, shown) : []),
  ];
}

/** How the strings are tuned, what the letters mean then, and the opening as the hand would call it. */
function tuningFacts(study: Study, shown: boolean): readonly FactView[] {
  const asIf = study.tune.events
    .flatMap((e, i) => {
      const top = e.kind === 'note' ? e.pitches.at(-1) : undefined;
      const stop = study.fingering[i]?.at(-1);
      return top
        ? [stop ? spokenPitch(asIfStandard(top, stop, study.tuning)) : spokenPitch(top)]
        : [];
    })
    .slice(0, 7);
  const strings = study.tuning.toReversed().map(spokenPitch).join(' ');
  return [
    { name: siteWords.tuning, value: siteWords.tunedTo(strings) },
    ...(shown ? [{ name: siteWords.asIfOpening, value: asIf.join(', ') }] : []),
  ];
}

export interface FrontView {
  readonly title: string;
  readonly taughtBy: string | null;
  readonly about: string | null;
  readonly newest: (LessonLink & { readonly tunes: readonly TuneLink[] }) | null;
  readonly earlier: readonly LessonLink[];
  readonly moreLessons: boolean;
  readonly tunes: readonly TuneLink[];
}

/** Earlier lessons that the front page lists; the rest stand on a page of their own. */
const onFront = 6;

export function frontView(context: PageContext): FrontView {
  const { book, tunes } = context.input;
  const [first, ...rest] = book.lessons;
  const tunesOf = (page: Page): readonly TuneLink[] =>
    (context.index.tunesOf.get(page) ?? []).flatMap(id => {
      const tune = tunes.get(id);
      return tune ? [tuneLink(tune, context.root)] : [];
    });
  return {
    title: book.settings.title,
    taughtBy: book.settings.teacher === null ? null : siteWords.taughtBy(book.settings.teacher),
    about: book.settings.about,
    newest: first ? { ...lessonLink(first, context.root), tunes: tunesOf(first) } : null,
    earlier: rest.slice(0, onFront).map(l => lessonLink(l, context.root)),
    moreLessons: rest.length > onFront,
    tunes: byTitle([...tunes.values()]).map(t => tuneLink(t, context.root)),
  };
}

export interface RepertoireView {
  readonly title: string;
  readonly tunes: readonly (TuneLink & {
    readonly aliases: string | null;
    readonly facts: readonly FactView[];
  })[];
}

/** What we play: every tune, by title. */
export const repertoireView = (context: PageContext): RepertoireView => ({
  title: siteWords.tunes,
  tunes: byTitle([...context.input.tunes.values()]).map(tune => ({
    ...tuneLink(tune, context.root),
    aliases: aliasesOf(tune),
    facts: tuneFacts(tune, context),
  })),
});

export const aliasesOf = (tune: BuiltTune): string | null =>
  tune.study?.tune.aliases.length ? tune.study.tune.aliases.join(', ') : null;

/** By title, a leading article left out, as an index has it. */
function byTitle(tunes: readonly BuiltTune[]): readonly BuiltTune[] {
  const key = (tune: BuiltTune): string => titleOf(tune).replace(/^(?:the|an?)\s+/i, '');
  return tunes.toSorted((a, b) => key(a).localeCompare(key(b), 'en'));
}
