import { clipTimes } from '../../shared/clips/clip-times.ts';
import { equal } from '../../shared/music/fraction.ts';
import { at } from '../../shared/must.ts';
import { clipLimits } from '../../shared/sound/climb.ts';
import { type Passage, passagesOf } from '../../shared/sound/passage.ts';
import type { Study } from '../../shared/study.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { ClipBlock } from '../read/book.ts';
import type { BuiltTune } from './built-tune.ts';
import { titleOf } from './lists-view.ts';
import { mayPlay, type PageContext } from './page-context.ts';

/** A recording: a file of the book that the page plays, or a link that the student opens. */
export interface ClipView {
  readonly tune: string;
  readonly label: string;
  readonly name: string;
  readonly src: string | null;
  readonly link: string | null;
  readonly isFilm: boolean;
  /** Phrases in the order in which the recording has them; empty where it is not cued. */
  readonly phrases: readonly ClipPhrase[];
  readonly limits: typeof clipLimits;
  readonly words: Words['playerWords'];
}

interface ClipPhrase {
  readonly index: number;
  readonly label: string;
  readonly bars: string;
  /** `second time`; null the first time. */
  readonly again: string | null;
  /** Seconds of the recording, to a hundredth. */
  readonly from: string;
  readonly to: string;
}

/** Describes a clip; null where it must not be published: unknown rights, or a learner who has not consented. */
export function clipView(block: ClipBlock, tune: BuiltTune, context: PageContext): ClipView | null {
  if (!mayPlay(block, tune, context.input)) return null;
  if (block.src !== null) context.scripts.add('player');
  const { study } = tune;
  const { playerWords } = context.words;
  return {
    tune: block.of,
    label: playerWords.recording(titleOf(tune)),
    name: block.words,
    src:
      block.src === null
        ? null
        : context.root + block.src.split('/').map(encodeURIComponent).join('/'),
    link: block.link,
    isFilm: /\.(?:mp4|m4v|webm|ogv)$/i.test(block.src ?? ''),
    phrases: study && block.src !== null ? cuedPhrases(study, block, context) : [],
    limits: clipLimits,
    words: playerWords,
  };
}

function cuedPhrases(
  study: Study,
  block: ClipBlock,
  { input, words: { playerWords } }: PageContext,
): readonly ClipPhrase[] {
  const { tune, performance, map } = study;
  const times = clipTimes(tune, performance, block, input.book.settings.bowing);
  if (times === null) return [];
  const timeOf = (onset: Passage['from']): number => {
    const bar = performance.bars.findIndex(b => equal(b.onset, onset));
    return at(times, bar < 0 ? performance.bars.length : bar);
  };
  return map.phrases
    .flatMap((phrase, index) => {
      const passages = passagesOf(study, { kind: 'phrases', first: index, last: index });
      return passages.map((passage, i) => ({
        index,
        label: phrase.label,
        bars: phrase.name,
        again: i > 0 ? playerWords.passes(i + 1) : null,
        from: Math.max(0, timeOf(passage.from)),
        to: timeOf(passage.to),
      }));
    })
    .filter(p => p.to > p.from)
    .toSorted((a, b) => a.from - b.from)
    .map(p => ({ ...p, from: p.from.toFixed(2), to: p.to.toFixed(2) }));
}
