import { describe, expect, test } from 'vitest';
import { withJoins } from '../../shared/bowing/apply-edit.ts';
import { writtenSlurs } from '../../shared/bowing/written-slurs.ts';
import { editedAbc } from '../../shared/music/edited-abc.ts';
import type { NoteEvent, Tune } from '../../shared/music/tune.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { onTunes, readTunes } from '../tunes/on-tunes.ts';

const header = 'X:1\nT:Made up\nM:none\nL:1/8\nK:D\n';

function read(text: string, id = 'tune'): readonly Tune[] {
  return parseTunes({ text, file: 'test.md', line: 1, indent: 0 }, { id }).tunes;
}

function tuneOf(body: string): Tune {
  const tune = read(`${header}${body}\n`)[0];
  if (!tune) throw new Error(`cannot be read: ${body}`);
  return tune;
}

/** Notes slurred to the one before, by index of the note. */
const slurred = (body: string, joins: readonly number[]): string => {
  const tune = tuneOf(body);
  const joined = tune.events.map((_, e) => joins.includes(e));
  const text = editedAbc(tune, withJoins(tune, writtenSlurs(tune), joined));
  return text.slice(header.length).trimEnd();
};

const notes = (tune: Tune): readonly Omit<NoteEvent, 'start' | 'stop' | 'place'>[] =>
  tune.events.flatMap(e => {
    if (e.kind !== 'note') return [];
    const { start, stop, place, slursOpened, slursClosed, ...rest } = e;
    return [{ ...rest, slursOpened: 0, slursClosed: 0 }];
  });

describe('slurs written into a copy of the ABC', () => {
  test.each([
    ['a b c d|', [1], '(a b) c d|'],
    ['(abc) d|', [], 'abc d|'],
    ['(ab)cd|', [2, 3], 'a(bcd)|'],
    ['(3(def) g|', [1], '(3(de)f g|'],
    ['((3def g)a|', [1, 2], '((3def) ga|'],
    ['.c d e|', [1], '(.c d) e|'],
    ['.(cd) e|', [2], 'c(d e)|'],
    ['"G"ua "^hi (there)"b {e}~c d|', [1, 2], '"G"(ua "^hi (there)"b {e}~c) d|'],
    ['a-a b c|', [1, 2], '(a-a b) c|'],
    ['a b-b c|', [1], '(a b-)b c|'],
    ['(A>B) c<d|', [2], 'A>(B c)<d|'],
    ['[df] [eg]2 a|', [1], '([df] [eg]2) a|'],
    ['a b|c d|', [1, 2, 3], '(a b|c d)|'],
    ['c>B-B d|', [1], '(c>B-)B d|'],
    ['(c>B-)B d|', [], 'c>B-B d|'],
    ['(cBA{GA}) d|', [1], '(cB)A{GA} d|'],
    ['(cBA {GA}) d|', [2, 3], 'c(BA {GA} d)|'],
    ['c(BA{GA}) d|', [1, 2], '(cBA{GA}) d|'],
  ])('%s with %j', (body, joins, expected) => {
    expect(slurred(body, joins)).toBe(expected);
    const [from, to] = [tuneOf(body), tuneOf(expected)];
    expect(notes(to)).toEqual(notes(from));
    const read = writtenSlurs(to).joined.flatMap((x, e) => (x ? [e] : []));
    expect(read).toEqual(joins);
  });

  test('nothing is touched where the slurs stay', () => {
    const tune = tuneOf('(a b) "D"(c[ce])|(3(def) .(g a)|');
    expect(editedAbc(tune, tune)).toBe(tune.source.text);
  });

  test('other notes are refused', () => {
    expect(() => editedAbc(tuneOf('a b|'), tuneOf('a|'))).toThrow('not the same notes');
  });
});

describe.each([
  ['no slurs at all', () => false],
  ['every other junction slurred', (e: number) => e % 2 === 1],
  ['slurs of three', (e: number) => e % 3 !== 0],
])('with %s', (_, wanted) => {
  onTunes('read again, the same notes and those slurs', 5, tunes => {
    const wrong: string[] = [];
    let checked = 0;
    for (const tune of readTunes(tunes)) {
      const slurs = writtenSlurs(tune);
      if (slurs.unmatched.some(u => u.opened + u.closed > 0)) continue;
      const planned = withJoins(
        tune,
        slurs,
        tune.events.map((_, e) => joinable(tune, e) && wanted(e)),
      );
      const again = read(editedAbc(tune, planned))[0];
      checked++;
      if (!again || JSON.stringify(notes(again)) !== JSON.stringify(notes(tune))) {
        wrong.push(`${tune.title}: other notes`);
      } else if (JSON.stringify(slursOf(again)) !== JSON.stringify(slursOf(planned))) {
        wrong.push(`${tune.title}: other slurs`);
      }
    }
    expect(checked).toBeGreaterThan(50);
    expect(wrong).toEqual([]);
  });
});

const slursOf = (tune: Tune): readonly (readonly [number, number])[] =>
  tune.events.map(e => (e.kind === 'note' ? [e.slursOpened, e.slursClosed] : [0, 0]));

/**
 * Within one bar, with no rest between, so that no slur runs over a repeat sign; and not to a tied
 * note in a broken pair, since abcjs cannot read `(c>B-)`.
 */
const joinable = (tune: Tune, e: number): boolean => {
  const [before, event] = [tune.events[e - 1], tune.events[e]];
  if (before?.kind !== 'note' || event?.kind !== 'note') return false;
  const isBroken = /[<>]/.test(tune.source.text.slice(before.start, event.start));
  return !before.tied && before.bar === event.bar && !(event.tied && isBroken);
};
