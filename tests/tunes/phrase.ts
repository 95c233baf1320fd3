import type { Dice } from '../../shared/drills/dice.ts';
import { lengthOf, type Rhythm } from './rhythms.ts';

/** A note on its way into ABC. */
export interface Draft {
  /** Steps of the scale of letters from middle C: 0 is `C`, 7 is `c`. */
  pitch: number;
  /** The length and the sign of a broken pair, as written: `2`, `/`, `>`. */
  readonly length: string;
  readonly opensTriplet: boolean;
  /** Stands apart from the note before: another beam. */
  spaced: boolean;
  opensSlur: boolean;
  closesSlur: boolean;
  tied: boolean;
  /** Chord symbol, grace notes or signs that stand before it. */
  signs: string;
  /** Played with the note a fifth above. */
  double: boolean;
}

export type DraftBar = Draft[];

/** What a melody keeps to: its home note, and how far down and up it goes, in steps. */
export interface Compass {
  readonly home: number;
  readonly lowest: number;
  readonly highest: number;
}

/** Bars to a row of chords, one a bar, given as steps above home. */
export function makePhrase(
  dice: Dice,
  rhythm: Rhythm,
  compass: Compass,
  chords: readonly number[],
): DraftBar[] {
  let at = compass.home + dice.pick([0, 2, 4]);
  return chords.map(chord => {
    const bar = fillBar(dice, rhythm, compass, chord, rhythm.beats * rhythm.beat, at);
    at = bar.at(-1)?.pitch ?? at;
    return bar;
  });
}

/** So many quavers of melody. A whole number of beats. */
export function fillBar(
  dice: Dice,
  rhythm: Rhythm,
  compass: Compass,
  chord: number,
  length: number,
  before: number,
): DraftBar {
  const bar: DraftBar = [];
  for (let left = length; left > 0; ) {
    const figure = dice.pick(rhythm.cells.filter(c => lengthOf(c) <= left));
    bar.push(...makeFigure(dice, figure, compass, chord, bar.at(-1)?.pitch ?? before));
    left -= lengthOf(figure);
  }
  return bar;
}

/**
 * One figure of a rhythm with notes put to it. It begins on a note of the chord near the note before,
 * and goes on by step, or now and then by a leap of a third.
 */
export function makeFigure(
  dice: Dice,
  figure: string,
  compass: Compass,
  chord: number,
  before: number,
): DraftBar {
  const inChord = chordNotes(compass, chord).toSorted(
    (a, b) => Math.abs(a - before) - Math.abs(b - before) || a - b,
  );
  let pitch = dice.pick(inChord.slice(0, 3));
  let way = pitch > (compass.lowest + compass.highest) / 2 ? -1 : 1;
  if (dice.below(3) === 0) way = -way;
  return [...figure.matchAll(/(\s?)(\(3)?n([\d/]*[<>]?)/g)].map(([, space, triplet, length], i) => {
    if (i > 0) {
      if (dice.below(4) === 0) way = -way;
      pitch = within(compass, pitch + way * (dice.below(3) === 0 ? 2 : 1));
    }
    return {
      pitch,
      length: length ?? '',
      opensTriplet: triplet !== undefined,
      spaced: i === 0 || space !== '',
      opensSlur: false,
      closesSlur: false,
      tied: false,
      signs: '',
      double: false,
    };
  });
}

/** Root, third and fifth, in every octave within the compass. */
function chordNotes(compass: Compass, chord: number): number[] {
  const found: number[] = [];
  for (let p = compass.lowest; p <= compass.highest; p++) {
    if ([0, 2, 4].includes((((p - compass.home - chord) % 7) + 7) % 7)) found.push(p);
  }
  return found;
}

const within = ({ lowest, highest }: Compass, pitch: number): number =>
  pitch < lowest ? lowest + 1 : pitch > highest ? highest - 1 : pitch;

/** The same bars with the notes of the last beats of the second made anew: a phrase and its kin. */
export function varied(
  dice: Dice,
  compass: Compass,
  bars: readonly DraftBar[],
  chord: number,
): DraftBar[] {
  const copy = copied(bars);
  const last = copy.at(-1) ?? [];
  const notes = chordNotes(compass, chord);
  for (const note of last.slice(1).slice(-2))
    note.pitch = dice.pick(notes.filter(n => n !== note.pitch));
  return copy;
}

export const copied = (bars: readonly DraftBar[]): DraftBar[] =>
  bars.map(bar => bar.map(note => ({ ...note })));
