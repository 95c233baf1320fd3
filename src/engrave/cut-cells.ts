import type { Tune } from '../../shared/music/tune.ts';
import type { Phrase } from '../../shared/sections/section-map.ts';

/** The bars that are drawn as one small SVG. */
export interface Cell {
  readonly name: string;
  /** Indices of bars, neighbours in written order. */
  readonly bars: readonly number[];
  /** Index of the phrase it belongs to. */
  readonly phrase: number;
  readonly opensPhrase: boolean;
  readonly part: number;
  readonly opensPart: boolean;
  readonly closesPart: boolean;
}

/** As many notes as a phone's width shows without shrinking them: common practice. */
const mostNotes = 20;

/**
 * Cuts a tune into cells: a phrase each, or, where a phrase holds too many notes for a phone, as
 * few runs of its bars as hold few enough, as even as can be. Every bar is in exactly one cell.
 */
export function cutCells(tune: Tune, phrases: readonly Phrase[]): readonly Cell[] {
  const runs = phrases.flatMap((phrase, index) =>
    splitBars(tune, phrase.bars).map((bars, i) => ({ bars, phrase: index, opensPhrase: i === 0 })),
  );
  return runs.map(({ bars, phrase, opensPhrase }, i) => {
    const part = partOf(tune, bars);
    const before = runs[i - 1];
    const after = runs[i + 1];
    return {
      name: nameOf(tune, bars),
      bars,
      phrase,
      opensPhrase,
      part,
      opensPart: !before || partOf(tune, before.bars) !== part,
      closesPart: !after || partOf(tune, after.bars) !== part,
    };
  });
}

/** The part of the bars after a pickup, which may still be counted to the part before. */
const partOf = (tune: Tune, bars: readonly number[]): number =>
  tune.bars[bars[bars.length - 1] ?? 0]?.part ?? 0;

function nameOf(tune: Tune, bars: readonly number[]): string {
  const named = bars.filter(b => !tune.bars[b]?.pickup);
  const [first, last] = [named[0] ?? bars[0] ?? 0, named[named.length - 1] ?? bars[0] ?? 0];
  const name = (b: number): string => tune.bars[b]?.name ?? '';
  return first === last ? name(first) : `${name(first)}-${name(last)}`;
}

function splitBars(tune: Tune, bars: readonly number[]): readonly (readonly number[])[] {
  const size = (run: readonly number[]): number =>
    run.reduce((sum, b) => sum + (tune.bars[b] ? tune.bars[b].end - tune.bars[b].first : 0), 0);
  const full = bars.filter(b => !tune.bars[b]?.pickup).length;
  if (size(bars) <= mostNotes || full < 2) return [bars];
  const half = size(bars) / 2;
  let cut = 1;
  while (cut < bars.length - 1 && size(bars.slice(0, cut + 1)) <= half + 1) cut++;
  while (cut < bars.length - 1 && bars.slice(0, cut).every(b => tune.bars[b]?.pickup)) cut++;
  return [...splitBars(tune, bars.slice(0, cut)), ...splitBars(tune, bars.slice(cut))];
}
