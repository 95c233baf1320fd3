import type { Fingering } from '../fingering/fingering.ts';
import type { Performance } from '../music/performance.ts';
import type { Direction, Tune } from '../music/tune.ts';
import { at } from '../must.ts';
import { type Problem, problem } from '../problem.ts';
import type { SectionMap } from '../sections/section-map.ts';
import type { Anchor, AnchorRequest, BowingStudy, PlanRequest, SlurGroup } from './bowing.ts';
import { type BowingInput, bowingInput } from './bowing-input.ts';
import { conflictProblems } from './conflict-problems.ts';
import { freeStretches, type SetPassage, spansToSign } from './find-lead-ins.ts';
import { type FoundPassage, findPassage } from './find-passage.ts';
import { type LaidStrokes, layScore, strokeAt } from './lay-strokes.ts';
import { turned } from './lead-in-model.ts';
import { type BowingContext, bowingContext } from './lead-in-of.ts';
import { mendRegion } from './mend-region.ts';
import { conflictMends, mendsNearOrFar, type Span } from './mends-around.ts';
import { mendFacts, type Proof } from './offered-mends.ts';
import { planBowings } from './plan-bowings.ts';
import type { BowingSettings } from './settings.ts';
import { studyRepeats } from './study-repeats.ts';
import { studySwaps } from './study-swaps.ts';
import { anchorFault, troublesOf } from './troubles.ts';
import { type OwnLimits, planWholeTune } from './whole-tune.ts';

/** What a study of the bowing needs besides tune, fingering and map. */
export interface BowingRequest {
  readonly bowing: BowingSettings;
  /** `start=`: the first stroke, where the teacher states it. */
  readonly start: Direction | null;
  readonly anchors: readonly AnchorRequest[];
}

/**
 * Studies the bowing of a tune: the stroke of every note in every pass, whether each anchor is reached on its
 * stroke, plans and mends, repeats, swaps. Problems: `anchor-not-in-tune` and
 * `anchor-without-stroke` (errors), `arrival-missed`, `stroke-conflict`, `anchor-against-mark` and
 * `slur-into-anchor` (warnings).
 */
export function studyBowing(
  tune: Tune,
  performance: Performance,
  fingering: Fingering,
  map: SectionMap,
  request: BowingRequest,
  readAgain: Proof['readAgain'],
): { readonly study: BowingStudy; readonly problems: readonly Problem[] } {
  const found = request.anchors.map(anchor => findPassage(tune, anchor));
  const passages = found.flatMap(f => f.passage ?? []);
  const context = bowingContext(tune, performance, fingering, map, request.bowing);
  const laying = {
    start: request.start,
    restart: request.bowing.restart,
    anchored: new Map(passages.map(p => [p.first, p.direction])),
  };
  const proof = { request: laying, readAgain };
  const score = bowingInput(tune, performance, laying);
  const laid = layScore(score);
  const anchors = found.flatMap(f =>
    f.passage ? [studyAnchor(context, score, laid, passages, f.passage, f.request, proof)] : [],
  );
  const study: BowingStudy = {
    plan: { strokes: laid.strokes, strokeOf: laid.strokeOf },
    anchors,
    repeats: studyRepeats(context, score, laid, passages, proof),
    swaps: studySwaps(context, score, laid),
    varying: varyingNotes(score, laid),
    ...(isAmiss(score, laid, passages) && {
      whole: planWholeTune(context, score, laid, passages, ownLimits(score, laid, found)),
    }),
  };
  const problems = [
    ...found.flatMap(f => f.problems),
    ...conflictProblems(tune, laid, conflictMends(context, score, laid, passages, proof)),
    ...anchors.flatMap(a => anchorProblems(score, laid, a)),
  ];
  return { study, problems };
}

/** The lead-ins of anchors with a level or preset of their own, in every pass. */
function ownLimits(
  score: BowingInput,
  laid: LaidStrokes,
  found: readonly FoundPassage[],
): readonly OwnLimits[] {
  const passages = found.flatMap(f => f.passage ?? []);
  return found.flatMap(({ passage, request: { level, preset } }) =>
    passage && (level || preset)
      ? freeStretches(score, laid, passages, passage).map(s => ({ ...s, level, preset }))
      : [],
  );
}

function isAmiss(score: BowingInput, laid: LaidStrokes, passages: readonly SetPassage[]): boolean {
  const { faults, reversals } = troublesOf(score, laid, passages);
  return faults.size + reversals.size > 0;
}

function studyAnchor(
  context: BowingContext,
  score: BowingInput,
  laid: LaidStrokes,
  passages: readonly SetPassage[],
  passage: SetPassage,
  request: AnchorRequest,
  proof: Proof,
): Anchor {
  const { notes } = context.performance;
  const level = request.level ?? context.settings.level;
  const reached = laid.reached.filter(r => notes[r.note]?.event === passage.first);
  const missed = reached.filter(r => r.direction !== passage.direction).map(r => r.note);
  const stretches = freeStretches(score, laid, passages, passage);
  const leadInsFor = ({ level: asked, preset }: PlanRequest) =>
    planBowings(context, score, passage, stretches, asked ?? context.settings.level, preset);
  const regionsOf = (all: readonly Span[]) =>
    all.map(s => mendRegion(context, score, laid, s.from, s.end, level, request.preset));
  const targets = missed.map(anchorFault);
  const spans = [...stretches, ...spansToSign(score, missed, passage)];
  const near = { score, laid, passages, regions: regionsOf(spans), targets };
  const { mends, more } = mendsNearOrFar(near, missed, regionsOf, proof);
  return {
    ...passage,
    arrivals: reached.map(({ note, direction }) => ({
      pass: at(notes, note).pass,
      direction,
      agrees: direction === passage.direction,
    })),
    leadIns: leadInsFor(request),
    asked: (request.asked ?? []).map(asked => ({ ...asked, leadIns: leadInsFor(asked) })),
    mends,
    moreMends: more,
  };
}

function anchorProblems(score: BowingInput, laid: LaidStrokes, anchor: Anchor): Problem[] {
  const { tune, joined } = score;
  const { notes } = score.performance;
  const opening = tune.events[anchor.first];
  const place = opening?.place ?? null;
  const id = (e: number): string => {
    const event = tune.events[e];
    return event?.kind === 'note' ? event.id : '';
  };
  const facts = { anchor: anchor.id, note: id(anchor.first) };
  const slurred = joined[anchor.first] ? [problem('slur-into-anchor', place, { facts })] : [];
  if (anchor.arrivals.length === 0) {
    return [...slurred, problem('anchor-not-reached', place, { facts })];
  }
  const reached = laid.reached.filter(r => at(notes, r.note).event === anchor.first);
  const against = reached.find(r => r.against !== null)?.against;
  const contradicted = against
    ? [
        problem('anchor-against-mark', place, {
          facts: { ...facts, sign: id(at(notes, against.sign).event), strokes: against.strokes },
          actual: turned(anchor.direction),
          expected: [anchor.direction],
        }),
      ]
    : [];
  const missed = reached.filter(r => !r.against && r.direction !== anchor.direction);
  const [first] = missed;
  if (!first) return [...slurred, ...contradicted];
  const told = {
    ...facts,
    passes: missed.map(r => at(notes, r.note).pass).join(', '),
    ...mendFacts(tune, { mends: anchor.mends, more: anchor.moreMends }),
  };
  return [
    ...slurred,
    ...contradicted,
    problem('arrival-missed', place, {
      facts: told,
      actual: first.direction,
      expected: [anchor.direction],
    }),
  ];
}

/** Events whose stroke differs between passes. */
function varyingNotes(score: BowingInput, laid: LaidStrokes): SlurGroup {
  const seen = new Map<number, Direction>();
  const varying = new Set<number>();
  score.performance.notes.forEach((note, k) => {
    const { direction } = strokeAt(laid, k);
    const first = seen.get(note.event);
    if (first === undefined) seen.set(note.event, direction);
    else if (first !== direction) varying.add(note.event);
  });
  return [...varying].sort((a, b) => a - b);
}
