import { type MidiEvent, writeMidi } from 'midi-file';
import { type Fraction, toNumber } from '../../shared/music/fraction.ts';
import { noteAt } from '../../shared/music/note-at.ts';
import { divisionsFor } from '../../shared/music/note-values.ts';
import type { Bar, Tempo } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';
import type { Study } from '../../shared/study.ts';
import { sameMeter } from './same-signature.ts';

/** General MIDI's violin, counted from 0. */
const violin = 40;
const loudness = 84;

/**
 * Fewest ticks per crotchet; a file has as many more as its lengths need to be exact. With few, most
 * times between events take one byte, which the library writes fastest.
 */
const fewestTicks = 96;
const mostTicks = 32_767;

/** Ticks per crotchet to round lengths to, where exact ones would need more than a file can state. */
const roundedTicks = 480;

/** The parts of a study that MIDI needs. */
type Played = Pick<Study, 'tune' | 'performance'>;

/** An event with its time in ticks; at equal times in order of rank: ends, changes, beginnings. */
interface Timed {
  readonly at: number;
  readonly rank: 0 | 1 | 2;
  readonly event: MidiEvent;
}

/**
 * A tune as a standard MIDI file (format 0, one track), in played order: repeats and endings unrolled,
 * ties merged, at a steady tempo. Grace notes, which have no length of their own, are left out.
 */
export function midiFile(study: Played, tempo: Tempo): Uint8Array {
  const { tune, performance } = study;
  const exact = divisionsFor([
    ...performance.notes.flatMap(n => [n.onset, n.duration]),
    ...performance.bars.map(b => b.onset),
    performance.length,
  ]);
  const perCrotchet = exact * Math.ceil(fewestTicks / exact);
  const division = perCrotchet > mostTicks ? roundedTicks : perCrotchet;
  const ticks = ({ n, d }: Fraction): number => Math.round((n * 4 * division) / d);

  const head = (
    [
      { deltaTime: 0, meta: true, type: 'trackName', text: latin(tune.title) },
      { deltaTime: 0, meta: true, type: 'setTempo', microsecondsPerBeat: microseconds(tempo) },
      { deltaTime: 0, type: 'programChange', channel: 0, programNumber: violin },
    ] satisfies MidiEvent[]
  ).map((event): Timed => ({ at: 0, rank: 1, event }));
  const changes = signatureChanges(study).map(
    ({ onset, event }): Timed => ({ at: ticks(onset), rank: 1, event }),
  );
  const notes = performance.notes.flatMap((sounded): Timed[] => {
    const { pitches } = noteAt(tune, sounded.event);
    const from = ticks(sounded.onset);
    const to = ticks(sounded.onset) + ticks(sounded.duration);
    if (to === from) return [];
    // Two strings at the same pitch are one note here: MIDI could not tell which of them ends.
    return [...new Set(pitches.map(p => p.midi))].flatMap((midi): Timed[] => [
      { at: from, rank: 2, event: noteEvent('noteOn', midi, loudness) },
      { at: to, rank: 0, event: noteEvent('noteOff', midi, 0) },
    ]);
  });
  const timed = [...head, ...changes, ...notes].toSorted((a, b) => a.at - b.at || a.rank - b.rank);
  const end = Math.max(ticks(performance.length), timed.at(-1)?.at ?? 0);
  let now = 0;
  const track = timed.map(({ at, event }) => {
    const deltaTime = at - now;
    now = at;
    return { ...event, deltaTime };
  });
  const last: MidiEvent = { deltaTime: end - now, meta: true, type: 'endOfTrack' };
  return Uint8Array.from(
    writeMidi({
      header: { format: 0, numTracks: 1, ticksPerBeat: division },
      tracks: [[...track, last]],
    }),
  );
}

const noteEvent = (
  type: 'noteOn' | 'noteOff',
  noteNumber: number,
  velocity: number,
): MidiEvent => ({
  deltaTime: 0,
  channel: 0,
  type,
  noteNumber,
  velocity,
});

/** Microseconds per crotchet; three bytes hold them. */
const microseconds = ({ beat, bpm }: Tempo): number =>
  Math.min(0xff_ffff, Math.round(60_000_000 / (bpm * toNumber(beat) * 4)));

/** Metre and key at the beginning and at each change. MIDI states metres whose unit is a power of two. */
function signatureChanges({ tune, performance }: Played): readonly {
  readonly onset: Fraction;
  readonly event: MidiEvent;
}[] {
  const changes: { onset: Fraction; event: MidiEvent }[] = [];
  let before: Bar | null = null;
  for (const played of performance.bars) {
    const bar = at(tune.bars, played.bar);
    if (before && sameSignatures(bar, before)) continue;
    before = bar;
    const { beats, unit, free } = bar.meter;
    if (!free && Number.isInteger(Math.log2(unit)) && beats < 256) {
      const event = {
        deltaTime: 0,
        meta: true,
        type: 'timeSignature',
        numerator: beats,
        denominator: unit,
        metronome: 24,
        thirtyseconds: 8,
      } as const;
      changes.push({ onset: played.onset, event });
    }
    const scale = bar.key.mode === 'minor' ? 1 : 0;
    const key = Math.max(-7, Math.min(7, bar.key.fifths));
    changes.push({
      onset: played.onset,
      event: { deltaTime: 0, meta: true, type: 'keySignature', key, scale },
    });
  }
  return changes;
}

const sameSignatures = (a: Bar, b: Bar): boolean =>
  sameMeter(a.meter, b.meter) && a.key.fifths === b.key.fifths;

/** Text as 7-bit ASCII, the only encoding that all MIDI programs read alike. */
const latin = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/[‘’]/g, "'")
    .replace(/[^\x20-\x7e]/g, '');
