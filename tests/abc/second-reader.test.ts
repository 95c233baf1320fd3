/**
 * A second reader: the sequence of pitches and lengths as played must be that of Debian's abc2midi,
 * for every tune of our own, and for at least 98.5 % of the real tunes that it reads without a fault,
 * those left out that a section of ABC 2.1 settles against it. Every real tune that differs is listed
 * here with its cause; `docs/second-reader.md` explains the causes.
 */
import { beforeEach, describe, expect, it } from 'vitest';
import { toNumber } from '../../shared/music/fraction.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { ownTunes } from '../tunes/own-tunes.ts';
import { bowedFiles, bowedTunesMissing, realFiles, realTunesMissing } from '../tunes/real-tunes.ts';
import { type HeardNote, hasAbc2midi, readWithAbc2midi } from './read-with-abc2midi.ts';

type Cause =
  | 'double bar'
  | 'part by P:'
  | 'repeat after endings'
  | 'tie into an ending'
  | 'rest in a chord'
  | 'figure before >'
  | 'accidental of a grace';

/** Causes in which a section of ABC 2.1 says that abc2midi is wrong. */
const settled: Readonly<Partial<Record<Cause, string>>> = {
  'double bar': '4.8',
  'repeat after endings': '4.8',
};

/** File and `X:` of every tune that differs, and why. */
const differences: Readonly<Record<string, Cause>> = {
  'jigs 1': 'repeat after endings',
  'jigs 2': 'repeat after endings',
  'jigs 55': 'part by P:',
  'jigs 81': 'repeat after endings',
  'jigs 130': 'double bar',
  'jigs 225': 'part by P:',
  'jigs 256': 'repeat after endings',
  'jigs 326': 'repeat after endings',
  'morris 14': 'double bar',
  'morris 16': 'double bar',
  'morris 21': 'part by P:',
  'playford 5': 'double bar',
  'reelsa-c 81': 'repeat after endings',
  'reelsd-g 8': 'repeat after endings',
  'reelsh-l 53': 'tie into an ending',
  'reelsh-l 85': 'part by P:',
  'reelsr-t 47': 'double bar',
  'reelsr-t 65': 'double bar',
  'reelsu-z 33': 'double bar',
  'slip 10': 'part by P:',
  'waltzes 19': 'double bar',
  'waltzes 30': 'double bar',
  'xmas 10': 'double bar',
  'ryan-1883 17': 'repeat after endings',
  'ryan-1883 33': 'repeat after endings',
  'ryan-1883 65': 'rest in a chord',
  'ryan-1883 103': 'repeat after endings',
  'ryan-1883 144': 'figure before >',
  'ryan-1883 147': 'repeat after endings',
  'ryan-1883 175': 'double bar',
  'ryan-1883 198': 'accidental of a grace',
  'ryan-1883 199': 'repeat after endings',
  'ryan-1883 250': 'repeat after endings',
  'ryan-1883 258': 'repeat after endings',
  'ryan-1883 321': 'repeat after endings',
  'ryan-1883 326': 'double bar',
  'ryan-1883 360': 'double bar',
  'ryan-1883 367': 'repeat after endings',
  'ryan-1883 393': 'repeat after endings',
  'ryan-1883 427': 'double bar',
};

const why = hasAbc2midi() ? null : 'skipped: no abc2midi (Debian’s abcmidi)';

describe('abc2midi', () => {
  beforeEach(context => context.skip(why !== null, why ?? ''));

  it('plays what we play of every tune of our own', { timeout: 600_000 }, () => {
    const differing = ownTunes.filter(
      ({ name, abc }) => !isReadAlike(name, abc, readWithAbc2midi(abc).notes),
    );
    expect(differing.map(t => t.name)).toEqual([]);
  });

  it('plays what we play of real tunes, but for those listed', { timeout: 600_000 }, context => {
    const missing = realTunesMissing ?? bowedTunesMissing;
    context.skip(missing !== null, missing ?? '');
    const differing: string[] = [];
    const faults: Record<Fault, number> = { voices: 0, 'order of parts': 0, malformed: 0 };
    let readWell = 0;
    for (const { name, abc } of namedTunes()) {
      const theirs = readWithAbc2midi(abc);
      const fault = faultOf(abc, theirs.errors);
      if (fault !== null) faults[fault] += 1;
      else {
        readWell += 1;
        if (!isReadAlike(name, abc, theirs.notes)) differing.push(name);
      }
    }
    expect(differing.sort()).toEqual(Object.keys(differences).sort());
    expect({ readWell, ...faults }).toEqual({
      readWell: 1494,
      voices: 0,
      'order of parts': 2,
      malformed: 63,
    });
    const open = differing.filter(name => !settled[differences[name] ?? 'part by P:']).length;
    expect(1 - open / (readWell - differing.length + open)).toBeGreaterThanOrEqual(0.985);
  });
});

type Fault = 'voices' | 'order of parts' | 'malformed';

/** What keeps abc2midi from being a judge of a tune: several voices, or an error of its own; null where nothing does. */
function faultOf(abc: string, errors: readonly string[]): Fault | null {
  if (/^V:|\[V:/m.test(abc)) return 'voices';
  const error = errors.find(e => !e.startsWith('Warning'));
  if (error === undefined) return null;
  return /part specification|P: field/.test(error) ? 'order of parts' : 'malformed';
}

function isReadAlike(name: string, abc: string, theirs: readonly HeardNote[]): boolean {
  const [tune] = parseTunes({ text: abc, file: name, line: 1, indent: 0 }).tunes;
  return tune !== undefined && alike(heard(tune), inOrder(theirs));
}

/** Real tunes by file and `X:`. */
const namedTunes = (): { readonly name: string; readonly abc: string }[] =>
  [...realFiles(), ...bowedFiles()].flatMap(({ name: file, text }) =>
    text
      .replace(/\r\n/g, '\n')
      .split(/^(?=X:)/m)
      .filter(text => text.startsWith('X:'))
      .map(text => ({
        name: `${file.replace('.abc', '')} ${/^X: *(\d+)/.exec(text)?.[1] ?? ''}`,
        abc: text.replace(/\n[ \t]*\n[\s\S]*$/, '\n'),
      })),
  );

/** Our reading as abc2midi would sound it: a chord's two like pitches are one. */
function heard(tune: Tune): readonly HeardNote[] {
  const notes = playedOrder(tune).notes.flatMap(note => {
    const event = tune.events[note.event];
    const keys = event?.kind === 'note' ? [...new Set(event.pitches.map(p => p.midi))] : [];
    return keys.map(midi => ({
      midi,
      onset: toNumber(note.onset) * 1920,
      duration: toNumber(note.duration) * 1920,
    }));
  });
  return inOrder(notes);
}

const inOrder = (notes: readonly HeardNote[]): readonly HeardNote[] =>
  [...notes].sort((a, b) => Math.round(a.onset / 4) - Math.round(b.onset / 4) || a.midi - b.midi);

/** MIDI counts in whole ticks of 1/480 of a crotchet; tuplets may be rounded twice. */
const close = (a: number, b: number): boolean => Math.abs(a - b) <= 4;

const alike = (ours: readonly HeardNote[], theirs: readonly HeardNote[]): boolean =>
  ours.length === theirs.length &&
  ours.every((note, i) => {
    const other = theirs[i];
    return (
      other !== undefined &&
      note.midi === other.midi &&
      close(note.onset, other.onset) &&
      close(note.duration, other.duration)
    );
  });
