import { applyEdit } from '../bowing/apply-edit.ts';
import type { Anchor, AnchorRequest, Direction, Edit } from '../bowing/bowing.ts';
import { bowingInput } from '../bowing/bowing-input.ts';
import { layScore } from '../bowing/lay-strokes.ts';
import type { BowingSettings } from '../bowing/settings.ts';
import { troublesOf } from '../bowing/troubles.ts';
import { fraction, zero } from '../music/fraction.ts';
import { noteAt } from '../music/note-at.ts';
import { pitch } from '../music/pitch.ts';
import type { Bar, NoteEvent, Tune } from '../music/tune.ts';
import { at, got } from '../must.ts';
import { type Study, type StudyRequest, studyTune } from '../study.ts';

/** A study, with what was requested of its strokes by the block of its tune. */
export interface RequestedTune {
  readonly study: Study;
  readonly start: Direction | null;
  readonly restart: 'part' | null;
}

/**
 * Finds the smallest change to the slurs of a tune after which its strokes alternate into the next
 * tune, whose first stroke is `first`. Returns null where no single change does without harming an
 * anchor or a repeat of the tune. Costs one study of the tune.
 *
 * The engine finds mends for anchors, so the join is made into one: a part of one bar with one note is
 * appended to the tune, with an anchor on it that asks for `first`. A mend of that anchor which harms
 * no other anchor mends the join.
 */
export function joinMend(
  { study, start, restart }: RequestedTune,
  first: Direction,
  bowing: BowingSettings,
): Edit | null {
  const request: StudyRequest = {
    tuning: study.tuning,
    bowing: { ...bowing, restart: restart ?? bowing.restart },
    start,
    anchors: [...study.bowing.anchors.map(a => anchorAgain(study.tune, a)), nextAnchor(first)],
    unit: study.map.unit,
  };
  const joined = studyTune(withNext(study.tune), request);
  const { mends } = got(
    joined.bowing.anchors.find(a => a.id === nextBar),
    'anchor after the tune',
  );
  // Lifting the bow at the join is reported as `room`. Mends that reverse a repeat come last.
  const mend = mends.find(edit => edit.kind !== 'retake');
  return mend && reversals(study, request, mend) <= reversals(study, request) ? mend : null;
}

/** Number of parts whose second time through begins on the other stroke, after the edit. */
function reversals({ tune, performance, bowing }: Study, request: StudyRequest, edit?: Edit) {
  const score = bowingInput(edit ? applyEdit(tune, edit) : tune, performance, {
    start: request.start,
    restart: request.bowing.restart,
    anchored: new Map(bowing.anchors.map(a => [a.first, a.direction])),
  });
  return troublesOf(score, layScore(score), bowing.anchors).reversals.size;
}

/** A bar name that no tune has: parts of tunes are named by letters. */
const nextBar = 'Next1';

/** The tune with one bar of one note appended, as a part of its own. */
function withNext(tune: Tune): Tune {
  const last = at(tune.bars, tune.bars.length - 1);
  const event = at(tune.events, tune.events.length - 1);
  const bar: Bar = {
    ...last,
    name: nextBar,
    part: tune.parts.length,
    number: 1,
    endings: [],
    pickup: false,
    first: tune.events.length,
    end: tune.events.length + 1,
    length: fraction(1, 4),
    opensRepeat: false,
    closesRepeat: 1,
    closesPart: true,
  };
  const note: NoteEvent = {
    kind: 'note',
    id: `${nextBar}:1`,
    bar: tune.bars.length,
    onset: zero,
    duration: fraction(1, 4),
    start: event.start,
    stop: event.stop,
    place: event.place,
    pitches: [pitch('A', 0, 4)],
    graces: [],
    tied: false,
    slursOpened: 0,
    slursClosed: 0,
    mark: null,
    fingers: [],
    ornament: null,
    staccato: false,
    signs: [],
    breath: false,
    tuplet: null,
    lyric: null,
    chord: null,
  };
  return {
    ...tune,
    // A tie that leads nowhere would lead into the appended note.
    events: [...tune.events.slice(0, -1), event.kind === 'note' ? untied(event) : event, note],
    bars: [...tune.bars.slice(0, -1), { ...last, closesPart: true }, bar],
    parts: [...tune.parts, { name: 'Next', bars: [tune.bars.length] }],
    order: tune.order === null ? null : [...tune.order, tune.parts.length],
  };
}

const untied = (note: NoteEvent): NoteEvent => ({ ...note, tied: false });

const nextAnchor = (start: Direction): AnchorRequest => ({
  id: nextBar,
  bars: { from: { bar: nextBar, note: 1 }, to: { bar: nextBar, note: 1 } },
  start,
  level: null,
  preset: null,
  place: null,
});

/** The request that gives an anchor of the tune again. */
function anchorAgain(tune: Tune, { id, first, last, direction }: Anchor): AnchorRequest {
  const point = (e: number) => {
    const [bar, note] = noteAt(tune, e).id.split(':');
    return { bar: got(bar, 'bar name'), note: Number(note) };
  };
  const bars = { from: point(first), to: point(last) };
  return { id, bars, start: direction, level: null, preset: null, place: null };
}
