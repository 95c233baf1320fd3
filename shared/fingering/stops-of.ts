import { diatonic, type Pitch } from '../music/pitch.ts';
import { at } from '../must.ts';
import { fingerOf, lies, reach } from './finger-of.ts';
import type { Stop, Tuning } from './fingering.ts';

/** A way to play a note or chord: a stop for each of its pitches, lowest first. */
export interface Hold {
  readonly stops: readonly Stop[];
  /** Its lowest- and highest-numbered strings. */
  readonly top: number;
  readonly bottom: number;
  /** What it costs the left hand, whatever stands before it. */
  readonly cost: number;
}

/** Cost of fingers 1 to 3. */
const easy = 1;
/** Cost of the fourth finger, and of any finger on a pitch that an open string has. */
const reluctant = 6;

/**
 * Every place in first position where one pitch can be stopped, highest string first. Written
 * `fingers` add the other fingers that can lie there.
 */
export function stopsOf(p: Pitch, tuning: Tuning, fingers: readonly number[] = []): Stop[] {
  return tuning.flatMap((open, i) => {
    const finger = fingerOf(p, open);
    if (finger === null) return [];
    const semitones = p.midi - open.midi;
    const others = fingers.filter(f => f !== finger && lies(f, semitones));
    return [finger, ...new Set(others)].map(f => ({
      string: i + 1,
      finger: f,
      semitones,
      stretched: semitones === reach,
    }));
  });
}

/**
 * Every way to hold pitches (lowest first) on as many strings, a lower pitch on a lower string.
 * `neighbours` asks that the strings lie side by side, as a bow needs them.
 */
export function holdsOf(
  pitches: readonly Pitch[],
  tuning: Tuning,
  fingers: readonly number[],
  neighbours: boolean,
): Hold[] {
  let partial: Stop[][] = [[]];
  for (const p of pitches) {
    const stops = stopsOf(p, tuning, fingers);
    partial = partial.flatMap(held =>
      stops.filter(s => fits(held.at(-1), s, neighbours)).map(s => [...held, s]),
    );
  }
  return partial.map(stops => ({
    stops,
    top: Math.min(...stops.map(s => s.string)),
    bottom: Math.max(...stops.map(s => s.string)),
    cost: holdCost(stops, pitches, tuning),
  }));
}

const fits = (below: Stop | undefined, s: Stop, neighbours: boolean): boolean =>
  below === undefined || (neighbours ? below.string === s.string + 1 : below.string > s.string);

function holdCost(stops: readonly Stop[], pitches: readonly Pitch[], tuning: Tuning): number {
  let cost = 0;
  stops.forEach((s, i) => {
    const [p, open] = [at(pitches, i), at(tuning, s.string - 1)];
    const below = stops[i - 1];
    const steps = diatonic(p) - diatonic(open);
    const openElsewhere = tuning.some(t => t.midi === p.midi);
    if (s.finger > 0) cost += s.finger === 4 || openElsewhere ? reluctant : easy;
    // High C on the E string; D sharp by the fourth finger on the G string is spared this.
    if (s.stretched && steps > 4) cost += 6;
    // D sharp on the D string: the first finger slides back to where its letter is not.
    if (s.finger > 0 && steps === 0) cost += 2;
    if (below && s.finger > 0 && below.finger === s.finger && below.semitones !== s.semitones) {
      cost += 4;
    }
  });
  return cost;
}
