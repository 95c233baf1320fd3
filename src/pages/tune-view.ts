import type { Study } from '../../shared/study.ts';
import { bowingWords, repeatSentences } from '../../shared/words/en/plans.ts';
import { siteWords } from '../../shared/words/en/site.ts';
import { type AnchorView, anchorView } from './anchor-view.ts';
import { innerHtml } from './block-html.ts';
import type { BuiltTune } from './built-tune.ts';
import { type LessonLink, lessonLink } from './lesson-view.ts';
import { aliasesOf, type FactView, titleOf, tuneFacts } from './lists-view.ts';
import { type MapView, tuneMap } from './map-view.ts';
import { type NotationView, notationView } from './notation-view.ts';
import { mayShow, type PageContext } from './page-context.ts';
import type { Html } from './render.ts';
import { type SpokenView, spokenView } from './spoken-view.ts';

/** All that the book knows of one tune. Lists are empty and parts null where it knows nothing. */
export interface TuneView {
  readonly title: string;
  readonly aliases: string | null;
  readonly facts: readonly FactView[];
  readonly map: MapView | null;
  readonly notation: NotationView | null;
  readonly whyNoNotation: string;
  readonly credits: string;
  readonly anchors: readonly AnchorView[];
  readonly repeats: readonly string[];
  readonly swaps: readonly SwapView[];
  readonly spoken: readonly SpokenView[];
  readonly story: Html | null;
  readonly lessons: readonly LessonLink[];
}

/** Notes in any form are left out where the rights are unknown: credits, map and story remain. */
export function tuneView(tune: BuiltTune, context: PageContext): TuneView {
  const { block, study, score } = tune;
  const shown = study && mayShow(tune, context.input) ? study : null;
  const notation = shown && score ? notationView(block.id, score, context) : null;
  const anchors = [...context.index.anchors.values()].filter(a => a.of === block.id);
  return {
    title: titleOf(tune),
    aliases: aliasesOf(tune),
    facts: tuneFacts(tune, context),
    map: tuneMap(tune, context, ''),
    notation,
    whyNoNotation: study === null || score === null ? siteWords.unreadable : siteWords.withheld,
    credits: tune.credits,
    anchors: shown ? anchors.map(a => anchorView(a, tune, null, context, true)) : [],
    repeats: shown ? repeatSentences(shown) : [],
    swaps: shown ? swapViews(shown) : [],
    spoken: shown ? spokenView(shown) : [],
    story: innerHtml(block.body, context),
    lessons: (context.index.lessonsOf.get(block.id) ?? []).map(l => lessonLink(l, context.root)),
  };
}

/** Bowings of one phrase: any may stand for any other of its list. */
interface SwapView {
  readonly name: string;
  readonly keeps: readonly string[];
  readonly flips: readonly string[];
}

const swapViews = (study: Study): readonly SwapView[] =>
  study.bowing.swaps.map(({ phrase, keeps, flips }) => ({
    name: siteWords.phrase(phrase),
    keeps: keeps.map(slurs => bowingWords(study.tune, slurs)),
    flips: flips.map(slurs => bowingWords(study.tune, slurs)),
  }));
