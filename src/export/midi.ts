import { type Fraction, toNumber } from '../../shared/music/fraction.ts';
import type { Bar, Tempo } from '../../shared/music/tune.ts';
import type { Study } from '../../shared/study.ts';
import {
  keySignature,
  type MidiMessage,
  midiBytes,
  noteOff,
  noteOn,
  programChange,
  setTempo,
  type TimedMessage,
  timeSignature,
  trackName,
} from './midi-bytes.ts';
import { divisionsFor } from './note-values.ts';
import { sameMeter } from './same-signature.ts';

/** General MIDI's violin, counted from 0. */
const violin = 40;
const loudness = 84;

/** Ticks a crotchet: at least this many, and as many more as the lengths need to be exact. */
const fewestTicks = 480;
const mostTicks = 32_767;

/** What of a study is heard. */
type Played = Pick<Study, 'tune' | 'performance'>;

/** At one time, ends stand before changes and changes before beginnings. */
interface Ranked extends TimedMessage {
  readonly rank: 0 | 1 | 2;
}

/**
 * A tune as a standard MIDI file of one track, in played order: repeats and endings unrolled, ties
 * merged, at a steady tempo. Grace notes, which have no length of their own, are left out.
 */
export function midiFile(study: Played, tempo: Tempo): Uint8Array {
  const { tune, performance } = study;
  const exact = divisionsFor([
    ...performance.notes.map(n => n.onset),
    ...performance.notes.map(n => n.duration),
    ...performance.bars.map(b => b.onset),
    performance.length,
  ]);
  const perCrotchet = exact * Math.ceil(fewestTicks / exact);
  const division = perCrotchet > mostTicks ? fewestTicks : perCrotchet;
  const ticks = ({ n, d }: Fraction): number => Math.round((n * 4 * division) / d);

  const ranked: Ranked[] = [
    { at: 0, rank: 1, message: trackName(latin(tune.title)) },
    { at: 0, rank: 1, message: setTempo(microseconds(tempo)) },
    { at: 0, rank: 1, message: programChange(violin) },
  ];
  for (const { onset, message } of signatureChanges(study)) {
    ranked.push({ at: ticks(onset), rank: 1, message });
  }
  for (const sounded of performance.notes) {
    const event = tune.events[sounded.event];
    if (event?.kind !== 'note') continue;
    const from = ticks(sounded.onset);
    const to = from + ticks(sounded.duration);
    if (to === from) continue;
    // Two strings at the same pitch are one note here: MIDI could not tell which of them ends.
    for (const midi of new Set(event.pitches.map(p => p.midi))) {
      ranked.push({ at: from, rank: 2, message: noteOn(midi, loudness) });
      ranked.push({ at: to, rank: 0, message: noteOff(midi) });
    }
  }
  ranked.sort((a, b) => a.at - b.at || a.rank - b.rank);
  return midiBytes(division, ranked, Math.max(ticks(performance.length), ranked.at(-1)?.at ?? 0));
}

/** Microseconds a crotchet. */
const microseconds = ({ beat, bpm }: Tempo): number =>
  Math.round(60_000_000 / (bpm * toNumber(beat) * 4));

/** Metre and key where the performance begins and wherever they change; MIDI has powers of two only. */
function signatureChanges({ tune, performance }: Played): readonly {
  readonly onset: Fraction;
  readonly message: MidiMessage;
}[] {
  const changes: { onset: Fraction; message: MidiMessage }[] = [];
  let before: Bar | null = null;
  for (const { bar: b, onset } of performance.bars) {
    const bar = tune.bars[b];
    if (!bar || (before && sameSignatures(bar, before))) continue;
    before = bar;
    const { beats, unit, free } = bar.meter;
    if (!free && Number.isInteger(Math.log2(unit)) && beats < 256) {
      changes.push({ onset, message: timeSignature(beats, unit) });
    }
    const fifths = Math.max(-7, Math.min(7, bar.key.fifths));
    changes.push({ onset, message: keySignature(fifths, bar.key.mode === 'minor') });
  }
  return changes;
}

const sameSignatures = (a: Bar, b: Bar): boolean =>
  sameMeter(a.meter, b.meter) && a.key.fifths === b.key.fifths;

/** Text in MIDI is a byte a letter, and 7-bit signs alone are sure to be read everywhere. */
const latin = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/[‘’]/g, "'")
    .replace(/[^\x20-\x7e]/g, '');
