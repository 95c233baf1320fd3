import { parseMidi } from 'midi-file';
import { beforeAll, describe, expect, it } from 'vitest';
import { multiply, toNumber } from '../../shared/music/fraction.ts';
import type { Study } from '../../shared/study.ts';
import { midiFile } from '../../src/export/midi.ts';
import { readMidi } from '../abc/read-midi.ts';
import { onTunes } from '../tunes/on-tunes.ts';
import { demoStudies, studiesOf, studyText } from './exported-studies.ts';

const tempo = { beat: { n: 3, d: 8 }, bpm: 88 };

interface Heard {
  readonly midi: number;
  /** In crotchets. */
  readonly onset: number;
  readonly duration: number;
}

/** What the played order of a study says is heard: each pitch once. */
function played({ tune, performance }: Study): Heard[] {
  const crotchets = (t: { n: number; d: number }): number => toNumber(multiply(t, { n: 4, d: 1 }));
  return performance.notes
    .flatMap(n => {
      const event = tune.events[n.event];
      const pitches = event?.kind === 'note' ? new Set(event.pitches.map(p => p.midi)) : [];
      return [...pitches].map(midi => ({
        midi,
        onset: crotchets(n.onset),
        duration: crotchets(n.duration),
      }));
    })
    .filter(n => n.duration > 0)
    .toSorted((a, b) => a.onset - b.onset || a.midi - b.midi);
}

/** The same, heard by npm `midi-file`. */
function heardByMidiFile(bytes: Uint8Array): Heard[] {
  const { header, tracks } = parseMidi(bytes);
  const division = header.ticksPerBeat ?? Number.NaN;
  const sounding = new Map<number, number>();
  const heard: Heard[] = [];
  let now = 0;
  for (const event of tracks[0] ?? []) {
    now += event.deltaTime;
    if (event.type === 'noteOn' && event.velocity > 0) sounding.set(event.noteNumber, now);
    else if (event.type === 'noteOff' || event.type === 'noteOn') {
      const from = sounding.get(event.noteNumber) ?? Number.NaN;
      const [onset, duration] = [from / division, (now - from) / division];
      heard.push({ midi: event.noteNumber, onset, duration });
    }
  }
  return heard.toSorted((a, b) => a.onset - b.onset || a.midi - b.midi);
}

/** The same, heard by the tests' own reader, which reads abc2midi's files too. */
function heardByReader(bytes: Uint8Array): Heard[] {
  const { division, notes } = readMidi(bytes);
  return notes.map(n => ({
    midi: n.key,
    onset: n.start / division,
    duration: (n.end - n.start) / division,
  }));
}

function compareStudy(study: Study): void {
  const bytes = midiFile(study, tempo);
  const { title } = study.tune;
  const wanted = played(study);
  for (const heard of [heardByMidiFile(bytes), heardByReader(bytes)]) {
    expect([title, heard.map(inMillionths)]).toEqual([title, wanted.map(inMillionths)]);
  }
}

/** Millionths of a crotchet: far finer than a tick, far coarser than a float. */
const inMillionths = ({ midi, onset, duration }: Heard): readonly number[] => [
  midi,
  Math.round(onset * 1e6),
  Math.round(duration * 1e6),
];

describe('MIDI in played order', () => {
  let demo: readonly Study[];
  beforeAll(async () => {
    demo = await demoStudies();
  });

  it('is the played order of every tune of the demo book', () => {
    for (const study of demo) compareStudy(study);
  });

  onTunes('is that of every tune', 4, tunes => {
    for (const study of studiesOf(tunes)) compareStudy(study);
  });

  it('plays each ending, merges ties, keeps odd lengths and rests', () => {
    compareStudy(
      studyText('X:1\nM:4/4\nL:1/8\nK:D\n(3DEF|:A2 z2 (5ABcde f-|[1 f4 A/3B/3c/3 d3:|[2 f8|]\n'),
    );
  });

  it('is at the tempo given, in the key and metre of the tune', () => {
    const { header, tracks } = parseMidi(
      midiFile(studyText('X:1\nT:Ärger & Ödnis\nM:6/8\nL:1/8\nK:Em\nEFG ABc|\n'), tempo),
    );
    expect(header.format).toBe(0);
    // 88 dotted crotchets a minute are 132 crotchets: 454 545 microseconds each.
    expect(tracks[0]).toMatchObject([
      { type: 'trackName', text: 'Arger & Odnis' },
      { type: 'setTempo', microsecondsPerBeat: 454_545 },
      { type: 'programChange', programNumber: 40 },
      { type: 'timeSignature', numerator: 6, denominator: 8 },
      { type: 'keySignature', key: 1, scale: 1 },
      ...Array.from({ length: 12 }, () => ({})),
      { type: 'endOfTrack' },
    ]);
  });
});
