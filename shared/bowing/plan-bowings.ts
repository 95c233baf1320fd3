import { type Fraction, fraction } from '../music/fraction.ts';
import type { LeadIn, Plan, Reason } from './bowing.ts';
import { type BowingInput, lastEvent } from './bowing-input.ts';
import type { FreeStretch, SetPassage } from './find-lead-ins.ts';
import { type LeadInModel, strokeDirection, strokesOf } from './lead-in-model.ts';
import {
  type BowingContext,
  type LeadInAim,
  leadInModel,
  presetOf,
  unitsInWhole,
} from './lead-in-of.ts';
import { type AlikeSpans, planAlike } from './plan-alike.ts';
import { countBowings, type RankedBowing } from './plan-lead-in.ts';
import type { Level } from './settings.ts';
import { editsBetween, flips, slursOf } from './slur-edits.ts';
import { bowingCost } from './stroke-terms.ts';
import { laidToArrive, wayFor, wayModel } from './way-model.ts';

/**
 * Plans the lead-ins of an anchor: counts of all bowings, and at most three plans that reach it on its stroke.
 * These are the smallest change to the written bowing (no change, where that arrives, even beyond the limits),
 * the way of bowing with as few changes as arrive, and single strokes; equal ones are given once. There are no
 * plans where passes begin the same notes on different strokes, or where an edit would change the first stroke
 * of the lead-in itself, since no plan is then right for all passes. Mends may still exist.
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
    const aim = {
      start: stretch.start,
      arrive: anchor.direction,
      level,
      preset: presetOf(context.settings, context.tune, preset),
    };
    const form = leadInModel(context, stretch.from, stretch.end, score.joined, aim);
    const divided = keys.some((key, other) => other !== i && key === keys[i]);
    const planless = divided || stretch.turnsItself;
    return {
      passes: stretch.passes,
      notes: events,
      start: stretch.start,
      strokes: strokesOf(form.written).length,
      ...countBowings(form),
      plans: planless
        ? []
        : plansOf(
            form,
            events,
            smallestChange(form, alikeSpans(context, stretch, form)),
            laidPlans(context, stretch, aim),
          ),
    };
  });
}

/** A bowing of which a plan is made, and the reasons for it that do not follow from its cost. */
interface Found {
  readonly bowing: readonly boolean[];
  readonly because: readonly Reason[];
  /** Bowing of the way that it follows; null where it follows none. */
  readonly bends: readonly boolean[] | null;
}

/** The written bowing where it arrives; else one with the fewest junctions changed; null where none keeps the limits. */
function smallestChange(form: LeadInModel, classes: AlikeSpans[]): Found | null {
  const strokes = strokesOf(form.written).length;
  if (strokeDirection(form.start, strokes) === form.arrive) {
    return { bowing: form.written, because: [], bends: null };
  }
  const { ranked, alike, untied, capped } = planAlike(form, classes, 1);
  const because: Reason[] = ['fewest-changes'];
  if (alike > 0) because.push('phrases-alike');
  if (untied > 0) because.push(capped ? 'phrases-untried' : 'phrases-untied');
  return ranked[0] ? { bowing: ranked[0].bowing, because, bends: null } : null;
}

/** Bowings of the lead-in that arrive: in the way of the preset, and in single strokes. */
function laidPlans(context: BowingContext, stretch: FreeStretch, aim: LeadInAim): Found[] {
  const single = context.settings.presets['single-strokes'];
  const ways = [
    [aim.preset, 'own-way'],
    ...(single ? [[single, 'single-strokes'] as const] : []),
  ] as const;
  return ways.flatMap(([preset, reason]) => {
    const way = wayFor(context, preset, aim.level);
    const laid = laidToArrive(wayModel(context, way, stretch.from, stretch.end), aim);
    return laid ? [{ bowing: laid.bowing, because: [reason], bends: laid.free }] : [];
  });
}

function plansOf(
  form: LeadInModel,
  events: readonly number[],
  smallest: Found | null,
  laid: readonly Found[],
): Plan[] {
  const found = smallest ? [smallest, ...laid] : laid;
  const distinct = found.filter(
    ({ bowing }, i) => found.findIndex(f => f.bowing.join() === bowing.join()) === i,
  );
  return distinct.map(({ bowing, because, bends }) => {
    const cost = bowingCost(form, bowing);
    const changes = editsBetween(form.written, bowing, events);
    return {
      slurs: slursOf(bowing, events),
      strokes: strokesOf(bowing).length,
      changes,
      bends: bends ? editsBetween(bends, bowing, events) : [],
      drift: driftOf(form, bowing),
      because: reasonsFor(form, { bowing, cost }, changes.filter(flips).length, because),
      cost,
    };
  });
}

/** Time of down-bows minus time of up-bows, in whole notes. */
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
  besides: readonly Reason[],
): Reason[] {
  const [changed, rough, offBeat, notInto] = plan.cost;
  if (changed === 0) return ['as-written'];
  const slurred = plan.bowing.some(x => !x);
  const reasons: Reason[] = [
    turns === 0 ? 'keeps' : turns === 1 ? 'flips-once' : turns === 2 ? 'two-flips' : 'many-flips',
  ];
  if (form.strongBeat && offBeat === 0) {
    reasons.push(form.strongBeat === 'down' ? 'beats-down' : 'beats-up');
  }
  if (form.intoBeat && slurred && notInto === 0) reasons.push('into-beats');
  if (slurred && rough === 0) reasons.push('stepwise');
  return [...reasons, ...besides];
}

/**
 * Finds identical phrases that lie in the lead-in and have no slur or tie over their edges, as ranges of its
 * notes. Pickups are left out, since a phrase may occur with and without one.
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
