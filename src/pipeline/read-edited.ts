import { editedAbc } from '../../shared/music/edited-abc.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { parseTunes } from '../abc/parse-tune.ts';

/**
 * Writes an edited tune's slurs, signs and breaths into its ABC, and reads that: what a teacher gets who
 * makes the edit. Returns null where the new ABC does not read as the tune edited.
 */
export function readEdited(tune: Tune, edited: Tune): Tune | null {
  const text = editedAbc(tune, edited);
  const read = parseTunes({ ...tune.source, text }, { id: edited.id }).tunes[0];
  const alike =
    read?.events.length === edited.events.length &&
    read.events.every((event, e) => {
      const wanted = edited.events[e];
      if (event.kind !== 'note' || wanted?.kind !== 'note') return event.kind === wanted?.kind;
      return (
        event.id === wanted.id &&
        event.slursOpened === wanted.slursOpened &&
        event.slursClosed === wanted.slursClosed &&
        event.mark === wanted.mark &&
        event.breath === wanted.breath
      );
    });
  return read && alike ? { ...read, type: edited.type } : null;
}
