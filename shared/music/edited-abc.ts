import type { NoteEvent, Tune } from './tune.ts';

/**
 * A copy of a tune's ABC with other slurs, and signs and breaths more. `planned` is the tune with
 * these changed and nothing else, as `applyEdits` makes it. Only notes that differ are written anew;
 * every other character stays the teacher's.
 *
 * A note's span is what stands before it, the note, and what stands after: `"G"u({a}~B2)>`. Its old
 * slur signs are taken out of both ends; the new ones go straight round the note:
 *
 * ```
 * (3(d e f)   with d and e alone slurred      (3(d e) f
 * .c d        the same                        (.c d)     `.(` would be a dotted slur
 * a- a b      the slur of the second a and b  a- (a b)
 * c d         a breath after c, a sign on d   !breath!c vd
 * ```
 *
 * Read again, the copy is as `planned`. Throws where the two do not have the same notes.
 */
export function editedAbc(tune: Tune, planned: Tune): string {
  const { text } = tune.source;
  if (planned.events.length !== tune.events.length) throw new Error('not the same notes');
  let out = '';
  let copied = 0;
  tune.events.forEach((event, e) => {
    const to = planned.events[e];
    if (event.kind !== to?.kind) throw new Error(`event ${e} is not of the same kind`);
    if (event.kind !== 'note' || to.kind !== 'note') return;
    if (!differs(event, to)) return;
    out +=
      text.slice(copied, event.start) + editedNote(text.slice(event.start, event.stop), event, to);
    copied = event.stop;
  });
  return out + text.slice(copied);
}

/** The bars in which an edited tune differs, each by its name and as its notes are then written. */
export function editedBars(
  tune: Tune,
  planned: Tune,
): { readonly bar: string; readonly abc: string }[] {
  const { text } = tune.source;
  return tune.bars.flatMap(({ first, end, name }) => {
    const events = tune.events.slice(first, end);
    let copied = events[0]?.start ?? 0;
    let abc = '';
    let changed = false;
    for (const [i, event] of events.entries()) {
      const to = planned.events[first + i];
      if (event.kind !== 'note' || to?.kind !== 'note' || !differs(event, to)) continue;
      changed = true;
      abc +=
        text.slice(copied, event.start) +
        editedNote(text.slice(event.start, event.stop), event, to);
      copied = event.stop;
    }
    abc += text.slice(copied, events.at(-1)?.stop);
    return changed ? [{ bar: name, abc: abc.replace(/\s+/g, ' ').trim() }] : [];
  });
}

const differs = (a: NoteEvent, b: NoteEvent): boolean =>
  a.slursOpened !== b.slursOpened ||
  a.slursClosed !== b.slursClosed ||
  a.mark !== b.mark ||
  a.breath !== b.breath;

/** What stands before a note, a piece at a time; the names are of those that are not copied as they are. */
const piece =
  /(?<slur>\.?\((?!\d))|(?<sign>[\s.~uvH-Yh-w`-])|"[^"\n]*"|\{[^}\n]*\}|![^!\n]*!|\+[^+\n]*\+|\[[A-Za-z]:[^\]]*\]|\(\d+(?::\d*){0,2}|[<>]+/y;

/** A note or a chord, with its length and a tie. */
const note = /(?:\[[^\]]*\]|[_=^]*[A-Ga-g][,']*)[\d/]*-?/y;

function editedNote(span: string, from: NoteEvent, to: NoteEvent): string {
  const { slursOpened, slursClosed } = to;
  let before = '';
  /** Signs that belong to the note, since the last longer piece: the slur opens before them. */
  let signs = '';
  let at = 0;
  for (piece.lastIndex = at; ; piece.lastIndex = at) {
    const found = piece.exec(span);
    if (!found) break;
    at += found[0].length;
    if (found.groups?.slur !== undefined) continue;
    if (found.groups?.sign !== undefined) signs += found[0];
    else {
      before += signs + found[0];
      signs = '';
    }
  }
  note.lastIndex = at;
  const core = note.exec(span)?.[0];
  if (core === undefined) throw new Error(`no note in ${span}`);
  const after = span.slice(at + core.length).replaceAll(')', '');
  const bare = core.startsWith('[') ? core.replace(/[()]/g, '') : core;
  if (to.breath && !from.breath) signs += '!breath!';
  if (to.mark && !from.mark) signs += to.mark === 'up' ? 'u' : 'v';
  return `${before}${'('.repeat(slursOpened)}${signs}${bare.trimEnd()}${')'.repeat(slursClosed)}${after}`;
}
