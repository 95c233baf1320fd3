import { type Letter, letters, type Pitch, pitch } from '../../shared/music/pitch.ts';
import type { Clef, Key } from '../../shared/music/tune.ts';
import type { RawPitch } from './abcjs-parse.ts';
import { alterOf } from './read-key.ts';

/**
 * The accidentals in force at a place. An accidental holds for its letter, in every octave, until the bar line
 * (`%%propagate-accidentals`, whose default is `pitch`: ABC 2.1, section 11.3), and past it only
 * for the note that a tie leads to: in `^f-|f f` the first f of the second bar is sharp, the next
 * is not.
 */
export interface Accidentals {
  /** By letter, from C as 0, or by staff step, as they propagate. */
  readonly held: ReadonlyMap<number, number>;
  /** By staff step (see `diatonic`), whatever is said about propagation. */
  readonly written: ReadonlyMap<number, number>;
  /** Of the note before, where it is tied on: by staff step. */
  readonly tied: ReadonlyMap<number, number>;
}

export const noAccidentals: Accidentals = { held: new Map(), written: new Map(), tied: new Map() };

/** The accidentals still in force after a bar line. */
export const afterBarLine = (before: Accidentals): Accidentals =>
  before.tied.size === 0 ? noAccidentals : { ...noAccidentals, tied: before.tied };

export type Propagation = 'octave' | 'pitch' | 'not';

export interface PitchContext {
  readonly key: Key;
  /** Octaves by which the clef moves what sounds. */
  readonly octaves: number;
  readonly propagation: Propagation;
}

export interface ReadPitch {
  readonly pitch: Pitch;
  /**
   * What players read who take an accidental for its own octave only, where that differs; null
   * where it does not.
   */
  readonly otherwise: Pitch | null;
  readonly after: Accidentals;
}

/** Reads one pitch, with the accidentals in force before it; `after` has those in force after it. */
export function readPitch(raw: RawPitch, before: Accidentals, context: PitchContext): ReadPitch {
  const step = raw.pitch + middleC + context.octaves * 7;
  const octave = Math.floor(step / 7);
  const place = step - octave * 7;
  const letter = letters[place] as Letter;
  const reach = context.propagation === 'pitch' ? place : step;
  const plain = context.key.alters[letter];
  const sign = raw.accidental === undefined ? undefined : alterOf[raw.accidental];
  if (sign !== undefined) {
    const holds = context.propagation !== 'not';
    return {
      pitch: pitch(letter, sign, octave),
      otherwise: null,
      after: {
        ...before,
        held: holds ? new Map([...before.held, [reach, sign]]) : before.held,
        written: holds ? new Map([...before.written, [step, sign]]) : before.written,
      },
    };
  }
  const tied = before.tied.get(step);
  const alter = tied ?? before.held.get(reach) ?? plain;
  const inOctave = tied ?? before.written.get(step) ?? plain;
  return {
    pitch: pitch(letter, alter, octave),
    otherwise: inOctave === alter ? null : pitch(letter, inOctave, octave),
    after: before,
  };
}

/** abcjs counts staff steps from middle C, which is step 28 from C0. */
const middleC = 28;

/** Reads abcjs's name of a clef. `clef=treble-8` sounds an octave lower, `+8` an octave higher (ABC 2.1, section 4.6); whatever is none of ours is treble. */
export function readClef(name = ''): Clef {
  const sign = (['alto', 'tenor', 'bass'] as const).find(s => name.startsWith(s)) ?? 'treble';
  return { sign, octave: name.endsWith('-8') ? -1 : name.endsWith('+8') ? 1 : 0 };
}

/** What `%%propagate-accidentals` says; `pitch` without it. */
export const propagationOf = (abc: string): Propagation =>
  (/^(?:%%|I:)propagate-accidentals\s+(octave|pitch|not)\b/m.exec(abc)?.[1] as
    | Propagation
    | undefined) ?? 'pitch';
