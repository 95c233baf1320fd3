import { type Fraction, fraction } from '../music/fraction.ts';
import type { LeadIn, Plan, Reason } from './bowing.ts';
import { type BowingInput, lastEvent } from './bowing-input.ts';
import type { FreeStretch, SetPassage } from './find-lead-ins.ts';
import { type LeadInModel, strokeDirection, strokesOf } from './lead-in-model.ts';
import { type BowingContext, leadInModel, presetOf, unitsInWhole } from './lead-in-of.ts';
import { type AlikePlans, type AlikeSpans, planAlike } from './plan-alike.ts';
import { countBowings, type RankedBowing } from './plan-lead-in.ts';
import type { Level } from './settings.ts';
import { editsBetween, flips, slursOf } from './slur-edits.ts';
import { bowingCost } from './stroke-terms.ts';

/** Plans worked out for each lead-in; the page shows the first few. */
const mostPlans = 6;

/**
 * The lead-ins of an anchor: counts of all ways, and the best plans that arrive. The teacher's own
 * bowing comes first where it arrives, within the limits or not. Where passes come to the same notes
 * on different strokes, or an edit in them would turn round their own start, no one plan serves, and
 * there are none: the mends do.
 */
export function planBowings(
  context: BowingContext,
  score: BowingInput,
  anchor: SetPassage,
  stretches: readonly FreeStretch[],
  level: Level,
  preset: string | null,
): LeadIn[] {
  const { notes } = context.performance;
  const eventsOf = (s: FreeStretch): number[] => notes.slice(s.from, s.end).map(n => n.event);
  const keys = stretches.map(s => eventsOf(s).join(' '));
  return stretches.map((stretch, i) => {
    const events = eventsOf(stretch);
    const form = leadInModel(context, stretch.from, stretch.end, score.joined, {
      start: stretch.start,
      arrive: anchor.direction,
      level,
      preset: presetOf(context.settings, context.tune, preset),
    });
    const divided = keys.some((key, other) => other !== i && key === keys[i]);
    const planless = divided || stretch.turnsItself;
    return {
      passes: stretch.passes,
      notes: events,
      start: stretch.start,
      strokes: strokesOf(form.written).length,
      ...countBowings(form),
      plans: planless ? [] : plansOf(form, events, alikeSpans(context, stretch, form)),
    };
  });
}

function plansOf(form: LeadInModel, events: readonly number[], classes: AlikeSpans[]): Plan[] {
  const found = planAlike(form, classes, mostPlans);
  const strokes = strokesOf(form.written).length;
  const arrives = strokeDirection(form.start, strokes) === form.arrive;
  const own: RankedBowing = { bowing: form.written, cost: bowingCost(form, form.written) };
  const others = found.ranked.filter(r => r.cost[0] > 0);
  const ranked = (arrives ? [own, ...others] : others).slice(0, mostPlans);
  const fewest = Math.min(...others.map(r => r.cost[0]));
  return ranked.map(({ bowing, cost }) => {
    const changes = editsBetween(form.written, bowing, events);
    return {
      slurs: slursOf(bowing, events),
      strokes: strokesOf(bowing).length,
      changes,
      drift: driftOf(form, bowing),
      because: reasonsFor(form, { bowing, cost }, changes.filter(flips).length, fewest, found),
      cost,
    };
  });
}

/** Time down minus time up, in whole notes. */
function driftOf(form: LeadInModel, bowing: readonly boolean[]): Fraction {
  let drift = 0;
  strokesOf(bowing).forEach(([from, last], s) => {
    const time = form.lengths.slice(from, last + 1).reduce((sum, t) => sum + t, 0);
    drift += strokeDirection(form.start, s) === 'down' ? time : -time;
  });
  return fraction(drift, unitsInWhole);
}

function reasonsFor(
  form: LeadInModel,
  plan: RankedBowing,
  turns: number,
  fewest: number,
  found: AlikePlans,
): Reason[] {
  const [changed, offBeat, rough, notInto] = plan.cost;
  if (changed === 0) return ['as-written'];
  const slurred = plan.bowing.some(x => !x);
  const reasons: Reason[] = [
    turns === 0 ? 'keeps' : turns === 1 ? 'flips-once' : turns === 2 ? 'two-flips' : 'many-flips',
  ];
  if (changed === fewest) reasons.push('fewest-changes');
  if (form.strongBeat && offBeat === 0) {
    reasons.push(form.strongBeat === 'down' ? 'beats-down' : 'beats-up');
  }
  if (form.intoBeat && slurred && notInto === 0) reasons.push('into-beats');
  if (slurred && rough === 0) reasons.push('stepwise');
  if (found.alike > 0) reasons.push('phrases-alike');
  if (found.untied > 0) reasons.push(found.capped ? 'phrases-untried' : 'phrases-untied');
  return reasons;
}

/**
 * Identical phrases wholly inside the lead-in, with no slur or tie over their edges, as stretches of
 * its notes. Pickups are left out: the same phrase may come with one and without.
 */
export function alikeSpans(
  context: BowingContext,
  stretch: Pick<FreeStretch, 'from' | 'end'>,
  form: LeadInModel,
): AlikeSpans[] {
  const { tune, map, performance } = context;
  const notes = performance.notes.slice(stretch.from, stretch.end);
  const families = new Map<string, [number, number][]>();
  for (const phrase of map.phrases) {
    const opening = phrase.bars.find(b => !tune.bars[b]?.pickup);
    const first = Math.max(phrase.first, tune.bars[opening ?? -1]?.first ?? phrase.first);
    const inside = (e: number): boolean => first <= e && e < phrase.end;
    const from = notes.findIndex(n => inside(n.event));
    const count = notes.filter(n => inside(n.event)).length;
    const end = from + count;
    const written = tune.events.slice(first, phrase.end).filter(e => e.kind === 'note').length;
    const sounded = notes.slice(from, end).reduce((sum, n) => sum + 1 + n.tied.length, 0);
    const whole =
      count > 0 &&
      sounded === written &&
      inside(notes[end - 1]?.event ?? -1) &&
      inside(lastEvent(notes[end - 1] as (typeof notes)[number]));
    const edged = form.written[from - 1] !== false && form.written[end - 1] !== false;
    if (whole && edged)
      families.set(phrase.label, [...(families.get(phrase.label) ?? []), [from, end]]);
  }
  const rhythm = ([from, end]: readonly [number, number]): string =>
    form.lengths.slice(from, end).join();
  return [...families.values()]
    .map(spans => spans.filter(s => rhythm(s) === rhythm(spans[0] as [number, number])))
    .filter(spans => spans.length > 1);
}
