import { limits } from '../../shared/limits.ts';
import { fifthsOf, noKey, signatureOf } from '../../shared/music/key-names.ts';
import { freeMeter } from '../../shared/music/meter.ts';
import type { Letter } from '../../shared/music/pitch.ts';
import type { Key, Meter } from '../../shared/music/tune.ts';
import type { RawKey, RawMeter } from './abcjs-parse.ts';

const modes: Readonly<Record<string, Key['mode']>> = {
  '': 'major',
  m: 'minor',
  Dor: 'dorian',
  Phr: 'phrygian',
  Lyd: 'lydian',
  Mix: 'mixolydian',
  Loc: 'locrian',
};

export const alterOf: Readonly<Record<string, number>> = {
  dblflat: -2,
  flat: -1,
  natural: 0,
  sharp: 1,
  dblsharp: 2,
};

/** Reads abcjs's `key`, which may be missing; its accidentals already hold those that `K:` adds by hand. */
export function readKey(raw: RawKey | undefined): Key {
  const root = raw?.root;
  if (!raw || root === undefined || root === 'none') {
    return raw ? { ...noKey, alters: altersOf(raw) } : noKey;
  }
  // The Highland pipes' scale: F and C are sharp (ABC 2.1, section 3.1.14).
  if (/^hp$/i.test(root)) {
    const written = root === 'HP' ? noKey.fifths : 2;
    return { tonic: 'A', mode: 'mixolydian', fifths: written, alters: signatureOf(2) };
  }
  const tonic = `${root}${raw.acc ?? ''}`;
  const mode = modes[raw.mode ?? ''] ?? 'major';
  return { tonic, mode, fifths: fifthsOf(tonic, mode), alters: altersOf(raw) };
}

function altersOf(raw: RawKey): Record<Letter, number> {
  const alters = signatureOf(0);
  for (const a of raw.accidentals ?? []) {
    const letter = a.note.toUpperCase() as Letter;
    if (letter in alters) alters[letter] = alterOf[a.acc] ?? 0;
  }
  return alters;
}

/** Reads abcjs's `meter`: `2+3/8` is five quavers; a missing or impossible one is no metre. */
export function readMeter(raw: RawMeter | undefined): Meter {
  if (raw?.type === 'common_time') return { beats: 4, unit: 4, sign: 'common', free: false };
  if (raw?.type === 'cut_time') return { beats: 2, unit: 2, sign: 'cut', free: false };
  let [beats, unit] = [0, 0];
  for (const { num, den } of raw?.value ?? []) {
    const count = num.split('+').reduce((sum, n) => sum + Number.parseInt(n, 10), 0);
    const lower = Number.parseInt(den ?? '4', 10);
    const common = Math.max(unit, lower);
    beats = (unit === 0 ? 0 : (beats * common) / unit) + (count * common) / lower;
    unit = common;
  }
  const isCount = (n: number, most: number) => Number.isInteger(n) && n > 0 && n <= most;
  const sound = isCount(beats, limits.beats) && isCount(unit, 64);
  return sound ? { beats, unit, sign: null, free: false } : freeMeter;
}
