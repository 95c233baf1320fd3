import { applyEdit } from '../bowing/apply-edit.ts';
import { bowScore } from '../bowing/bow-score.ts';
import type { Anchor, AnchorRequest, Direction, Edit } from '../bowing/bowing.ts';
import { layScore } from '../bowing/lay-strokes.ts';
import type { BowingSettings } from '../bowing/settings.ts';
import { troublesOf } from '../bowing/troubles.ts';
import { fraction, zero } from '../music/fraction.ts';
import { pitch } from '../music/pitch.ts';
import type { Bar, NoteEvent, Tune } from '../music/tune.ts';
import { type Study, type StudyRequest, studyTune } from '../study.ts';
import type { SetTune } from './set-study.ts';

/**
 * The smallest change to the slurs of a tune that makes the tune after it begin on its own stroke;
 * null where no single one does without harming an anchor or a repeat of the tune.
 *
 * The engine mends what leads to an anchor, so the join is made one: a part of one bar of one note
 * is put after the tune, with an anchor on it that is to be reached on the next tune's first stroke.
 * What mends that anchor, and breaks no other, mends the join.
 */
export function joinMend(
  { study, start, restart }: Pick<SetTune, 'study' | 'start' | 'restart'>,
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
  const mends = joined.bowing.anchors.find(a => a.id === nextBar)?.mends ?? [];
  // Lifting the bow at the join itself is told of apart. Mends that reverse a repeat come last.
  const mend = mends.find(edit => edit.kind !== 'retake');
  return mend && reversals(study, request, mend) <= reversals(study, request) ? mend : null;
}

/** Parts whose second time through begins on the other stroke, with the edit made. */
function reversals({ tune, performance, bowing }: Study, request: StudyRequest, edit?: Edit) {
  const score = bowScore(edit ? applyEdit(tune, edit) : tune, performance, {
    start: request.start,
    restart: request.bowing.restart,
    anchored: new Map(bowing.anchors.map(a => [a.first, a.direction])),
  });
  return troublesOf(score, layScore(score), bowing.anchors).reversals.size;
}

/** A bar name that no tune gives: parts of tunes have letters. */
const nextBar = 'Next1';

function withNext(tune: Tune): Tune {
  const [last, event] = [tune.bars.at(-1), tune.events.at(-1)];
  if (!last || !event) return tune;
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
    breath: false,
    tuplet: null,
    lyric: null,
    chord: null,
  };
  return {
    ...tune,
    // A tie that leads nowhere would lead into the note put after it.
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

/** An anchor of the tune, asked for anew by the names of its notes. */
function anchorAgain(tune: Tune, { id, first, last, direction }: Anchor): AnchorRequest {
  const point = (e: number) => {
    const event = tune.events[e];
    const [bar = '', note] = event?.kind === 'note' ? event.id.split(':') : [];
    return { bar, note: Number(note) };
  };
  const bars = { from: point(first), to: point(last) };
  return { id, bars, start: direction, level: null, preset: null, place: null };
}
