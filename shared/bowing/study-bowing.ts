import type { Fingering } from '../fingering/fingering.ts';
import { barRangeText } from '../music/bar-range.ts';
import type { Performance } from '../music/performance.ts';
import { resolvePassage } from '../music/resolve-passage.ts';
import type { Direction, Tune } from '../music/tune.ts';
import { nearest } from '../nearest.ts';
import { type Problem, problem } from '../problem.ts';
import type { SectionMap } from '../sections/section-map.ts';
import type { Anchor, AnchorRequest, BowingStudy, Edit, SlurGroup } from './bowing.ts';
import { cellStarts, freeStretches, type SetPassage, stretchBefore } from './find-lead-ins.ts';
import {
  type BowScore,
  bowScore,
  conflictProblems,
  type LaidStrokes,
  layScore,
} from './lay-strokes.ts';
import { type BowingContext, bowingContext } from './lead-in-of.ts';
import { mendRegion } from './mend-region.ts';
import { findMends, type MendRegion, type MendSearch } from './mends.ts';
import { planBowings } from './plan-bowings.ts';
import type { BowingSettings } from './settings.ts';
import { editText } from './slur-edits.ts';
import { studyRepeats } from './study-repeats.ts';
import { studySwaps } from './study-swaps.ts';
import { anchorFault, signFault, troublesOf } from './troubles.ts';
import { planWholeTune } from './whole-tune.ts';

/** What a study of the bowing needs besides the tune, its fingers and its map. */
export interface BowingRequest {
  readonly bowing: BowingSettings;
  /** `start=`: the first stroke, where the teacher says it. */
  readonly start: Direction | null;
  readonly anchors: readonly AnchorRequest[];
}

/**
 * The bowing of one tune: the stroke of every note in every pass, whether each anchor is reached on
 * its stroke, the plans and mends, repeats, swaps. Problems: `anchor-not-in-tune` and
 * `anchor-without-stroke` (errors), `arrival-missed`, `stroke-conflict`, `anchor-against-mark` and
 * `slur-into-anchor` (warnings).
 */
export function studyBowing(
  tune: Tune,
  performance: Performance,
  fingering: Fingering,
  map: SectionMap,
  request: BowingRequest,
): { readonly study: BowingStudy; readonly problems: readonly Problem[] } {
  const found = request.anchors.map(anchor => findPassage(tune, anchor));
  const passages = found.flatMap(f => f.passage ?? []);
  const context = bowingContext(tune, performance, fingering, map, request.bowing);
  const score = bowScore(tune, performance, {
    start: request.start,
    restart: request.bowing.restart,
    anchored: new Map(passages.map(p => [p.first, p.direction])),
  });
  const laid = layScore(score);
  const anchors = found.flatMap(f =>
    f.passage ? [studyAnchor(context, score, laid, passages, f.passage, f.request)] : [],
  );
  const study: BowingStudy = {
    plan: { strokes: laid.strokes, strokeOf: laid.strokeOf },
    anchors,
    repeats: studyRepeats(context, score, laid, passages),
    swaps: studySwaps(context, score, laid),
    varying: varyingNotes(score, laid),
    ...(isAmiss(score, laid, passages) && {
      whole: planWholeTune(context, score, laid, passages),
    }),
  };
  const problems = [
    ...found.flatMap(f => f.problems),
    ...conflictProblems(tune, laid, conflictMends(context, score, laid, passages)),
    ...anchors.flatMap(a => anchorProblems(score, a)),
  ];
  return { study, problems };
}

function isAmiss(score: BowScore, laid: LaidStrokes, passages: readonly SetPassage[]): boolean {
  const { faults, reversals } = troublesOf(score, laid, passages);
  return faults.size + reversals.size > 0;
}

interface FoundPassage {
  readonly request: AnchorRequest;
  readonly passage: SetPassage | null;
  readonly problems: readonly Problem[];
}

function findPassage(tune: Tune, request: AnchorRequest): FoundPassage {
  const bars = barRangeText(request.bars);
  const range = resolvePassage(tune, request.bars);
  const facts = { anchor: request.id, bars };
  if ('unknown' in range) {
    const { file, line } = tune.source;
    const place = request.place ?? { file, line, column: 1 };
    const rest = { facts, actual: range.unknown, nearest: nearest(range.unknown, range.known) };
    return {
      request,
      passage: null,
      problems: [problem('anchor-not-in-tune', 'error', place, rest)],
    };
  }
  const opening = tune.events[range.first];
  const mark = opening?.kind === 'note' ? opening.mark : null;
  const place = opening?.place ?? null;
  const direction = request.start ?? mark;
  if (!direction) {
    const missing = problem('anchor-without-stroke', 'error', request.place ?? place, {
      facts,
      expected: ['down', 'up'],
    });
    return { request, passage: null, problems: [missing] };
  }
  const against =
    mark && mark !== direction
      ? [
          problem('anchor-against-mark', 'warning', place, {
            facts,
            actual: mark,
            expected: [direction],
          }),
        ]
      : [];
  return { request, passage: { id: request.id, ...range, direction }, problems: against };
}

function studyAnchor(
  context: BowingContext,
  score: BowScore,
  laid: LaidStrokes,
  passages: readonly SetPassage[],
  passage: SetPassage,
  request: AnchorRequest,
): Anchor {
  const { notes } = context.performance;
  const level = request.level ?? context.settings.level;
  const reached = laid.reached.filter(r => notes[r.note]?.event === passage.first);
  const missed = reached.filter(r => r.direction !== passage.direction).map(r => r.note);
  const stretches = freeStretches(score, laid, passages, passage);
  const leadIns = planBowings(context, score, passage, stretches, level, request.preset);
  const regionsOf = (all: readonly Span[]) =>
    all.map(s => mendRegion(context, score, laid, s.from, s.end, level, request.preset));
  const targets = missed.map(anchorFault);
  const near = { score, laid, passages, regions: regionsOf(stretches), targets };
  return {
    ...passage,
    arrivals: reached.map(({ note, direction }) => ({
      pass: notes[note]?.pass ?? 1,
      direction,
      agrees: direction === passage.direction,
    })),
    leadIns,
    mends: mendsNearOrFar(near, missed, regionsOf),
  };
}

/** Sounded notes from (included) to end (not included). */
interface Span {
  readonly from: number;
  readonly end: number;
}

/**
 * The mends of a near search; where there are none, those of what was played between each of the
 * notes in trouble and the last sign, anchor or restart before it, past any repeat sign.
 */
function mendsNearOrFar(
  near: MendSearch,
  notes: readonly number[],
  regionsOf: (spans: readonly Span[]) => MendRegion[],
): Edit[] {
  if (notes.length === 0) return [];
  const mends = findMends(near);
  if (mends.length > 0) return mends;
  const { score, laid, passages } = near;
  const far = notes.map(end => ({
    from: stretchBefore(score, laid, passages, new Set(), end).from,
    end,
  }));
  return findMends({ ...near, regions: regionsOf(far) });
}

/** Mends of each sign that the count does not reach, as text, best first. */
function conflictMends(
  context: BowingContext,
  score: BowScore,
  laid: LaidStrokes,
  passages: readonly SetPassage[],
): Map<number, string[]> {
  const mends = new Map<number, string[]>();
  const cells = cellStarts(score);
  const regionsOf = (all: readonly Span[]) =>
    all.map(s => mendRegion(context, score, laid, s.from, s.end));
  for (const event of new Set(laid.conflicts.map(c => c.event))) {
    const notes = laid.conflicts.filter(c => c.event === event).map(c => c.note);
    const spans = notes.map(note => ({
      from: stretchBefore(score, laid, passages, cells, note).from,
      end: note,
    }));
    const targets = notes.map(signFault);
    const near = { score, laid, passages, regions: regionsOf(spans), targets };
    const edits = mendsNearOrFar(near, notes, regionsOf);
    mends.set(
      event,
      edits.map(edit => editText(context.tune, edit)),
    );
  }
  return mends;
}

function anchorProblems(score: BowScore, anchor: Anchor): Problem[] {
  const { tune, joined } = score;
  const opening = tune.events[anchor.first];
  const place = opening?.place ?? null;
  const id = (e: number): string => {
    const event = tune.events[e];
    return event?.kind === 'note' ? event.id : '';
  };
  const facts = { anchor: anchor.id, note: id(anchor.first) };
  const slurred = joined[anchor.first]
    ? [problem('slur-into-anchor', 'warning', place, { facts })]
    : [];
  const missed = anchor.arrivals.filter(a => !a.agrees);
  const [first] = missed;
  if (!first) return slurred;
  const mend: Edit | undefined = anchor.mends[0];
  const told = {
    ...facts,
    passes: missed.map(a => a.pass).join(', '),
    mend: mend ? editText(tune, mend) : '',
    mends: anchor.mends.length,
  };
  return [
    ...slurred,
    problem('arrival-missed', 'warning', place, {
      facts: told,
      actual: first.direction,
      expected: [anchor.direction],
    }),
  ];
}

/** Written notes whose stroke is not the same in every pass. */
function varyingNotes(score: BowScore, laid: LaidStrokes): SlurGroup {
  const seen = new Map<number, Direction>();
  const varying = new Set<number>();
  score.performance.notes.forEach((note, k) => {
    const direction = laid.strokes[laid.strokeOf[k] ?? -1]?.direction;
    if (!direction) return;
    const first = seen.get(note.event);
    if (first === undefined) seen.set(note.event, direction);
    else if (first !== direction) varying.add(note.event);
  });
  return [...varying].sort((a, b) => a - b);
}
