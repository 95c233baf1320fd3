import { type Letter, letters, type Pitch, pitch } from '../../shared/music/pitch.ts';
import type { Key } from '../../shared/music/tune.ts';
import type { RawPitch } from './abcjs-parse.ts';
import { alterOf } from './read-key.ts';

/**
 * Pitches as they sound. An accidental holds for its letter, in every octave, until the bar line
 * (`%%propagate-accidentals`, whose default is `pitch`: ABC 2.1, section 11.3), and past it only
 * for the note that a tie leads to: in `^f-|f f` the first f of the second bar is sharp, the next
 * is not.
 */
export interface Accidentals {
  /** By letter, or by letter and octave, as they propagate. */
  readonly held: ReadonlyMap<string, number>;
  /** By letter and octave, whatever is said about propagation. */
  readonly written: ReadonlyMap<string, number>;
  /** Of the note before, where it is tied on: by letter and octave. */
  readonly tied: ReadonlyMap<string, number>;
}

export const noAccidentals: Accidentals = { held: new Map(), written: new Map(), tied: new Map() };

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
  const step = raw.pitch + middleC;
  const letter = letters[((step % 7) + 7) % 7] as Letter;
  const octave = Math.floor(step / 7) + context.octaves;
  const name = `${letter}${octave}`;
  const reach = context.propagation === 'pitch' ? letter : name;
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
        written: holds ? new Map([...before.written, [name, sign]]) : before.written,
      },
    };
  }
  const tied = before.tied.get(name);
  const alter = tied ?? before.held.get(reach) ?? plain;
  const inOctave = tied ?? before.written.get(name) ?? plain;
  return {
    pitch: pitch(letter, alter, octave),
    otherwise: inOctave === alter ? null : pitch(letter, inOctave, octave),
    after: before,
  };
}

/** abcjs counts staff steps from middle C, which is step 28 from C0. */
const middleC = 28;

export const tiedName = (p: Pitch): string => `${p.letter}${p.octave}`;

/** `clef=treble-8` sounds an octave lower, `+8` an octave higher (ABC 2.1, section 4.6). */
export const clefOctaves = (clef: string | undefined): number =>
  clef?.endsWith('-8') ? -1 : clef?.endsWith('+8') ? 1 : 0;

export const propagationOf = (abc: string): Propagation =>
  (/^(?:%%|I:)propagate-accidentals\s+(octave|pitch|not)\b/m.exec(abc)?.[1] as
    | Propagation
    | undefined) ?? 'pitch';
