import type { Fraction } from '../../shared/music/fraction.ts';
import type { Pitch } from '../../shared/music/pitch.ts';
import type { Clef, Key, Meter } from '../../shared/music/tune.ts';
import type { RawElement } from './abcjs-parse.ts';

/** A bar as the page has it: its notes, exact, and the signs at its edges; it has no name yet. */
export interface DraftBar {
  readonly meter: Meter;
  readonly key: Key;
  readonly clef: Clef;
  readonly events: readonly DraftEvent[];
  readonly length: Fraction;
  readonly opensRepeat: boolean;
  readonly closesRepeat: number;
  readonly closesPart: boolean;
  /** Times through that an ending is for, where one begins at this bar. */
  readonly opensEnding: readonly number[] | null;
  /** An ending that holds at this bar stops after it. */
  readonly closesEnding: boolean;
  /** `P:` that stands before this bar. */
  readonly partName: string | null;
  /** A real bar line stands at its end, not only the start of an ending. */
  readonly closed: boolean;
  /** Offset in the text that abcjs was given. */
  readonly start: number;
}

export interface DraftEvent {
  readonly raw: RawElement;
  readonly rest: boolean;
  readonly onset: Fraction;
  readonly duration: Fraction;
  readonly pitches: readonly Pitch[];
  readonly graces: readonly Pitch[];
  readonly tuplet: { readonly p: number; readonly opens: boolean } | null;
  /** Offsets in the text that abcjs was given, all its signs included. */
  readonly start: number;
  readonly stop: number;
  /** Slurs that open before a rest or close after one; notes carry their own. */
  readonly restSlurs: { readonly opened: number; readonly closed: number };
  /** A pitch altered only by a sign in another octave, and what it would be without. */
  readonly elsewhere: { readonly read: Pitch; readonly otherwise: Pitch } | null;
}
