import { limits } from '../../shared/limits.ts';
import { type Fraction, fromFloat, parseFraction } from '../../shared/music/fraction.ts';
import { defaultUnit } from '../../shared/music/meter.ts';
import type { AbcCredits, Meter, Tempo } from '../../shared/music/tune.ts';
import type { RawMeta, RawTune } from './abcjs-parse.ts';

/** `C:`, `O:`, `S:`, `B:`, `Z:` and `N:` as written, several lines of one joined. */
export const readCredits = (meta: RawMeta): AbcCredits => ({
  composer: fieldText(meta.composer),
  origin: fieldText(meta.origin),
  source: fieldText(meta.source),
  book: fieldText(meta.book),
  transcription: fieldText(meta.transcription),
  notes: fieldText(meta.notes),
});

/** A field's text; abcjs gives strings, or lists of strings and of pieces with a font. */
export function fieldText(value: unknown): string | null {
  if (typeof value === 'string') return value.trim() || null;
  if (Array.isArray(value)) {
    const pieces = value.map(fieldText).filter(piece => piece !== null);
    return pieces.length > 0 ? pieces.join(' ') : null;
  }
  if (typeof value === 'object' && value !== null && 'text' in value) return fieldText(value.text);
  return null;
}

/** Further `T:` lines of the header: titles that stand before the first music. */
export function readAliases(tune: RawTune): readonly string[] {
  const music = tune.lines.findIndex(line => line.staff !== undefined);
  return tune.lines
    .slice(0, music < 0 ? undefined : music)
    .flatMap(line => fieldText(line.subtitle?.text) ?? []);
}

/** `Q:` where it gives a speed; null where it has words only. */
export function readTempo(raw: RawMeta['tempo'], unit: Fraction): Tempo | null {
  if (!raw?.bpm || !Number.isFinite(raw.bpm)) return null;
  const beat = (raw.duration ?? []).reduce((sum, d) => sum + d, 0);
  const isLength = beat > 0 && beat <= limits.noteLength;
  return { beat: isLength ? fromFloat(beat) : unit, bpm: raw.bpm };
}

/** `L:` of the header, else what the metre makes it (ABC 2.1, section 3.1.7). */
export function readUnit(abc: string, meter: Meter): Fraction {
  const key = abc.search(/^K:/m);
  const header = key < 0 ? abc : abc.slice(0, key);
  const written = [...header.matchAll(/^L:\s*([\d/ ]+)/gm)].at(-1)?.[1];
  const unit = written === undefined ? null : parseFraction(written.replace(/ /g, ''));
  return unit && unit.n > 0 ? unit : defaultUnit(meter);
}
