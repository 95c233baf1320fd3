import { sheetsPath } from '../../shared/print-kinds.ts';
import type { Study } from '../../shared/study.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { AnchorBlock, TuneBlock } from '../read/book.ts';
import { type AnchorView, anchorView } from './anchor-view.ts';
import { blockHtml, hasOwnPlace, innerHtml } from './block-html.ts';
import { setsPath } from './book-sets.ts';
import type { BuiltTune } from './built-tune.ts';
import { type DrillView, mayDrill, practiceViews } from './drill-view.ts';
import { type LessonLink, lessonLink } from './lesson-link.ts';
import { aliasesOf, type FactView, titleOf, tuneFacts } from './lists-view.ts';
import { type MapView, tuneMap } from './map-view.ts';
import { type NotationView, notationView } from './notation-view.ts';
import { mayShow, type PageContext } from './page-context.ts';
import { type PlayerView, playerView } from './player-view.ts';
import { type Html, html } from './render.ts';
import { type SpokenView, spokenView } from './spoken-view.ts';

/** Data of a tune's own page. Lists are empty and parts null where the book has nothing of the kind. */
export interface TuneView {
  readonly title: string;
  readonly aliases: string | null;
  readonly facts: readonly FactView[];
  readonly map: MapView | null;
  readonly notation: NotationView | null;
  readonly whyNoNotation: string;
  /** null where the tune may not be heard, or has no notes. */
  readonly player: PlayerView | null;
  readonly credits: string;
  readonly anchors: readonly AnchorView[];
  readonly repeats: readonly string[];
  readonly swaps: readonly SwapView[];
  readonly spoken: readonly SpokenView[];
  readonly practice: PracticeView | null;
  readonly story: Html | null;
  readonly lessons: readonly LessonLink[];
  readonly setsTitle: string;
  /** Links to the sets with this tune, on the page of all sets. */
  readonly sets: readonly { readonly href: string; readonly title: string }[];
  readonly downloads: readonly { readonly href: string; readonly name: string }[];
}

/**
 * Makes the data of a tune's own page. Where its rights are unknown, credits, map and story remain, and notes
 * are left out in every form.
 */
export function tuneView(tune: BuiltTune, context: PageContext): TuneView {
  const { block, study, score } = tune;
  const { words } = context;
  const { siteWords, setWords } = words;
  const shown = study && mayShow(tune, context.input) ? study : null;
  const notation = shown && score ? notationView(block.id, score, context) : null;
  const anchors = context.references.anchorsOf.get(block.id) ?? [];
  return {
    title: titleOf(tune),
    aliases: aliasesOf(tune),
    facts: tuneFacts(tune, mayShow(tune, context.input), words),
    map: tuneMap(tune, context, ''),
    notation,
    whyNoNotation: study === null || score === null ? siteWords.unreadable : siteWords.withheld,
    player: playerView(tune, context),
    credits: tune.credits,
    anchors: shown
      ? anchors.map(a => anchorView(a, tune, anchorWhy(a, context), context, true))
      : [],
    repeats: shown
      ? [
          ...words.repeatSentences(shown),
          ...words.varyingSentences(shown),
          ...wholeTuneSentences(shown, words),
        ]
      : [],
    swaps: shown ? swapViews(shown, words) : [],
    spoken: shown ? spokenView(shown, words) : [],
    practice: practiceView(tune, context),
    story: storyOf(block, context),
    downloads: shown
      ? [
          ...sheetsLink(block.id, context),
          ...tune.downloads.map(ending => ({
            href: `${block.id}.${ending}`,
            name: siteWords.downloads[ending],
          })),
        ]
      : [],
    lessons: (context.references.lessonsOf.get(block.id) ?? []).map(l => lessonLink(l, context)),
    setsTitle: setWords.title,
    sets: context.references.sets
      .filter(({ set }) => set.tunes.some(({ of }) => of === block.id))
      .map(({ set }) => ({ href: `${context.root}${setsPath}#${set.id}`, title: set.title })),
  };
}

/** The drills that the tune can give. */
interface PracticeView {
  readonly title: string;
  readonly how: string;
  readonly drills: readonly DrillView[];
}

function practiceView(tune: BuiltTune, context: PageContext): PracticeView | null {
  const drills = mayDrill(tune, context) ? practiceViews(tune, context) : [];
  const { drillWords } = context.words;
  return drills.length === 0
    ? null
    : { title: drillWords.practise, how: drillWords.practiseHow, drills };
}

/** Link to the tune's sheets as PDF; empty where the book has none or the tune may not be printed. */
const sheetsLink = (id: string, { input, root, words }: PageContext): TuneView['downloads'] =>
  input.book.settings.print.includes('sheets') && input.tunes.get(id)?.published
    ? [{ href: root + sheetsPath(id), name: words.printWords.download.tune }]
    : [];

/** HTML of the teacher's reason for an anchor; null where there is none. */
function anchorWhy(anchor: AnchorBlock, context: PageContext): Html | null {
  const page = context.references.anchoredIn.get(anchor.id) ?? null;
  return innerHtml(anchor.body, { ...context, page });
}

/**
 * HTML of the story of a tune: the text in its block and, where the tune has a page of the book alone, the
 * text of that page. Blocks that `hasOwnPlace` names are left out, and so are other tunes.
 */
function storyOf(tune: TuneBlock, context: PageContext): Html | null {
  const { page } = context;
  if (page?.kind !== 'tune') return innerHtml(tune.body, context);
  const text = context.input.bodyHtml(
    page.body,
    index => {
      const block = page.blocks[index];
      if (block?.kind === 'tune') {
        return block.id === tune.id ? (innerHtml(block.body, context)?.toString() ?? '') : '';
      }
      return block && hasOwnPlace(block) ? '' : blockHtml(index, context);
    },
    context.words.siteWords,
  );
  return text.trim() === '' ? null : html(text);
}

/** Where a passage is not reached: how the whole tune can be mended at once, or why it cannot. */
const wholeTuneSentences = ({ tune, bowing }: Study, words: Words): readonly string[] =>
  bowing.whole ? [words.wholeTuneSentence(tune, bowing.whole)] : [];

/** Bowings of one phrase. Within a list, each can replace any other. */
interface SwapView {
  readonly name: string;
  readonly keeps: readonly string[];
  readonly flips: readonly string[];
}

const swapViews = (study: Study, words: Words): readonly SwapView[] =>
  study.bowing.swaps.map(({ phrase, keeps, flips }) => ({
    name: words.siteWords.phrase(phrase),
    keeps: keeps.map(slurs => words.bowingWords(study.tune, slurs, words.noteNames)),
    flips: flips.map(slurs => words.bowingWords(study.tune, slurs, words.noteNames)),
  }));
