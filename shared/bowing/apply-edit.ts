import type { NoteEvent, Tune, TuneEvent } from '../music/tune.ts';
import { at } from '../must.ts';
import type { Edit, SlurGroup } from './bowing.ts';
import { type WrittenSlurs, writtenSlurs } from './written-slurs.ts';

/**
 * Returns the tune with one edit made, as a teacher would write it. All slurs are written again from the
 * junctions they cover, so nested ones become one slur. A retake is written as a breath after the note
 * before, a stroke sign on the note itself and, where `opening` asks for it, one on the first note.
 */
export function applyEdit(tune: Tune, edit: Edit): Tune {
  const slurs = writtenSlurs(tune);
  if (edit.kind === 'retake') {
    return withEvents(tune, (e, note) => {
      if (e === edit.before) return { ...note, mark: edit.direction };
      if (e === edit.opening?.event) return { ...note, mark: edit.opening.direction };
      return e === edit.after ? { ...note, breath: true } : note;
    });
  }
  return withJoins(tune, slurs, editedJoins(slurs.joined, edit));
}

/** Returns the tune with several edits made, one after another. */
export const applyEdits = (tune: Tune, edits: readonly Edit[]): Tune =>
  edits.reduce(applyEdit, tune);

/** Returns the slurred junctions after an edit; `joined` is indexed by event, as in `WrittenSlurs`. */
export function editedJoins(joined: readonly boolean[], edit: Edit): boolean[] {
  const next = [...joined];
  const set = (group: SlurGroup, to: boolean): void => {
    for (const e of group.slice(1)) next[e] = to;
  };
  switch (edit.kind) {
    case 'slur':
      set(edit.notes, true);
      break;
    case 'drop':
      set(edit.notes, false);
      break;
    case 'lengthen':
    case 'shorten':
      set(edit.from, false);
      set(edit.to, true);
      break;
    case 'split':
      set(edit.from, false);
      for (const group of edit.to) set(group, true);
      break;
    case 'merge':
      set(edit.to, true);
      break;
    case 'retake':
      break;
  }
  return next;
}

/** Writes the slurs of a tune from its slurred junctions. Slurs without a partner stay as they are. */
export function withJoins(tune: Tune, slurs: WrittenSlurs, joined: readonly boolean[]): Tune {
  const { previous, unmatched } = slurs;
  const linked = tune.events.map((event, e) => {
    const before = tune.events[at(previous, e)];
    return (
      event.kind === 'note' && (joined[e] || (before?.kind === 'note' && goesOnIn(before, event)))
    );
  });
  /** For each event: the same stroke has a slurred junction after it. */
  const goesOn = tune.events.map(() => false);
  for (let e = tune.events.length - 1; e >= 0; e--) {
    const before = at(previous, e);
    if (linked[e] && before >= 0 && (joined[e] || goesOn[e])) goesOn[before] = true;
  }
  return withEvents(tune, (e, note) => {
    const slursOpened = (!linked[e] && goesOn[e] ? 1 : 0) + at(unmatched, e).opened;
    const slursClosed = (joined[e] && !goesOn[e] ? 1 : 0) + at(unmatched, e).closed;
    return note.slursOpened === slursOpened && note.slursClosed === slursClosed
      ? note
      : { ...note, slursOpened, slursClosed };
  });
}

/** Whether a tie joins two notes. A tie to another pitch is an error: both notes sound. */
const goesOnIn = (a: NoteEvent, b: NoteEvent): boolean =>
  a.tied &&
  a.pitches.length === b.pitches.length &&
  a.pitches.every((p, i) => p.midi === b.pitches[i]?.midi);

function withEvents(tune: Tune, change: (e: number, note: NoteEvent) => NoteEvent): Tune {
  const events: TuneEvent[] = tune.events.map((event, e) =>
    event.kind === 'note' ? change(e, event) : event,
  );
  return { ...tune, events };
}
