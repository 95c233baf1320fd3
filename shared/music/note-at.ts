import { at } from '../must.ts';
import type { Pitch } from './pitch.ts';
import type { NoteEvent, Tune } from './tune.ts';

/** The note that is written as event `event`. Throws where that is a rest, or past the tune. */
export function noteAt({ events }: Pick<Tune, 'events'>, event: number): NoteEvent {
  const found = at(events, event);
  if (found.kind === 'rest') throw new Error(`event ${event} is a rest`);
  return found;
}

/** The highest pitch of a note or chord, which is the one that a tune is heard by. */
export const topPitch = ({ pitches }: Pick<NoteEvent, 'pitches'>): Pitch =>
  at(pitches, pitches.length - 1);
