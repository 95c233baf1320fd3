/**
 * Notes of a standard MIDI file, as `abc2midi` writes them: enough of the format (chunks, running
 * status, variable-length numbers) to read note-ons and note-offs. Times are in ticks.
 */
export interface MidiNote {
  readonly track: number;
  readonly channel: number;
  readonly key: number;
  readonly start: number;
  readonly end: number;
}

export interface MidiFile {
  /** Ticks a crotchet. */
  readonly division: number;
  readonly notes: readonly MidiNote[];
}

export function readMidi(bytes: Uint8Array): MidiFile {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const division = view.getUint16(12);
  const notes: MidiNote[] = [];
  let at = 8 + view.getUint32(4);
  for (let track = 0; at < bytes.length; track++) {
    const length = view.getUint32(at + 4);
    readTrack(bytes.subarray(at + 8, at + 8 + length), track, notes);
    at += 8 + length;
  }
  notes.sort((a, b) => a.start - b.start || a.key - b.key);
  return { division, notes };
}

function readTrack(bytes: Uint8Array, track: number, notes: MidiNote[]): void {
  const sounding = new Map<number, number>();
  let at = 0;
  let time = 0;
  let status = 0;
  const number = (): number => {
    let value = 0;
    for (;;) {
      const byte = bytes[at++] ?? 0;
      value = value * 128 + (byte & 0x7f);
      if (byte < 0x80) return value;
    }
  };
  while (at < bytes.length) {
    time += number();
    const next = bytes[at] ?? 0;
    if (next >= 0x80) {
      status = next;
      at += 1;
    }
    if (status === 0xff) {
      at += 1;
      const length = number();
      at += length;
    } else if (status === 0xf0 || status === 0xf7) {
      const length = number();
      at += length;
    } else {
      const kind = status & 0xf0;
      const key = bytes[at] ?? 0;
      const velocity = bytes[at + 1] ?? 0;
      at += kind === 0xc0 || kind === 0xd0 ? 1 : 2;
      const name = (status & 0x0f) * 128 + key;
      if (kind === 0x90 && velocity > 0) sounding.set(name, time);
      else if (kind === 0x80 || kind === 0x90) {
        const start = sounding.get(name);
        sounding.delete(name);
        if (start !== undefined) {
          notes.push({ track, channel: status & 0x0f, key, start, end: time });
        }
      }
    }
  }
}
