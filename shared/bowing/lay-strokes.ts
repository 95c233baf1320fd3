import { compare, fraction } from '../music/fraction.ts';
import type { Performance, PlayedBar, SoundedNote } from '../music/performance.ts';
import type { Tune } from '../music/tune.ts';
import { type Problem, problem } from '../problem.ts';
import type { Direction, Stroke, StrokePlan } from './bowing.ts';
import { strokeDirection, turned } from './lead-in-form.ts';
import { type PartRun, runsInOrder } from './part-runs.ts';
import { type WrittenSlurs, writtenSlurs } from './written-slurs.ts';

/**
 * Lays the bow over a tune as played: one stroke a note, one a slur, each the other way from the
 * one before. A tie keeps its stroke; a chord is one; rests and grace notes take none.
 *
 * `(FE)|:D2 FA|` starting up: FE up, D down, F up, A down. Signs (`u`, `v`) win over the count.
 * Where one disagrees, the bow lifts and starts again in the same direction (a retake); that is
 * taken as meant when the stroke before is stated too, or a rest or a breath stands between.
 * Otherwise it is a conflict, and reported.
 *
 * First stroke: counted back from the first sign; with none, a full bar starts down (Schröder,
 * Handbook of Violin Playing), and an opening bar that is short, or begins with a rest, is laid so
 * that the next bar starts down (1,300 of 1,339 marked pickups in Ryan's Mammoth Collection, 1883).
 */
export interface BowScore {
  readonly tune: Tune;
  readonly performance: Performance;
  readonly slurs: WrittenSlurs;
  /** For each event: slurred to its written predecessor. */
  readonly joined: readonly boolean[];
  /** For each event: the sign on it. */
  readonly marks: readonly (Direction | null)[];
  /** For each sounded note: a rest or a breath stands before it. */
  readonly gaps: readonly boolean[];
  /** For each sounded note: the note played before it is the one written before it. */
  readonly follows: readonly boolean[];
  /** Times through the parts, in played order. */
  readonly runs: readonly PartRun[];
  /** Sounded notes at which the strokes start anew, the first of all included. */
  readonly restarts: readonly number[];
  readonly start: Direction | null;
  /** Strokes of anchors, by the event that each begins with. */
  readonly anchored: ReadonlyMap<number, Direction>;
}

export interface LayRequest {
  /** `start=`: the first stroke, where the teacher says it. */
  readonly start?: Direction | null;
  readonly restart?: 'part' | null;
  readonly anchored?: ReadonlyMap<number, Direction>;
}

/** A sign that the count does not reach, in one pass. */
export interface Conflict {
  readonly event: number;
  /** Index of the sounded note. */
  readonly note: number;
  readonly pass: number;
  /** Strokes from the last settled one (counted) to the sign (not counted). */
  readonly since: number;
  /** The stroke that the count gives. */
  readonly counted: Direction;
}

export interface LaidStrokes extends StrokePlan {
  readonly conflicts: readonly Conflict[];
  /** How the bow came to each anchored note, in played order. */
  readonly reached: readonly { readonly note: number; readonly direction: Direction }[];
}

/** Event index of the last written note of a sounded one. */
export const lastEvent = (note: SoundedNote): number => note.tied.at(-1) ?? note.event;

/** What the laying of strokes needs to know, gathered once for a tune. */
export function bowScore(tune: Tune, performance: Performance, request: LayRequest = {}): BowScore {
  const slurs = writtenSlurs(tune);
  const { notes, bars } = performance;
  const restarts = [0];
  if (request.restart === 'part') {
    bars.forEach((played, i) => {
      const part = tune.parts[tune.bars[played.bar]?.part ?? -1];
      if (i > 0 && part?.bars[0] === played.bar && played.first > (restarts.at(-1) ?? 0)) {
        restarts.push(played.first);
      }
    });
  }
  return {
    tune,
    performance,
    slurs,
    joined: slurs.joined,
    marks: tune.events.map(e => (e.kind === 'note' ? e.mark : null)),
    gaps: notes.map(n => n.afterGap),
    follows: notes.map((n, k) => {
      const before = notes[k - 1];
      return before !== undefined && slurs.previous[n.event] === lastEvent(before);
    }),
    runs: runsInOrder(tune, performance),
    restarts: restarts.filter(k => k < notes.length),
    start: request.start ?? null,
    anchored: request.anchored ?? new Map(),
  };
}

/** Lays the strokes of a score. */
export function layScore(score: BowScore): LaidStrokes {
  const { notes } = score.performance;
  const strokes: Stroke[] = [];
  const strokeOf: number[] = [];
  const conflicts: Conflict[] = [];
  const reached: { note: number; direction: Direction }[] = [];

  score.restarts.forEach((from, stretch) => {
    const end = score.restarts[stretch + 1] ?? notes.length;
    const groups = strokeGroups(score, from, end);
    let direction = firstStroke(score, groups, stretch === 0);
    let since = 0;
    groups.forEach((group, s) => {
      const head = group[0] as number;
      const event = notes[head]?.event ?? -1;
      const pass = notes[head]?.pass ?? 1;
      const before = s > 0 ? strokes.at(-1) : undefined;
      const counted = s === 0 ? direction : turned(direction);
      const mark = score.marks[event] ?? null;
      const anchored = score.anchored.get(event);
      const meant = before?.stated != null || score.gaps[head] === true;
      if (anchored !== undefined) {
        reached.push({ note: head, direction: mark !== null && meant ? mark : counted });
      } else if (mark !== null && mark !== counted && s > 0 && !meant) {
        conflicts.push({ event, note: head, pass, since, counted });
      }
      const stated = anchored ?? mark;
      direction = stated ?? counted;
      since = stated === null ? since + 1 : 1;
      const last = strokes.at(-1);
      const retake = last !== undefined && last.direction === direction;
      for (const note of group) strokeOf[note] = strokes.length;
      strokes.push({ direction, pass, notes: group, stated, retake });
    });
  });
  return { strokes, strokeOf, conflicts, reached };
}

/** Sounded notes from..end gathered into strokes; an anchor always begins one. */
export function strokeGroups(score: BowScore, from: number, end: number): number[][] {
  const groups: number[][] = [];
  for (let k = from; k < end; k++) {
    const event = score.performance.notes[k]?.event ?? -1;
    const group = groups.at(-1);
    const joins = score.joined[event] && score.follows[k] && !score.anchored.has(event);
    if (group && joins) group.push(k);
    else groups.push([k]);
  }
  return groups;
}

/** The first stroke of a stretch; `opening` for that of the whole tune. */
export function firstStroke(
  score: BowScore,
  groups: readonly (readonly number[])[],
  opening: boolean,
): Direction {
  const rule = openingRule(score, groups, opening);
  switch (rule.kind) {
    case 'set':
      return rule.direction;
    case 'counted-back':
      return strokeDirection(rule.direction, rule.strokes);
    case 'laid': {
      const reach = groups.findIndex(g => g.includes(rule.downAt));
      return strokeDirection('down', Math.max(0, reach));
    }
  }
}

/** How the first stroke of a stretch comes about. */
export type OpeningRule =
  | { readonly kind: 'set'; readonly direction: Direction }
  /** So many strokes before the first sign. A sign after an anchor is counted from that instead. */
  | { readonly kind: 'counted-back'; readonly direction: Direction; readonly strokes: number }
  /** So that this sounded note, the first of the next bar, is on a down-bow. */
  | { readonly kind: 'laid'; readonly downAt: number };

export function openingRule(
  score: BowScore,
  groups: readonly (readonly number[])[],
  opening: boolean,
): OpeningRule {
  const { notes } = score.performance;
  if (opening && score.start) return { kind: 'set', direction: score.start };
  const eventOf = (group: readonly number[] = []): number => notes[group[0] ?? -1]?.event ?? -1;
  const strokes = groups.findIndex(
    g => score.marks[eventOf(g)] != null || score.anchored.has(eventOf(g)),
  );
  const direction = score.marks[eventOf(groups[strokes])];
  if (direction) return { kind: 'counted-back', direction, strokes };
  const first = groups[0]?.[0] ?? 0;
  const bar = openingBar(score, first, opening);
  // An opening bar with nothing but rests leaves the next bar to start down by itself.
  return bar && bar.end > first && opensShort(score, bar)
    ? { kind: 'laid', downAt: bar.end }
    : { kind: 'set', direction: 'down' };
}

/** The bar in which a stretch begins. */
export const openingBar = (
  score: BowScore,
  from: number,
  opening: boolean,
): PlayedBar | undefined =>
  score.performance.bars[opening ? 0 : (score.performance.notes[from]?.barPlayed ?? 0)];

/** The bar is not full, or begins with a rest. */
function opensShort(score: BowScore, played: PlayedBar): boolean {
  const bar = score.tune.bars[played.bar];
  if (!bar) return false;
  const full = fraction(bar.meter.beats, bar.meter.unit);
  const short = bar.pickup || (!bar.meter.free && compare(bar.length, full) < 0);
  return short || score.tune.events[bar.first]?.kind === 'rest';
}

/** Strokes of a tune as played, with a warning for each sign that the count does not reach. */
export function layStrokes(
  tune: Tune,
  performance: Performance,
  request: LayRequest = {},
): { plan: LaidStrokes; problems: readonly Problem[] } {
  const plan = layScore(bowScore(tune, performance, request));
  return { plan, problems: conflictProblems(tune, plan) };
}

/** One warning for each sign in conflict, whatever the passes. `mends` are edits as text. */
export function conflictProblems(
  tune: Tune,
  plan: LaidStrokes,
  mends: ReadonlyMap<number, readonly string[]> = new Map(),
): Problem[] {
  const byEvent = new Map<number, Conflict[]>();
  for (const c of plan.conflicts) byEvent.set(c.event, [...(byEvent.get(c.event) ?? []), c]);
  return [...byEvent]
    .sort(([a], [b]) => a - b)
    .flatMap(([event, found]) => {
      const note = tune.events[event];
      const first = found[0];
      if (note?.kind !== 'note' || !first) return [];
      const facts = {
        note: note.id,
        passes: found.map(c => c.pass).join(', '),
        since: first.since,
        counted: first.counted,
        mends: (mends.get(event) ?? []).join('; '),
      };
      return [
        problem('stroke-conflict', 'warning', note.place, {
          facts,
          actual: turned(first.counted),
          expected: [first.counted],
        }),
      ];
    });
}
