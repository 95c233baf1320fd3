import { at } from '../must.ts';
import type { Phrase } from '../sections/section-map.ts';
import type { Direction, SlurGroup, Swaps } from './bowing.ts';
import type { BowingInput } from './bowing-input.ts';
import { type LaidStrokes, strokeAt } from './lay-strokes.ts';
import { type LeadInModel, strokeCount, strokeDirection } from './lead-in-model.ts';
import { type BowingContext, leadInModel, presetOf } from './lead-in-of.ts';
import { bestBowings } from './plan-lead-in.ts';
import { slursOf } from './slur-edits.ts';
import { strokeTerms } from './stroke-terms.ts';

/** Most bowings offered in each group besides those in use. */
const mostOthers = 3;

/**
 * Finds bowings of each family of phrases: those in use and the best others, as slurs of its first occurrence.
 * After those in `keeps` the next stroke is the same as after the first occurrence, after those in `flips` the
 * opposite. Each can replace any other of its group.
 */
export function studySwaps(context: BowingContext, score: BowingInput, laid: LaidStrokes): Swaps[] {
  const families = new Map<string, Phrase[]>();
  for (const phrase of context.map.phrases) {
    families.set(phrase.label, [...(families.get(phrase.label) ?? []), phrase]);
  }
  return [...families].flatMap(([label, phrases]) => {
    const places = phrases.flatMap(p => placeOf(context, score, laid, p) ?? []);
    const first = places[0];
    if (!first || first.form.notes < 2) return [];
    const { form, events } = first;
    const strokes = strokeCount(form.written);
    const terms = strokeTerms(form);
    const alike = places.filter(p => p.form.notes === form.notes);
    const used = distinct(alike.map(p => p.form.written));
    const groups = [0, 1].map(turn => {
      const arrive = strokeDirection(form.start, strokes + turn);
      const inUse = used.filter(x => strokeCount(x) % 2 === (strokes + turn) % 2);
      const most = mostOthers + inUse.length;
      const best = bestBowings({ ...form, arrive }, most, terms).map(r => r.bowing);
      return distinct([...inUse, ...best])
        .slice(0, most)
        .map(x => slursOf(x, events));
    });
    return [{ phrase: label, keeps: at(groups, 0), flips: at(groups, 1) }];
  });
}

interface Place {
  readonly form: LeadInModel;
  readonly events: SlurGroup;
}

/** The first playing of a phrase, where it is played in one stretch. */
function placeOf(
  context: BowingContext,
  score: BowingInput,
  laid: LaidStrokes,
  phrase: Phrase,
): Place | null {
  const { notes } = context.performance;
  const inside = (k: number): boolean => {
    const e = notes[k]?.event;
    return e !== undefined && phrase.first <= e && e < phrase.end;
  };
  const from = notes.findIndex((_, k) => inside(k));
  if (from < 0) return null;
  let end = from;
  while (inside(end) && (end === from || score.follows[end])) end++;
  const start: Direction = strokeAt(laid, from).direction;
  const form = leadInModel(context, from, end, score.joined, {
    start,
    arrive: start,
    level: context.settings.level,
    preset: presetOf(context.settings, context.tune, null),
  });
  return { form, events: notes.slice(from, end).map(n => n.event) };
}

function distinct(bowings: readonly (readonly boolean[])[]): (readonly boolean[])[] {
  const seen = new Set<string>();
  return bowings.filter(x => {
    const key = x.join();
    return !seen.has(key) && seen.add(key);
  });
}
