import { type NoteEvent, noteSigns } from '../../shared/music/tune.ts';
import type { RawElement } from './abcjs-parse.ts';

/** What is written on a note besides its pitch and length. */
export type NoteSigns = Pick<
  NoteEvent,
  | 'tied'
  | 'slursOpened'
  | 'slursClosed'
  | 'mark'
  | 'fingers'
  | 'ornament'
  | 'staccato'
  | 'signs'
  | 'breath'
  | 'lyric'
  | 'chord'
>;

const ornaments: Readonly<Record<string, NoteEvent['ornament']>> = {
  irishroll: 'roll',
  roll: 'roll',
  trill: 'trill',
  mordent: 'mordent',
  lowermordent: 'mordent',
  uppermordent: 'mordent',
  pralltriller: 'mordent',
  turn: 'turn',
  turnx: 'turn',
  invertedturn: 'turn',
  invertedturnx: 'turn',
};

/** Reads the signs of a note. abcjs puts slurs on a chord's first note, or on the chord: both are counted. */
export function readSigns(raw: RawElement): NoteSigns {
  const { decoration: decorations = none } = raw;
  const mark = decorations.find(d => d === 'upbow' || d === 'downbow');
  const ornament = decorations.find(d => ornaments[d]);
  let tied = false;
  let slursOpened = raw.startSlur?.length ?? 0;
  let slursClosed = raw.endSlur?.length ?? 0;
  for (const pitch of raw.pitches ?? none) {
    tied ||= pitch.startTie !== undefined;
    slursOpened += pitch.startSlur?.length ?? 0;
    slursClosed += pitch.endSlur?.length ?? 0;
  }
  return {
    tied,
    slursOpened,
    slursClosed,
    mark: mark === undefined ? null : mark === 'upbow' ? 'up' : 'down',
    fingers: decorations.length > 0 ? fingersOf(decorations) : [],
    ornament: ornament === undefined ? null : (ornaments[ornament] ?? null),
    staccato: decorations.includes('staccato'),
    signs: decorations.length > 0 ? noteSigns.filter(sign => decorations.includes(sign)) : none,
    breath: decorations.includes('breath'),
    lyric: raw.lyric?.[0]?.syllable.trim() || null,
    chord: raw.chord?.find(c => (c.position ?? 'default') === 'default')?.name ?? null,
  };
}

const none: readonly never[] = [];

const fingersOf = (decorations: readonly string[]): number[] =>
  decorations.filter(d => /^[0-5]$/.test(d)).map(Number);
