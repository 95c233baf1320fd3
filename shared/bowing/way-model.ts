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

/** A way of bowing, for one tune. */
export interface Way {
  readonly preset: Preset;
  readonly level: Level;
  readonly wishes: WayWishes;
}

/**
 * A way for one tune. Where slurs follow the book of 1883, which strokes fall on the strong beats follows
 * from them: asked for besides, fewer of the book's own slurs are found (F1 0.69 for 0.77 on tunes kept
 * from the counting).
 */
export function wayFor(context: BowingContext, preset: Preset, level: Level): Way {
  const printed = preset.pattern === 'as-printed-1883';
  return {
    preset: printed ? { ...preset, strongBeat: null } : preset,
    level,
    wishes: wayWishes(context.tune, preset),
  };
}

/** Notes to be bowed in a way. */
export interface WayModel {
  readonly form: LeadInModel;
  /** For each junction: above 0 where the way slurs, below where it changes. */
  readonly wishes: readonly number[];
  /** For each junction: two notes of one stroke, if slurred, are parted in it. */
  readonly hooks: readonly boolean[];
  /** For each junction: it lies inside a triplet. */
  readonly inTriplet: readonly boolean[];
}

/**
 * What it costs, in thousandths, to slur two notes of a triplet and part the third: a triplet is one
 * stroke, or three (common practice; one stroke in all 47 bars of reels that open with one in the book of 1883).
 */
const tripletCut = 3000;

/** The sounded notes from..end. A hooked pair may be of one pitch; else the limits of a lead-in hold. */
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
 * Costs of strokes in a way, of notes played `downs` times from a down-bow and `ups` times from an
 * up-bow, and written `copies` times. In order: junctions unlike `base`; what the way wishes of each
 * junction; strong beats off the stroke that the way wants.
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
 * The way where nothing is demanded: true where the stroke changes. Strong beats choose among bends, and
 * are not asked here: single strokes stay single though a jig's second beats come up.
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

/** The way laid from one stroke so that it arrives on another, bent as little as can be; null for none. */
export function laidToArrive(
  model: WayModel,
  { start, arrive }: Pick<LeadInModel, 'start' | 'arrive'>,
): { readonly bowing: readonly boolean[]; readonly free: readonly boolean[] } | null {
  const free = laidFreely(model);
  const terms = wayTerms(model, free, { downs: 1, ups: 0, copies: 1 });
  const [best] = bestBy({ ...model.form, written: free, start, arrive }, 1, terms);
  return best ? { bowing: best.bowing, free } : null;
}

/** What cells must have in common to share a bowing: notes, lengths, place in the bar, signs, dots, fingers. */
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

/** The stroke on which a part begins: `start=` for a part that opens the tune, else down (`firstStroke`). */
export const partStart = (start: Direction | null, opensTune: boolean): Direction =>
  opensTune && start ? start : 'down';
