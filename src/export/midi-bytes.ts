/**
 * Standard MIDI files, version 1.0, as bytes: the messages that a tune needs, and the file around
 * them. A message is its status byte and what follows it.
 */
export type MidiMessage = readonly number[];

export const noteOn = (key: number, velocity: number): MidiMessage => [0x90, key, velocity];
export const noteOff = (key: number): MidiMessage => [0x80, key, 0];
export const programChange = (program: number): MidiMessage => [0xc0, program];

/** Messages that are for programs and not heard: 0xff, the kind, the length and what they say. */
const meta = (kind: number, said: readonly number[]): MidiMessage => [
  0xff,
  kind,
  ...variableLength(said.length),
  ...said,
];

/** `text` in 7-bit signs: a byte a letter. */
export const trackName = (text: string): MidiMessage =>
  meta(
    0x03,
    Array.from(text, sign => sign.charCodeAt(0)),
  );

/** Microseconds a crotchet. */
export const setTempo = (microseconds: number): MidiMessage =>
  meta(0x51, bigEndian(microseconds, 3));

/** `unit` is a power of two. 24 MIDI clocks a click, and 8 demisemiquavers a crotchet, as is usual. */
export const timeSignature = (beats: number, unit: number): MidiMessage =>
  meta(0x58, [beats, Math.log2(unit), 24, 8]);

/** Sharps, or flats below 0. */
export const keySignature = (fifths: number, isMinor: boolean): MidiMessage =>
  meta(0x59, [fifths & 0xff, isMinor ? 1 : 0]);

const endOfTrack: MidiMessage = meta(0x2f, []);

/** A message at its time in ticks. */
export interface TimedMessage {
  readonly at: number;
  readonly message: MidiMessage;
}

/** A file of one track, which ends at `end`; messages in order of time, `division` ticks a crotchet. */
export function midiBytes(
  division: number,
  messages: readonly TimedMessage[],
  end: number,
): Uint8Array {
  const track: number[] = [];
  let now = 0;
  for (const { at, message } of [...messages, { at: end, message: endOfTrack }]) {
    track.push(...variableLength(at - now), ...message);
    now = at;
  }
  const header = [...bigEndian(0, 2), ...bigEndian(1, 2), ...bigEndian(division, 2)];
  return new Uint8Array([...chunk('MThd', header), ...chunk('MTrk', track)]);
}

const chunk = (name: string, data: readonly number[]): readonly number[] => [
  ...Array.from(name, sign => sign.charCodeAt(0)),
  ...bigEndian(data.length, 4),
  ...data,
];

/** A number in so many bytes, the highest first. */
const bigEndian = (value: number, bytes: number): readonly number[] =>
  Array.from({ length: bytes }, (_, i) => (value >> (8 * (bytes - 1 - i))) & 0xff);

/** Seven bits a byte, the highest first; the high bit says that another byte follows. */
function variableLength(value: number): readonly number[] {
  const bytes = [value & 0x7f];
  for (let rest = value >> 7; rest > 0; rest >>= 7) bytes.unshift((rest & 0x7f) | 0x80);
  return bytes;
}
