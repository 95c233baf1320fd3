import type { Direction, NoteEvent } from '../../shared/music/tune.ts';
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

/** abcjs puts slurs on a chord's first note, or on the chord: both are counted. */
export function readSigns(raw: RawElement): NoteSigns {
  const pitches = raw.pitches ?? [];
  const decorations = raw.decoration ?? [];
  const count = (own: readonly unknown[] | undefined, at: 'startSlur' | 'endSlur'): number =>
    pitches.reduce((sum, p) => sum + (p[at]?.length ?? 0), own?.length ?? 0);
  return {
    tied: pitches.some(p => p.startTie !== undefined),
    slursOpened: count(raw.startSlur, 'startSlur'),
    slursClosed: count(raw.endSlur, 'endSlur'),
    mark: markOf(decorations),
    fingers: decorations.filter(d => /^[0-5]$/.test(d)).map(Number),
    ornament: decorations.map(d => ornaments[d] ?? null).find(o => o !== null) ?? null,
    staccato: decorations.includes('staccato'),
    breath: decorations.includes('breath'),
    lyric: raw.lyric?.[0]?.syllable.trim() || null,
    chord: raw.chord?.find(c => (c.position ?? 'default') === 'default')?.name ?? null,
  };
}

function markOf(decorations: readonly string[]): Direction | null {
  const mark = decorations.find(d => d === 'upbow' || d === 'downbow');
  return mark === undefined ? null : mark === 'upbow' ? 'up' : 'down';
}
