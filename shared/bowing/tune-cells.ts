import { at } from '../must.ts';
import type { Demand, Direction } from './bowing.ts';
import { type BowingInput, lastEvent } from './bowing-input.ts';
import { cellStarts, type SetPassage } from './find-lead-ins.ts';
import { openingBar, openingRule } from './first-stroke.ts';
import { type LaidStrokes, strokeAt, strokeGroups } from './lay-strokes.ts';
import type { ParityEquation } from './parity-equations.ts';
import { partRuns } from './part-runs.ts';

/**
 * A cell of a tune: consecutive notes that every pass plays as a whole. A tune is cut into cells at its start, at
 * repeat signs and endings, at both ends of anchors, at signs, and where passes are compared. The bowing of a
 * cell affects later strokes only by its parity, an odd or even number of strokes; so the demands on a tune
 * are equations in the parities of its cells.
 *
 * Example: `|: A :||: B [anchor] :|` from down. The second pass of A starts as the first if p_A = 0; the anchor
 * is reached on an up-bow if down ⊕ p_A ⊕ p_A ⊕ p_B = up, so p_B = 1.
 */
export interface Cell {
  /** Event indices of its notes. */
  readonly events: readonly number[];
  /** Number of the unknown that is its parity; null where its bowing is fixed (an anchor, a single note). */
  readonly unknown: number | null;
  /** Parity of its written bowing. */
  readonly parity: number;
}

/** The stroke at some note as a sum mod 2 of unknowns and `up`: 0 is down, 1 is up. */
interface Sum {
  readonly of: readonly number[];
  readonly up: number;
}

/** One pass through a cell. */
export interface PlayedCell {
  readonly cell: number;
  /** Sounded notes from `from` (included) to `end` (not included). */
  readonly from: number;
  readonly end: number;
  /** Stroke on which it begins. */
  readonly start: Sum;
}

/** A demand, the equation that it makes, and the event at which it is met. */
export interface PlacedDemand {
  readonly demand: Demand;
  readonly equation: ParityEquation;
  readonly event: number;
}

/** The cells of a tune, as written and as played, and the demands on it. */
export interface TuneCells {
  readonly cells: readonly Cell[];
  readonly played: readonly PlayedCell[];
  /** Number of unknowns: parities of cells first, then free first strokes. */
  readonly unknowns: number;
  readonly demands: readonly PlacedDemand[];
}

/** Further cuts and demands where a tune is bowed in a way, regardless of its slurs. */
export interface Layout {
  /** Further events at which cells begin. */
  readonly cuts: ReadonlySet<number>;
  /** Returns a name for the notes of a cell: cells of equal name share a bowing; null for one that shares none. */
  readonly nameOf: (events: readonly number[]) => string | null;
  /** Stroke on which each pass through a part begins, by its first sounded note. Replaces the demand that passes agree. */
  readonly starts: ReadonlyMap<number, Direction>;
  /** Events before which the bow lifts, so that they demand nothing of the strokes before. */
  readonly lifts: ReadonlySet<number>;
}

const bit = (d: Direction): number => (d === 'up' ? 1 : 0);

/**
 * Cuts a tune into cells and lists the demands on it. null where cells overlap, since a note begins in one pass
 * but is tied to the note before it in another.
 */
export function tuneCells(
  score: BowingInput,
  laid: LaidStrokes,
  passages: readonly SetPassage[],
  layout: Layout | null = null,
): TuneCells | null {
  const { notes } = score.performance;
  const cuts = new Set([...cutEvents(score, passages), ...(layout?.cuts ?? [])]);
  const named = new Map<string, number>();
  const cells: Cell[] = [];
  const owner = new Map<number, number>();
  const spans: { cell: number; from: number; end: number }[] = [];
  let unknowns = 0;
  for (let from = 0; from < notes.length; ) {
    let end = from + 1;
    while (end < notes.length && score.follows[end] && !cuts.has(at(notes, end).event)) end++;
    const events = notes.slice(from, end).map(n => n.event);
    let cell = owner.get(at(events, 0));
    if (cell === undefined || !sameEvents(at(cells, cell).events, events)) {
      cell = cells.length;
      if (events.some(e => owner.has(e))) return null;
      for (const e of events) owner.set(e, cell);
      const set = passages.some(p => events.every(e => p.first <= e && e <= p.last));
      const parity = strokeGroups(score, from, end).length % 2;
      const name = layout?.nameOf(events) ?? null;
      const shared = name === null ? undefined : named.get(name);
      const unknown = set || events.length < 2 ? null : (shared ?? unknowns++);
      if (name !== null && unknown !== null) named.set(name, unknown);
      cells.push({ events, unknown, parity });
    }
    spans.push({ cell, from, end });
    from = end;
  }
  return { cells, ...demandsOf(score, laid, passages, cells, spans, unknowns, layout) };
}

const sameEvents = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((e, i) => e === b[i]);

/** Events at which a cell begins, in any pass. */
function cutEvents(score: BowingInput, passages: readonly SetPassage[]): ReadonlySet<number> {
  const { notes } = score.performance;
  const cuts = new Set<number>(passages.map(p => p.first));
  const starts = new Set(cellStarts(score));
  for (const run of score.runs) starts.add(run.firstFull);
  for (const from of score.restarts) {
    const opening = openingBar(score, from, from === 0);
    if (opening) starts.add(opening.end);
  }
  const following: number[] = [];
  for (const [e, before] of score.slurs.previous.entries()) if (before >= 0) following[before] = e;
  notes.forEach((note, k) => {
    const before = notes[k - 1];
    const leaves = passages.some(
      p => before && p.first <= before.event && before.event <= p.last && note.event > p.last,
    );
    if (starts.has(k) || !score.follows[k] || score.marks[note.event] || leaves)
      cuts.add(note.event);
    const next = before && !score.follows[k] ? following[lastEvent(before)] : undefined;
    if (next !== undefined) cuts.add(next);
  });
  return cuts;
}

function demandsOf(
  score: BowingInput,
  laid: LaidStrokes,
  passages: readonly SetPassage[],
  cells: readonly Cell[],
  spans: readonly { cell: number; from: number; end: number }[],
  cellUnknowns: number,
  layout: Layout | null,
): Omit<TuneCells, 'cells'> {
  const { notes } = score.performance;
  const demands: PlacedDemand[] = [];
  const played: PlayedCell[] = [];
  let unknowns = cellUnknowns;
  let now: Sum = { of: [], up: 0 };
  const demand = (what: Demand, event: number, sum: Sum, stroke: Direction): void => {
    if (layout?.lifts.has(event)) return;
    demands.push({ demand: what, equation: { of: sum.of, sum: sum.up ^ bit(stroke) }, event });
  };
  let opening: number | null = null;
  for (const span of spans) {
    const { event, pass } = at(notes, span.from);
    const cell = at(cells, span.cell);
    const stretch = score.restarts.indexOf(span.from);
    const anchor = passages.find(p => p.first === event);
    const joined = score.joined[event] && score.follows[span.from] && !anchor;
    if (stretch >= 0) {
      const end = score.restarts[stretch + 1] ?? notes.length;
      const rule = openingRule(score, strokeGroups(score, span.from, end), stretch === 0);
      now = rule.kind === 'set' ? { of: [], up: bit(rule.direction) } : { of: [unknowns++], up: 0 };
      opening = rule.kind === 'laid' ? rule.downAt : null;
    } else if (joined) now = { of: now.of, up: now.up ^ 1 };
    if (opening === span.from && stretch < 0) {
      demand({ kind: 'opening' }, event, now, 'down');
    }
    const mark = score.marks[event] ?? null;
    const stroke = strokeAt(laid, span.from);
    const conflict = laid.conflicts.some(c => c.note === span.from);
    const lifted = stroke.retake && !conflict;
    if (anchor) {
      const reached = laid.reached.find(r => r.note === span.from);
      const meant = mark === anchor.direction && reached?.direction === mark && lifted;
      if (!meant) demand({ kind: 'anchor', id: anchor.id, pass }, event, now, anchor.direction);
      if (mark && mark !== anchor.direction) {
        demand({ kind: 'sign', event, pass }, event, now, mark);
      }
      now = { of: [], up: bit(anchor.direction) };
    } else if (mark && !joined) {
      if (!lifted) demand({ kind: 'sign', event, pass }, event, now, mark);
      now = { of: [], up: bit(mark) };
    } else {
      const start = layout?.starts.get(span.from);
      if (start) {
        const part = at(score.tune.bars, at(score.tune.events, event).bar).part;
        demand({ kind: 'repeat', part }, event, now, start);
        now = { of: [], up: bit(start) };
      }
    }
    played.push({ ...span, start: now });
    now =
      cell.unknown === null
        ? { of: now.of, up: now.up ^ cell.parity }
        : { of: [...now.of, cell.unknown], up: now.up };
  }
  if (layout) return { played, unknowns, demands };
  for (const [part, runs] of partRuns(score.runs)) {
    const [first, second] = runs.map(run => played.find(c => c.from === run.firstFull)?.start);
    if (!first || !second) continue;
    const equation = { of: [...first.of, ...second.of], sum: first.up ^ second.up };
    const event = at(notes, at(runs, 1).firstFull).event;
    demands.push({ demand: { kind: 'repeat', part }, equation, event });
  }
  return { played, unknowns, demands };
}
