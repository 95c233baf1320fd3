import { paceNames, pacesOf } from '../../shared/bowing/paces.ts';
import { fractionText } from '../../shared/music/fraction.ts';
import { at } from '../../shared/must.ts';
import { paceLimits } from '../../shared/sound/climb.ts';
import { liltRange } from '../../shared/sound/lilt.ts';
import { passagesOf } from '../../shared/sound/passage.ts';
import type { Study } from '../../shared/study.ts';
import { liltWords } from '../../shared/words/amounts.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { BuiltTune } from './built-tune.ts';
import { titleOf } from './lists-view.ts';
import { mayShow, type PageContext } from './page-context.ts';

/** The player of one tune. It is hidden until its script has made it work. */
export interface PlayerView {
  readonly tune: string;
  readonly root: string;
  readonly label: string;
  readonly title: string;
  /** What can be played: the whole tune, each part, and the way into each anchor. */
  readonly choices: readonly ChoiceView[];
  readonly phrases: readonly {
    readonly index: number;
    readonly name: string;
    readonly bars: string;
    readonly label: string;
  }[];
  readonly beat: string;
  readonly beatLength: string;
  readonly paces: readonly {
    readonly name: string;
    readonly label: string;
    readonly perMinute: number;
    readonly first: boolean;
  }[];
  readonly limits: typeof paceLimits;
  /** Options for which pass of a phrase to play; empty where no phrase is played twice. */
  readonly passes: readonly OptionView[];
  readonly breaths: readonly OptionView[];
  readonly climbBy: readonly OptionView[];
  readonly climbEvery: readonly OptionView[];
  readonly climbTo: readonly OptionView[];
  readonly lilt: LiltView;
  readonly words: PlayerWords;
}

type PlayerWords = Words['playerWords'];

interface ChoiceView {
  readonly value: string;
  readonly name: string;
}

interface OptionView {
  readonly value: number | string;
  readonly name: string;
  readonly first: boolean;
}

interface LiltView {
  readonly kind: string;
  readonly label: string;
  readonly least: number;
  readonly most: number;
  readonly usual: number;
  readonly text: string;
  /** The tune has dotted rhythms, which the player can soften. */
  readonly dots: boolean;
}

const options = (
  values: readonly number[],
  first: number,
  name: (n: number) => string,
): readonly OptionView[] =>
  values.map(value => ({ value, name: name(value), first: value === first }));

/**
 * The player of a tune, or of those of its phrases that are shown; null where its notes are withheld
 * or nothing sounds.
 */
export function playerView(
  tune: BuiltTune,
  context: PageContext,
  shown: readonly number[] | null = null,
): PlayerView | null {
  const { study, block } = tune;
  if (!study || !mayShow(tune, context.input) || study.performance.notes.length === 0) return null;
  context.scripts.add('player');
  const { playerWords, beatName } = context.words;
  const paces = pacesOf(study.tune, context.input.book.settings.bowing);
  const range = liltRange(study.tune);
  const { map } = study;
  const indices = shown ?? map.phrases.map((_, i) => i);
  return {
    tune: block.id,
    root: context.root,
    label: playerWords.listen(titleOf(tune)),
    title: titleOf(tune),
    choices: choicesOf(study, shown, playerWords),
    phrases: indices.flatMap(index => {
      const phrase = map.phrases[index];
      if (!phrase) return [];
      const { label, name: bars } = phrase;
      return [{ index, label, bars, name: playerWords.phrase(label, bars) }];
    }),
    beat: beatName(paces.beat),
    beatLength: fractionText(paces.beat),
    paces: paceNames.map((name, i) => ({
      name,
      label: playerWords.paces[name],
      perMinute: paces.perMinute[name],
      first: i === 0,
    })),
    limits: paceLimits,
    passes: passesOf(study, indices, playerWords),
    breaths: options([0, 1, 2, 4], 1, n => playerWords.breaths[n as 0]),
    climbBy: options([1, 2, 3, 5], 2, playerWords.beatsMore),
    climbEvery: options([1, 2, 4], 2, playerWords.everyTimes),
    climbTo: paceNames.slice(1).map((name, i) => ({
      value: name,
      name: `${playerWords.paces[name]}, ${paces.perMinute[name]}`,
      first: i === 0,
    })),
    lilt: {
      kind: range.kind,
      label: playerWords.lilt(range.kind),
      least: range.least,
      most: range.most,
      usual: range.usual,
      text: liltWords(playerWords, range.kind, range.usual),
      dots: range.kind === 'pairs' && range.usual > 1 && hasDots(study),
    },
    words: playerWords,
  };
}

function choicesOf(
  study: Study,
  shown: readonly number[] | null,
  playerWords: PlayerWords,
): readonly ChoiceView[] {
  const { tune, bowing, map } = study;
  if (shown) {
    return [{ value: `phrases-${shown[0] ?? 0}-${shown.at(-1) ?? 0}`, name: playerWords.whole }];
  }
  const parts = tune.parts.flatMap((part, i) =>
    map.phrases.some(p => p.part === i)
      ? [{ value: `part-${i}`, name: playerWords.part(part.name) }]
      : [],
  );
  return [
    { value: 'all', name: playerWords.whole },
    ...(parts.length > 1 ? parts : []),
    ...bowing.anchors
      .filter(a => a.leadIns.some(l => l.notes.length > 0))
      .map(a => ({ value: `into-${a.id}`, name: playerWords.into(anchorBars(study, a)) })),
  ];
}

function anchorBars(
  { tune }: Study,
  anchor: { readonly first: number; readonly last: number },
): string {
  const barOf = (event: number): string => at(tune.bars, at(tune.events, event).bar).name;
  const [from, to] = [barOf(anchor.first), barOf(anchor.last)];
  return from === to ? from : `${from}-${to}`;
}

function passesOf(
  study: Study,
  phrases: readonly number[],
  playerWords: PlayerWords,
): readonly OptionView[] {
  const times = phrases.map(p => passagesOf(study, { kind: 'phrases', first: p, last: p }).length);
  const most = Math.min(4, Math.max(1, ...times));
  if (most < 2) return [];
  return options(
    Array.from({ length: most }, (_, i) => i + 1),
    1,
    playerWords.passes,
  );
}

/** Whether some pair of quavers is written dotted, three to one. */
const hasDots = ({ tune }: Study): boolean =>
  tune.events.some((e, i) => {
    const next = tune.events[i + 1];
    if (e.kind !== 'note' || next?.kind !== 'note') return false;
    return e.duration.n * 16 === 3 * e.duration.d && next.duration.n * 16 === next.duration.d;
  });
