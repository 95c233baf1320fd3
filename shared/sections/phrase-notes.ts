import type { Fraction } from '../music/fraction.ts';
import { topPitch } from '../music/note-at.ts';
import { diatonic } from '../music/pitch.ts';
import type { NoteEvent, Tune } from '../music/tune.ts';
import { at } from '../must.ts';

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

/**
 * Makes a reader of phrases, each given by its bars as heard. All phrases of a tune are read on one
 * grid of whole steps, fine enough for every onset of the tune, so that places are exact integers.
 */
export function phraseReader(tune: Tune): (heard: readonly number[]) => PhraseNotes {
  const grid = tune.events.reduce((least, e) => lcm(least, e.onset.d), 1);
  const steps = (x: Fraction): number => x.n * (grid / x.d);
  return heard => {
    const notes: PhraseNote[] = [];
    let before = eventBefore(tune, heard[0]);
    heard.forEach((index, bar) => {
      const { first, end } = at(tune.bars, index);
      for (let event = first; event < end; event++) {
        const e = at(tune.events, event);
        if (e.kind === 'rest') {
          before = undefined;
          continue;
        }
        const top = topPitch(e);
        const held = before?.tied === true && topPitch(before).midi === top.midi;
        before = e;
        if (held && notes.length > 0) continue;
        const place = bar * barSpan + steps(e.onset);
        notes.push({ bar, at: place, midi: top.midi, steps: diatonic(top), held, event });
      }
    });
    const text = [heard.length, ...notes.map(n => `${n.at}:${n.held ? '-' : ''}${n.midi}`)].join();
    return { bars: heard.length, notes, half: halfWay(tune, heard, grid), text };
  };
}

/** The note heard just before a bar: for a later ending, the last one before the endings. */
function eventBefore(tune: Tune, bar: number | undefined): NoteEvent | undefined {
  if (bar === undefined) return undefined;
  const endings = at(tune.bars, bar).endings.join();
  const own = (i: number): string | undefined => tune.bars[i]?.endings.join();
  let before = bar - 1;
  // Other endings before this one are not played before it.
  if (endings !== '' && own(before) !== endings) while (own(before)) before--;
  const { first, end } = tune.bars[before] ?? { first: 0, end: 0 };
  const e = end > first ? at(tune.events, end - 1) : undefined;
  return e?.kind === 'note' ? e : undefined;
}

/** Half way through a phrase in steps of the grid: by bars, and by the metre of a middle bar. */
function halfWay(tune: Tune, heard: readonly number[], grid: number): number {
  const middle = Math.floor(heard.length / 2);
  if (heard.length % 2 === 0) return middle * barSpan;
  const bar = at(tune.bars, at(heard, middle));
  const { n, d } = bar.meter.free ? bar.length : { n: bar.meter.beats, d: bar.meter.unit };
  return middle * barSpan + (n * grid) / (2 * d);
}

function lcm(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return (a / x) * b;
}
