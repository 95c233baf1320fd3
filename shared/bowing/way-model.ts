import { fractionText } from '../music/fraction.ts';
import { pitchName } from '../music/pitch.ts';
import { at } from '../must.ts';
import { onsetInFullBar } from './bar-rhythms.ts';
import type { Direction } from './bowing.ts';
import { type Cost, compareCost, type LeadInModel } from './lead-in-model.ts';
import { type BowingContext, leadInModel, slurFault } from './lead-in-of.ts';
import { bestBy } from './plan-lead-in.ts';
import type { Level, Preset } from './settings.ts';
import { runningSums, type StrokeTerms, strokeTerms } from './stroke-terms.ts';
import { type WayWishes, wayWishes } from './way-wishes.ts';

/** A way of bowing applied to one tune. */
export interface Way {
  readonly preset: Preset;
  readonly level: Level;
  readonly wishes: WayWishes;
}

/**
 * Applies a preset to a tune. Where slurs follow the book of 1883, no stroke is preferred on strong beats: with
 * that preference fewer of the book's own slurs are found (F1 0.69 instead of 0.77 on tunes that were not
 * counted).
 */
export function wayFor(context: BowingContext, preset: Preset, level: Level): Way {
  const printed = preset.pattern === 'as-printed-1883';
  return {
    preset: printed ? { ...preset, strongBeat: null } : preset,
    level,
    wishes: wayWishes(context.tune, preset),
  };
}

/** Notes, and what a way prefers at each of their junctions. */
export interface WayModel {
  readonly form: LeadInModel;
  /** For each junction: above 0 where the way slurs, below 0 where it changes the stroke. */
  readonly wishes: readonly number[];
  /** For each junction: whether its notes, if slurred, are separated in the stroke. */
  readonly hooks: readonly boolean[];
  /** For each junction: whether it is inside a triplet. */
  readonly inTriplet: readonly boolean[];
}

/**
 * Cost, in thousandths, of slurring only two notes of a triplet: a triplet is one stroke or three (common
 * practice; one stroke in all 47 bars of reels in the book of 1883 that begin with a triplet).
 */
const tripletCut = 3000;

/** Makes the model of the sounded notes from `from` to `end` (not included). Limits as in `leadInModel`, but a hooked pair may repeat a pitch. */
export function wayModel(
  context: BowingContext,
  { preset, level, wishes }: Way,
  from: number,
  end: number,
): WayModel {
  const aim = { start: 'down', arrive: 'down', level, preset } as const;
  const nothing = context.tune.events.map(() => false);
  const form = leadInModel(context, from, end, nothing, aim);
  const notes = context.performance.notes.slice(from, end);
  const junctions = notes.slice(1).map((note, j) => {
    const before = at(notes, j).event;
    const hook = wishes.hooks(before, note.event);
    const fault = slurFault(context, preset, before, note);
    const free = fault === null || (hook && fault === 'repeated');
    return {
      hook,
      slurrable: free && !wishes.forbids(before, note.event),
      wish: wishes.wish(before, note.event, at(form.rough, j)),
    };
  });
  return {
    form: { ...form, slurrable: junctions.map(j => j.slurrable) },
    wishes: junctions.map(j => j.wish),
    hooks: junctions.map(j => j.hook),
    inTriplet: notes.slice(1).map(note => {
      const event = at(context.tune.events, note.event);
      return event.kind === 'note' && event.tuplet?.p === 3 && !event.tuplet.opens;
    }),
  };
}

/**
 * Makes the costs of strokes in a way, for notes that `downs` passes begin on a down-bow and `ups` on an up-bow,
 * and that are written `copies` times. In order: junctions that differ from `base`; wishes of the way not met;
 * strong beats not on the preferred stroke.
 */
export function wayTerms(
  { form, wishes, inTriplet }: WayModel,
  base: readonly boolean[] | null,
  { downs, ups, copies }: { readonly downs: number; readonly ups: number; readonly copies: number },
): StrokeTerms {
  const passes = { straight: downs, turned: ups };
  const written = base ?? form.written;
  const changed = { ...form, written };
  const own = strokeTerms(changed, passes, runningSums(changed));
  const gains = [0];
  for (const wish of wishes) gains.push(at(gains, gains.length - 1) + wish);
  return {
    lastFrom: own.lastFrom,
    cost: (i, j, direction): Cost => {
      const [bends, , strong] = own.cost(i, j, direction);
      const cuts = j > i ? Number(inTriplet[j] === true) + Number(inTriplet[i - 1] === true) : 0;
      const gain = (gains[j] as number) - (gains[i] as number) - tripletCut * cuts;
      return [base ? bends * copies : 0, 0 - gain * copies, strong, 0, 0];
    },
  };
}

/**
 * Returns the bowing of a way without demands; true where the stroke changes. Strong beats do not count here,
 * only in the choice of bends: single strokes stay single, although every second beat of a jig is then up.
 */
export function laidFreely(model: WayModel): readonly boolean[] {
  const form = { ...model.form, strongBeat: null };
  const terms = wayTerms({ ...model, form }, null, { downs: 1, ups: 0, copies: 1 });
  const found = (['down', 'up'] as const).flatMap(arrive =>
    bestBy({ ...model.form, arrive }, 1, terms),
  );
  const [best] = found.sort((a, b) => compareCost(a.cost, b.cost));
  return best ? best.bowing : model.form.written;
}

/** Returns the bowing from `start` to `arrive` that differs least from the way; null where none keeps the limits. */
export function laidToArrive(
  model: WayModel,
  { start, arrive }: Pick<LeadInModel, 'start' | 'arrive'>,
): { readonly bowing: readonly boolean[]; readonly free: readonly boolean[] } | null {
  const free = laidFreely(model);
  const terms = wayTerms(model, free, { downs: 1, ups: 0, copies: 1 });
  const [best] = bestBy({ ...model.form, written: free, start, arrive }, 1, terms);
  return best ? { bowing: best.bowing, free } : null;
}

/** Key of the properties that cells must share to share a bowing: notes, lengths, place in the bar, signs, dots, fingers. */
export function likeness(context: BowingContext, events: readonly number[]): string {
  return events
    .map(e => {
      const event = at(context.tune.events, e);
      if (event.kind !== 'note') return '';
      const pitches = event.pitches.map(pitchName).join('');
      const signs = `${event.mark}${event.staccato}${event.graces.length}${event.fingers.join('')}`;
      const onset = fractionText(onsetInFullBar(context.tune, e));
      return `${onset} ${fractionText(event.duration)} ${pitches} ${signs} ${event.tied}`;
    })
    .join('|');
}

/** Stroke on which a part begins: `start=` where it opens the tune, else down (`firstStroke`). */
export const partStart = (start: Direction | null, opensTune: boolean): Direction =>
  opensTune && start ? start : 'down';
