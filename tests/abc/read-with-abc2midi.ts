import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readMidi } from './read-midi.ts';

/** A note as it is heard; times in 1/480 of a crotchet. */
export interface HeardNote {
  readonly midi: number;
  readonly onset: number;
  readonly duration: number;
}

export interface SecondReading {
  readonly notes: readonly HeardNote[];
  /** What abc2midi complained of. */
  readonly errors: readonly string[];
}

export const hasAbc2midi = (): boolean => spawnSync('abc2midi', ['-ver']).error === undefined;

/**
 * Reads one tune with Debian's abc2midi. It sees a copy without what it plays in its own way:
 * `R:` (it swings hornpipes), grace notes, staccato dots, rolls and trills, chord symbols; and without
 * what is not compared and may be where it wants none: bow signs, figures, decorations, slurs, and
 * letters of the teacher's own (section 4.16).
 */
export function readWithAbc2midi(abc: string): SecondReading {
  const folder = mkdtempSync(join(tmpdir(), 'bowbook-'));
  try {
    writeFileSync(join(folder, 'tune.abc'), comparisonCopy(abc));
    const { stdout, stderr } = spawnSync(
      'abc2midi',
      ['tune.abc', '-NGUI', '-NFER', '-o', 't.mid'],
      {
        cwd: folder,
        encoding: 'utf8',
        timeout: 20_000,
      },
    );
    const errors = `${stdout}\n${stderr}`.split('\n').filter(line => /^(Error|Warning)/.test(line));
    const path = join(folder, 't.mid');
    if (!existsSync(path)) return { notes: [], errors: [...errors, 'nothing was written'] };
    const { division, notes } = readMidi(readFileSync(path));
    const ticks = (t: number): number => (t * 480) / division;
    return {
      errors,
      // Every note but the first of all begins a tick late.
      notes: notes.map(n => ({
        midi: n.key,
        onset: ticks(n.start - 1),
        duration: ticks(n.end - n.start + 1),
      })),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** An inline field is kept; of a comment, nothing is. */
const notCompared =
  /(\[[A-Za-z]:[^\]]*\])|"[^"]*"|![^!]*!|\{[^}]*\}|%.*|[~H-Yh-wy]|\.|\((?!\d)|\)/g;

export function comparisonCopy(abc: string): string {
  return abc
    .split('\n')
    .filter(line => !/^(R|Y|w|W|N|S|%%MIDI)/.test(line) || /^[A-Z][^:]/.test(line))
    .map(line =>
      /^([A-Za-z]:|%)/.test(line) && !/^[A-G]:[|:]/.test(line)
        ? line
        : line.replace(notCompared, (_, field: string | undefined) => field ?? ''),
    )
    .join('\n')
    .replace(/^K:.*$/m, '$&\n%%MIDI chordattack 0');
}
