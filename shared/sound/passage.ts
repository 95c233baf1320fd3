import type { BowingStudy } from '../bowing/bowing.ts';
import type { Fraction } from '../music/fraction.ts';
import { zero } from '../music/fraction.ts';
import type { Performance } from '../music/performance.ts';
import type { Bar, Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import type { SectionMap } from '../sections/section-map.ts';

/** What the sound of a tune is made from; a `Study` is one. */
export interface PlayedTune {
  readonly tune: Tune;
  readonly performance: Performance;
  readonly map: SectionMap;
  readonly bowing: BowingStudy;
}

/** What a listener chooses. Phrases are indices into the map, first and last included. */
export type PassageChoice =
  | { readonly kind: 'all' }
  | { readonly kind: 'part'; readonly part: number }
  | { readonly kind: 'phrases'; readonly first: number; readonly last: number }
  /** The lead-in of an anchor, and the anchor. */
  | { readonly kind: 'into'; readonly anchor: string };

/** A stretch of the tune as played: sounded notes `first` to `end` (not included), and its times. */
export interface Passage {
  readonly first: number;
  readonly end: number;
  readonly from: Fraction;
  readonly to: Fraction;
}

/**
 * Finds each time that the choice comes round as the tune is played, in order; empty where it never does.
 *
 * With `|:A1 A2|1 A3 :|2 A4|`, phrase A1-A2 comes twice, the part once (both its times through, as
 * written), and a choice of the bar A4 alone once, begun with the bars before it that fill a phrase.
 */
export function passagesOf(played: PlayedTune, choice: PassageChoice): readonly Passage[] {
  const { performance, map } = played;
  switch (choice.kind) {
    case 'all':
      return [{ first: 0, end: performance.notes.length, from: zero, to: performance.length }];
    case 'part': {
      const bars = new Set(at(played.tune.parts, choice.part).bars);
      return runsOf(played, i => bars.has(at(performance.bars, i).bar));
    }
    case 'phrases': {
      const written = map.phrases.slice(choice.first, choice.last + 1).flatMap(p => p.bars);
      const goesOn = (i: number): boolean =>
        at(performance.bars, i).bar > at(performance.bars, i - 1).bar;
      return runsOf(played, belongsTo(played, written), goesOn);
    }
    case 'into':
      return passagesInto(played, choice.anchor);
  }
}

/**
 * Whether a played bar is one of those written, or stands in another ending in place of one: the
 * second time, `A3 A4/1` is heard as `A3 A4/2`. A passage that begins in a later ending is that ending.
 */
function belongsTo(
  { tune, performance }: PlayedTune,
  written: readonly number[],
): (played: number) => boolean {
  const slot = (bar: number): string => {
    const { part, number } = at(tune.bars, bar);
    return `${part} ${number}`;
  };
  const [exact, slots] = [new Set(written), new Set(written.map(slot))];
  const isEnding = isLaterEnding(at(tune.bars, at(written, 0)));
  return i => {
    const { bar } = at(performance.bars, i);
    return exact.has(bar) || (!isEnding && slots.has(slot(bar)));
  };
}

const isLaterEnding = ({ endings }: Bar): boolean => endings.length > 0 && !endings.includes(1);

/** Longest stretches of played bars that all belong, cut where `goesOn` says no. */
function runsOf(
  played: PlayedTune,
  belongs: (played: number) => boolean,
  goesOn: (played: number) => boolean = () => true,
): readonly Passage[] {
  const { bars } = played.performance;
  const runs: { first: number; last: number }[] = [];
  bars.forEach((_, i) => {
    const run = runs.at(-1);
    if (!belongs(i)) return;
    if (run?.last === i - 1 && goesOn(i)) run.last = i;
    else runs.push({ first: i, last: i });
  });
  return runs.map(run => barsPassage(played, leadEnding(played, run.first, run.last), run.last));
}

/** A later ending is heard with the bars before it, as many as fill a phrase. */
function leadEnding({ tune, performance, map }: PlayedTune, first: number, last: number): number {
  const bar = at(tune.bars, at(performance.bars, first).bar);
  if (!isLaterEnding(bar)) return first;
  return Math.max(0, Math.min(first, last + 1 - map.unit));
}

function barsPassage({ performance }: PlayedTune, first: number, last: number): Passage {
  const { bars } = performance;
  return {
    first: at(bars, first).first,
    end: at(bars, last).end,
    from: at(bars, first).onset,
    to: bars[last + 1]?.onset ?? performance.length,
  };
}

function passagesInto({ performance, bowing }: PlayedTune, id: string): readonly Passage[] {
  const anchor = bowing.anchors.find(a => a.id === id);
  if (!anchor) return [];
  const { notes } = performance;
  const inside = (i: number): boolean => {
    const note = notes[i];
    return note !== undefined && anchor.first <= note.event && note.event <= anchor.last;
  };
  const starts = notes.flatMap((_, i) => (inside(i) && !inside(i - 1) ? [i] : []));
  return starts.map((start, nth) => {
    const { pass } = at(notes, start);
    const leadIn = anchor.leadIns.find(l => l.passes.includes(pass)) ?? anchor.leadIns[nth];
    const first = Math.max(0, start - (leadIn?.notes.length ?? 0));
    let end = start;
    while (inside(end)) end++;
    return {
      first,
      end,
      from: at(notes, first).onset,
      to: notes[end]?.onset ?? performance.length,
    };
  });
}
