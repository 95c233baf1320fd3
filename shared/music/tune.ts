import type { Place } from '../problem.ts';
import type { Fraction } from './fraction.ts';
import type { Letter, Pitch } from './pitch.ts';

/**
 * A tune as written: bars in the order of the page, each with its notes and rests. Nothing here is
 * unrolled; `performance.ts` has the tune as played. Indices are into `bars` and `events`.
 */
export interface Tune {
  readonly id: string;
  readonly title: string;
  readonly aliases: readonly string[];
  readonly type: TuneType | null;
  /** `R:` as the teacher wrote it. */
  readonly rhythm: string | null;
  readonly meter: Meter;
  readonly key: Key;
  /** The default note length, `L:`. */
  readonly unit: Fraction;
  readonly tempo: Tempo | null;
  readonly credits: AbcCredits;
  readonly bars: readonly Bar[];
  readonly events: readonly TuneEvent[];
  readonly parts: readonly Part[];
  /** `P:` of the header as part indices in playing order; null without one. */
  readonly order: readonly number[] | null;
  readonly source: AbcSource;
}

/** Types of tune that the program knows. */
export const tuneTypes = [
  'reel',
  'jig',
  'slip jig',
  'hornpipe',
  'polka',
  'slide',
  'waltz',
  'strathspey',
  'march',
  'air',
] as const;
/** A type of tune, as `R:` or the metre says it. */
export type TuneType = (typeof tuneTypes)[number];

/** A metre: `beats` of one `unit` each, as written. */
export interface Meter {
  readonly beats: number;
  /** The note that the lower figure names: 4 for a crotchet. */
  readonly unit: number;
  readonly sign: 'common' | 'cut' | null;
  /** `M:none`: bars have no stated length. */
  readonly free: boolean;
}

/** A key: its tonic, mode and signature. */
export interface Key {
  readonly tonic: string;
  readonly mode:
    | 'major'
    | 'minor'
    | 'dorian'
    | 'phrygian'
    | 'lydian'
    | 'mixolydian'
    | 'locrian'
    | 'none';
  /** Sharps, or flats below zero, of the signature; explicit accidentals apart. */
  readonly fifths: number;
  /** What each letter is altered by, explicit accidentals counted in. */
  readonly alters: Readonly<Record<Letter, number>>;
}

/** The clef of a staff, and by how many octaves what sounds is moved from it: -1 for `treble-8`. */
export interface Clef {
  readonly sign: 'treble' | 'alto' | 'tenor' | 'bass';
  readonly octave: -1 | 0 | 1;
}

/** `bpm` beats of length `beat` a minute. */
export interface Tempo {
  readonly beat: Fraction;
  readonly bpm: number;
}

/** The header fields of ABC 2.1 that say where a tune comes from. */
export interface AbcCredits {
  readonly composer: string | null;
  readonly origin: string | null;
  readonly source: string | null;
  readonly book: string | null;
  readonly transcription: string | null;
  readonly notes: string | null;
}

/** The fence that a tune was read from, so that every note has a place in the teacher's file. */
export interface AbcSource {
  readonly text: string;
  readonly file: string;
  /** Line of the file on which `text` begins, from 1. */
  readonly line: number;
  /** Columns by which the fence is indented. */
  readonly indent: number;
}

/** A part of a tune, such as A, with its bars. */
export interface Part {
  readonly name: string;
  /** Indices of its bars in written order, endings included. */
  readonly bars: readonly number[];
}

/** A written bar. */
export interface Bar {
  /** `A1`, `A0` for a pickup, `A8/1` or `A8/1,3` in an ending. */
  readonly name: string;
  readonly part: number;
  readonly number: number;
  /** Times through on which it is played; empty outside endings. */
  readonly endings: readonly number[];
  readonly pickup: boolean;
  readonly meter: Meter;
  readonly key: Key;
  readonly clef: Clef;
  /** Events first (included) to end (not included). */
  readonly first: number;
  readonly end: number;
  /** What the notes and rests add up to. */
  readonly length: Fraction;
  readonly opensRepeat: boolean;
  /** Times the stretch that ends here is played; 1 where no repeat sign stands. */
  readonly closesRepeat: number;
  /** A double or final bar line stands at its end. */
  readonly closesPart: boolean;
  /** A bar line stands at its end; not where an ending or a part begins in mid-bar. */
  readonly closed: boolean;
  readonly place: Place;
}

/** Way of the bow. */
export type Direction = 'down' | 'up';

/** A note or a rest, as written. */
export type TuneEvent = NoteEvent | RestEvent;

export const noteSigns = ['fermata', 'accent', 'tenuto', 'segno', 'coda'] as const;
export type NoteSign = (typeof noteSigns)[number];

interface EventBase {
  /** Index of its bar. */
  readonly bar: number;
  /** From the start of its bar. */
  readonly onset: Fraction;
  /** As sounded: tuplets and broken rhythm worked in. */
  readonly duration: Fraction;
  /** Offsets in `source.text`: from its first decoration to after its length. */
  readonly start: number;
  readonly stop: number;
  readonly place: Place;
}

/** A written rest. */
export interface RestEvent extends EventBase {
  readonly kind: 'rest';
  /** `x` and `X` of ABC: silent, and not drawn. */
  readonly hidden: boolean;
}

/** A written note or double stop. */
export interface NoteEvent extends EventBase {
  readonly kind: 'note';
  /** Bar and number of the note in it, from 1, rests left out: `A1:3`. */
  readonly id: string;
  /** Lowest first; one, or a chord. */
  readonly pitches: readonly Pitch[];
  readonly graces: readonly Pitch[];
  /** Tied on to the next note. */
  readonly tied: boolean;
  /** Slurs that open before this note, and close after it. */
  readonly slursOpened: number;
  readonly slursClosed: number;
  /** `v` or `u` written on it. */
  readonly mark: Direction | null;
  /** `!0!` to `!5!` written on it, one for each, as written. */
  readonly fingers: readonly number[];
  readonly ornament: 'roll' | 'trill' | 'mordent' | 'turn' | null;
  readonly staccato: boolean;
  /** Other signs that are drawn at it, in the order in which they are written. */
  readonly signs: readonly NoteSign[];
  /** `!breath!`: the bow lifts after this note. */
  readonly breath: boolean;
  /** In a tuplet: its `p` of ABC 2.1, and whether it opens it. */
  readonly tuplet: { readonly p: number; readonly opens: boolean } | null;
  /** Words under the note, `w:`. */
  readonly lyric: string | null;
  /** Chord symbol above it. */
  readonly chord: string | null;
}
