import { fractionText } from '../../shared/music/fraction.ts';
import { pitchName } from '../../shared/music/pitch.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import type { NoteEvent, Tune } from '../../shared/music/tune.ts';
import type { Problem } from '../../shared/problem.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';

/** Reads the one tune of `abc`, as if its fence began on line 1 of `tune.md`. */
export function readTune(abc: string): {
  readonly tune: Tune;
  readonly problems: readonly Problem[];
} {
  const { tunes, problems } = parseTunes({ text: abc, file: 'tune.md', line: 1, indent: 0 });
  const [tune] = tunes;
  if (!tune) throw new Error(`no tune was read: ${JSON.stringify(problems)}`);
  return { tune, problems };
}

export const notesOf = (tune: Tune): readonly NoteEvent[] =>
  tune.events.filter(e => e.kind === 'note');

/** `1/8 3/16`: lengths of the notes, in whole notes. */
export const lengths = (abc: string): string =>
  notesOf(readTune(abc).tune)
    .map(n => fractionText(n.duration))
    .join(' ');

/** `F#4 E4`: lowest pitch of each note. */
export const names = (abc: string): string =>
  notesOf(readTune(abc).tune)
    .map(n => n.pitches.map(pitchName).join('+'))
    .join(' ');

/** Names of the bars in the order played: `A0 A1 A1`. */
export const playedBars = (abc: string): string => {
  const { tune } = readTune(abc);
  return playedOrder(tune)
    .bars.map(b => tune.bars[b.bar]?.name)
    .join(' ');
};

/** MIDI numbers as sounded, ties merged. */
export const sounded = (abc: string): readonly number[] => {
  const { tune } = readTune(abc);
  return playedOrder(tune).notes.flatMap(n => {
    const event = tune.events[n.event];
    return event?.kind === 'note' ? event.pitches.map(p => p.midi) : [];
  });
};

export const rules = (abc: string): readonly string[] => readTune(abc).problems.map(p => p.rule);
