import type { Fraction } from '../music/fraction.ts';
import { diatonic } from '../music/pitch.ts';
import type { NoteEvent, Tune } from '../music/tune.ts';

/**
 * A phrase as it is compared: where each note begins, and its pitch. Grace notes, ornaments, bowing,
 * chord symbols and how long the last of a sound is held are not in it. Of a chord, the top note.
 */
export interface PhraseNotes {
  readonly bars: number;
  readonly notes: readonly PhraseNote[];
  /** The place half way through, in the notes' own steps. */
  readonly half: number;
  /** Equal for phrases that are the same, and only for them. */
  readonly text: string;
}

export interface PhraseNote {
  /** Which bar of the phrase, from 0. */
  readonly bar: number;
  /** Exact: whole steps of the tune's grid, each bar beginning at a multiple of `barSpan`. */
  readonly at: number;
  readonly midi: number;
  /** Staff steps. */
  readonly steps: number;
  /** Tied over from before the phrase: it does not begin here. */
  readonly held: boolean;
  readonly event: number;
}

/** Steps of the grid from one bar's beginning to the next: longer than any bar. */
const barSpan = 2 ** 32;

/** A reader of phrases (bars as heard) on one exact grid, which every onset of the tune falls on. */
export function phraseReader(tune: Tune): (heard: readonly number[]) => PhraseNotes {
  const grid = tune.events.reduce((least, e) => lcm(least, e.onset.d), 1);
  const steps = (x: Fraction): number => x.n * (grid / x.d);
  return heard => {
    const notes: PhraseNote[] = [];
    let before = eventBefore(tune, heard[0]);
    heard.forEach((index, bar) => {
      const b = tune.bars[index];
      for (let event = b?.first ?? 0; event < (b?.end ?? 0); event++) {
        const e = tune.events[event];
        const top = e?.kind === 'note' ? e.pitches.at(-1) : undefined;
        const held = top !== undefined && tiedTo(before, top.midi);
        before = e?.kind === 'note' ? e : undefined;
        if (!e || !top || (held && notes.length > 0)) continue;
        const at = bar * barSpan + steps(e.onset);
        notes.push({ bar, at, midi: top.midi, steps: diatonic(top), held, event });
      }
    });
    const text = [heard.length, ...notes.map(n => `${n.at}:${n.held ? '-' : ''}${n.midi}`)].join();
    return { bars: heard.length, notes, half: halfWay(tune, heard, grid), text };
  };
}

const tiedTo = (before: NoteEvent | undefined, midi: number): boolean =>
  (before?.tied ?? false) && before?.pitches.at(-1)?.midi === midi;

/** The note heard just before a bar: for a later ending, the last one before the endings. */
function eventBefore(tune: Tune, bar: number | undefined): NoteEvent | undefined {
  if (bar === undefined) return undefined;
  const here = tune.bars[bar];
  let before = bar - 1;
  const ending = (i: number): string => tune.bars[i]?.endings.join() ?? '';
  if (here && here.endings.length > 0 && ending(before) !== ending(bar)) {
    while (ending(before) !== '') before--;
  }
  const b = tune.bars[before];
  const e = b && b.end > b.first ? tune.events[b.end - 1] : undefined;
  return e?.kind === 'note' ? e : undefined;
}

function halfWay(tune: Tune, heard: readonly number[], grid: number): number {
  const middle = Math.floor(heard.length / 2);
  if (heard.length % 2 === 0) return middle * barSpan;
  const bar = tune.bars[heard[middle] ?? 0];
  if (!bar) return middle * barSpan;
  const { n, d } = bar.meter.free ? bar.length : { n: bar.meter.beats, d: bar.meter.unit };
  return middle * barSpan + (n * grid) / (2 * d);
}

function lcm(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return (a / x) * b;
}
