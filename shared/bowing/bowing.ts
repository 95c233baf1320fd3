import type { BarRange } from '../music/bar-range.ts';
import type { Fraction } from '../music/fraction.ts';
import type { Direction } from '../music/tune.ts';
import type { Place } from '../problem.ts';
import type { Level } from './settings.ts';

export type { Direction };

/** One stroke of the bow. `notes` are consecutive indices into `performance.notes`. */
export interface Stroke {
  readonly direction: Direction;
  readonly pass: number;
  readonly notes: readonly number[];
  /** Direction that a sign or an anchor states; null where it follows from the stroke before. */
  readonly stated: Direction | null;
  /** Whether the bow lifts before it and starts again in the same direction. */
  readonly retake: boolean;
}

/** Strokes of a whole performance, and the stroke of each sounded note (index into `strokes`). */
export interface StrokePlan {
  readonly strokes: readonly Stroke[];
  readonly strokeOf: readonly number[];
}

/** Event indices of the written notes that share a stroke, two or more, in order. */
export type SlurGroup = readonly number[];

/** One edit of the written bowing. Notes are event indices. */
export type Edit =
  | { readonly kind: 'slur'; readonly notes: SlurGroup }
  | { readonly kind: 'drop'; readonly notes: SlurGroup }
  | { readonly kind: 'lengthen' | 'shorten'; readonly from: SlurGroup; readonly to: SlurGroup }
  | { readonly kind: 'split'; readonly from: SlurGroup; readonly to: readonly SlurGroup[] }
  | { readonly kind: 'merge'; readonly from: readonly SlurGroup[]; readonly to: SlurGroup }
  | Retake;

/**
 * A lift of the bow before a note: the next stroke has the same direction. Where no sign comes earlier, the
 * strokes before would be counted back from the new sign; then the first note gets a sign too.
 */
export interface Retake {
  readonly kind: 'retake';
  /** Note after which a breath is written; null where a rest or a breath is there already. */
  readonly after: number | null;
  readonly before: number;
  readonly direction: Direction;
  /** The first note, and its present stroke; null where it needs no sign. */
  readonly opening: { readonly event: number; readonly direction: Direction } | null;
}

/** A reason for a plan; `shared/words` has the sentences. */
export type Reason =
  | 'as-written'
  | 'flips-once'
  | 'two-flips'
  | 'many-flips'
  | 'keeps'
  | 'fewest-changes'
  | 'beats-down'
  | 'beats-up'
  | 'into-beats'
  | 'stepwise'
  /** The way of bowing of the tune, with as few changes as reach the anchor. */
  | 'own-way'
  /** Single strokes, except where a slur is needed. */
  | 'single-strokes'
  | 'phrases-alike'
  /** None of the plans that were tried bows all identical phrases alike. */
  | 'phrases-untied'
  /** Plans that bow more identical phrases alike were not tried: the lead-in has too many of them. */
  | 'phrases-untried';

/** One bowing of a lead-in that reaches the anchor on its stroke. */
export interface Plan {
  /** All slurs of the lead-in under this plan. */
  readonly slurs: readonly SlurGroup[];
  readonly strokes: number;
  /** Edits that make this plan of the written bowing. */
  readonly changes: readonly Edit[];
  /** Edits that make this plan of the way of bowing it follows; empty where it follows none. */
  readonly bends: readonly Edit[];
  /** Time of all down-bows minus time of all up-bows in the lead-in, in whole notes. */
  readonly drift: Fraction;
  readonly because: readonly Reason[];
  /** Terms of the cost, compared from the left; the lower ranks first. See `Cost`. */
  readonly cost: readonly number[];
}

/** The notes before an anchor whose bowing is free: from the last fixed stroke to the anchor, in the passes that play them alike. */
export interface LeadIn {
  readonly passes: readonly number[];
  /** Event indices of its notes in order, without the second notes of ties. */
  readonly notes: readonly number[];
  readonly start: Direction;
  /** Number of strokes as written. */
  readonly strokes: number;
  readonly groupings: bigint;
  readonly arriving: bigint;
  readonly allowed: bigint;
  readonly allowedArriving: bigint;
  readonly plans: readonly Plan[];
}

/** The stroke on which one pass reaches an anchor. */
export interface Arrival {
  readonly pass: number;
  /** Stroke of the first note of the anchor, as it follows from the stroke before. */
  readonly direction: Direction;
  readonly agrees: boolean;
}

/** An anchor with its arrivals, plans and mends. */
export interface Anchor {
  readonly id: string;
  /** First and last event index, both included. */
  readonly first: number;
  readonly last: number;
  /** Stroke that its first note must have. */
  readonly direction: Direction;
  readonly arrivals: readonly Arrival[];
  readonly leadIns: readonly LeadIn[];
  /** The lead-ins under each further level and preset that a plan block asks for. */
  readonly asked: readonly (PlanRequest & { readonly leadIns: readonly LeadIn[] })[];
  /** The best few single edits, each of which mends every missed pass and breaks none; best first. */
  readonly mends: readonly Edit[];
  /** Number of mends found beyond `mends`. */
  readonly moreMends: number;
}

/** Whether the second pass through a part begins on the same stroke as the first. */
export interface RepeatStudy {
  readonly part: number;
  /** Number of strokes in each pass. */
  readonly strokes: readonly number[];
  /** null where the part is played once. */
  readonly secondPass: 'same' | 'reversed' | null;
  readonly mends: readonly Edit[];
}

/** Level, whose limits hold, and preset of a plan; null for those of the book. */
export interface PlanRequest {
  readonly level: Level | null;
  readonly preset: string | null;
}

/** An `:::anchor` block as the study needs it. */
export interface AnchorRequest {
  readonly id: string;
  readonly bars: BarRange;
  /** `start=` of the block; null where the sign on its first note counts. */
  readonly start: Direction | null;
  readonly level: Level | null;
  readonly preset: string | null;
  /** Other levels and presets that plan blocks ask for. */
  readonly asked?: readonly PlanRequest[];
  /** Place of the block, for messages. */
  readonly place: Place | null;
}

/** Other bowings of a phrase that leave every stroke outside it as it is. */
export interface Swaps {
  /** Label of the phrase. */
  readonly phrase: string;
  readonly keeps: readonly (readonly SlurGroup[])[];
  readonly flips: readonly (readonly SlurGroup[])[];
}

/** A demand on the bowing of a tune: the stroke of an anchor, of a sign, or at the start of a repeat. */
export type Demand =
  | { readonly kind: 'anchor'; readonly id: string; readonly pass: number }
  | { readonly kind: 'sign'; readonly event: number; readonly pass: number }
  | { readonly kind: 'repeat'; readonly part: number }
  /** The bar after a short opening bar starts on a down-bow. */
  | { readonly kind: 'opening' };

/** The cheapest edits that meet all demands on a tune together, or why there are none. */
export type WholeTune =
  | { readonly kind: 'solved'; readonly changes: readonly Edit[]; readonly cost: readonly number[] }
  /** A smallest set of demands that no bowing meets together; it may not be the smallest where over 20,000 sets would have to be tried. */
  | { readonly kind: 'contradiction'; readonly demands: readonly Demand[] }
  /** The demands can be met, but only beyond the limits of the level. */
  | { readonly kind: 'beyond-limits' }
  /** Too many free parities to try all their values; `free` is their number. */
  | { readonly kind: 'too-many'; readonly free: number }
  /** A note begins in one pass, but is tied to the note before it in another, so that cells overlap. */
  | { readonly kind: 'unlike-passes' };

/** The bowing of one tune. */
export interface BowingStudy {
  readonly plan: StrokePlan;
  readonly anchors: readonly Anchor[];
  readonly repeats: readonly RepeatStudy[];
  readonly swaps: readonly Swaps[];
  /** Events whose stroke differs between passes. */
  readonly varying: readonly number[];
  /** How to mend the whole tune at once; missing where nothing is wrong. */
  readonly whole?: WholeTune;
}
