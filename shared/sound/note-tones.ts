import { letters, type Pitch, pitch } from '../music/pitch.ts';
import type { Key, NoteEvent } from '../music/tune.ts';
import { at } from '../must.ts';
import type { Tone } from './sounding.ts';

/** A cut lasts so many seconds at most: short enough to be heard as an edge, not as a note. */
const cutLength = 0.045;
/** A chord of three or four strings is broken: the lower two, then the upper two. */
const breakLength = 0.09;
/** One note of a trill. */
const trillLength = 0.085;

/**
 * The tones of one sounded note, all in its own stroke: grace notes on the beat, rolls, trills,
 * mordents and turns played out, chords as double stops. A roll of `G` is G, a cut with the note
 * above, G, a tap with the note below, G, the three G sharing the time; a treble is written out as
 * three notes and needs nothing here. How each is played is common practice.
 */
export function noteTones(
  note: NoteEvent,
  key: Key,
  at: number,
  until: number,
  accent: number,
): readonly Tone[] {
  const length = until - at;
  const main = note.pitches.map(p => p.midi);
  const tones: Tone[] = [];
  const sound = (from: number, pitches: readonly number[]): void => {
    tones.push({ at: from, pitches, accent, stopped: false });
  };
  const grace = Math.min(cutLength, length / (2 * Math.max(1, note.graces.length)));
  note.graces.forEach((g, i) => {
    sound(at + i * grace, [g.midi]);
  });
  const from = at + note.graces.length * grace;
  const top = note.pitches.at(-1);
  if (!note.ornament || !top) return [...tones, ...chordTones(main, from, until, accent)];
  const [above, below] = [neighbour(top, key, 1), neighbour(top, key, -1)];
  const short = Math.min(cutLength, (until - from) / 8);
  sound(from, main);
  switch (note.ornament) {
    case 'roll':
      sound(from + (until - from) / 3, [above]);
      sound(from + (until - from) / 3 + short, main);
      sound(from + ((until - from) * 2) / 3, [below]);
      sound(from + ((until - from) * 2) / 3 + short, main);
      break;
    case 'trill':
      for (let t = from + trillLength, i = 0; t < until - trillLength; t += trillLength, i++) {
        sound(t, i % 2 === 0 ? [above] : main);
      }
      break;
    case 'mordent':
      sound(from + short, [below]);
      sound(from + 2 * short, main);
      break;
    case 'turn':
      [[above], main, [below], main].forEach((pitches, i) => {
        sound(from + ((until - from) * (i + 1)) / 5, pitches);
      });
      break;
  }
  return tones;
}

/** One or two pitches as they are; more are broken upward. */
function chordTones(
  pitches: readonly number[],
  at: number,
  until: number,
  accent: number,
): readonly Tone[] {
  if (pitches.length <= 2) return [{ at, pitches, accent, stopped: false }];
  const later = at + Math.min(breakLength, (until - at) / 3);
  return [
    { at, pitches: pitches.slice(0, 2), accent, stopped: false },
    { at: later, pitches: pitches.slice(-2), accent, stopped: false },
  ];
}

/** The next note of the key, up or down. */
function neighbour({ letter, octave }: Pitch, key: Key, by: 1 | -1): number {
  const step = letters.indexOf(letter) + by;
  const next = at(letters, (step + 7) % 7);
  return pitch(next, key.alters[next], octave + Math.floor(step / 7)).midi;
}
