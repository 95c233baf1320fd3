import type { BarRange } from '../music/bar-range.ts';
import type { Fraction } from '../music/fraction.ts';
import type { Direction } from '../music/tune.ts';
import type { Place } from '../problem.ts';
import type { Level } from './settings.ts';

export type { Direction };

/** One movement of the bow. Notes are indices into `performance.notes`, consecutive. */
export interface Stroke {
  readonly direction: Direction;
  readonly pass: number;
  readonly notes: readonly number[];
  /** The mark that states it, if one is written. */
  readonly stated: Direction | null;
  /** The bow lifts before it and starts again in the same direction. */
  readonly retake: boolean;
}

/** Strokes of a whole performance, and the stroke of each sounded note (index into `strokes`). */
export interface StrokePlan {
  readonly strokes: readonly Stroke[];
  readonly strokeOf: readonly number[];
}

/** Event indices of the written notes that share a stroke, two or more, in order. */
export type SlurGroup = readonly number[];

/** One edit to the written slurs. Event indices of notes. */
export type Edit =
  | { readonly kind: 'slur'; readonly notes: SlurGroup }
  | { readonly kind: 'drop'; readonly notes: SlurGroup }
  | { readonly kind: 'lengthen' | 'shorten'; readonly from: SlurGroup; readonly to: SlurGroup }
  | { readonly kind: 'split'; readonly from: SlurGroup; readonly to: readonly SlurGroup[] }
  | { readonly kind: 'merge'; readonly from: readonly SlurGroup[]; readonly to: SlurGroup }
  | Retake;

/**
 * The bow lifts before a note and starts again, in the same direction. Where no sign comes earlier,
 * the strokes before would be counted back from the new one: then the first note gets a sign too.
 */
export interface Retake {
  readonly kind: 'retake';
  /** The note after which a breath is written; null where a rest or a breath stands there already. */
  readonly after: number | null;
  readonly before: number;
  readonly direction: Direction;
  /** The first note, and the stroke that it has already; null where no sign is needed there. */
  readonly opening: { readonly event: number; readonly direction: Direction } | null;
}

/** Why a plan is offered; `words/` makes the sentence. */
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
  /** The tune's way of bowing, laid through the lead-in and bent as little as can be. */
  | 'own-way'
  /** Single strokes, but where a slur must be. */
  | 'single-strokes'
  | 'phrases-alike'
  /** No plan that was looked for keeps all identical phrases alike. */
  | 'phrases-untied'
  /** Keeping more identical phrases alike was not tried: they cut the lead-in too often. */
  | 'phrases-untried';

/** One bowing of the free notes before an anchor that arrives on its stroke. */
export interface Plan {
  /** All slur groups of the lead-in under this plan. */
  readonly slurs: readonly SlurGroup[];
  readonly strokes: number;
  /** What differs from the written bowing, as edits. */
  readonly changes: readonly Edit[];
  /** In the tune's own way: where that is bent so that it arrives. */
  readonly bends: readonly Edit[];
  /** Time down minus time up over the lead-in, in whole notes. */
  readonly drift: Fraction;
  readonly because: readonly Reason[];
  /** The rank: smaller is better, compared from the left. */
  readonly cost: readonly number[];
}

/** The free notes from the last settled stroke to an anchor, as the passes that share it play them. */
export interface LeadIn {
  readonly passes: readonly number[];
  /** Event indices of its written notes, tied ones left out, in order. */
  readonly notes: readonly number[];
  readonly start: Direction;
  /** Strokes as written. */
  readonly strokes: number;
  readonly groupings: bigint;
  readonly arriving: bigint;
  readonly allowed: bigint;
  readonly allowedArriving: bigint;
  readonly plans: readonly Plan[];
}

/** How the bow comes to an anchor in one pass. */
export interface Arrival {
  readonly pass: number;
  /** The direction in which the bow is about to move. */
  readonly direction: Direction;
  readonly agrees: boolean;
}

/** An anchor with its arrivals, plans and mends. */
export interface Anchor {
  readonly id: string;
  /** First and last event index, both included. */
  readonly first: number;
  readonly last: number;
  /** The stroke it must be reached on. */
  readonly direction: Direction;
  readonly arrivals: readonly Arrival[];
  readonly leadIns: readonly LeadIn[];
  /** The same lead-ins for each further plan asked for. */
  readonly asked: readonly (PlanRequest & { readonly leadIns: readonly LeadIn[] })[];
  /** Single edits, each of which mends every missed pass and breaks none, best first; the first few. */
  readonly mends: readonly Edit[];
  /** How many more were found. */
  readonly moreMends: number;
}

/** Whether the second time through a part begins on the same stroke as the first. */
export interface RepeatStudy {
  readonly part: number;
  /** Strokes in each pass. */
  readonly strokes: readonly number[];
  /** null where the part is played once. */
  readonly secondPass: 'same' | 'reversed' | null;
  readonly mends: readonly Edit[];
}

/** Whose limits and which way of bowing; null for the book's own. */
export interface PlanRequest {
  readonly level: Level | null;
  readonly preset: string | null;
}

/** What stands in for `:::anchor`: a passage to fix. */
export interface AnchorRequest {
  readonly id: string;
  readonly bars: BarRange;
  /** null: the tune has a sign there. */
  readonly start: Direction | null;
  readonly level: Level | null;
  readonly preset: string | null;
  /** Plans asked for besides, for other levels or presets. */
  readonly asked?: readonly PlanRequest[];
  /** Where the teacher asks for it, for messages. */
  readonly place: Place | null;
}

/** Other bowings of a phrase that leave every stroke outside it as it is. */
export interface Swaps {
  /** Phrase label. */
  readonly phrase: string;
  readonly keeps: readonly (readonly SlurGroup[])[];
  readonly flips: readonly (readonly SlurGroup[])[];
}

/** What is asked of a tune's bowing: an anchor, a sign, a repeat that starts as before. */
export type Demand =
  | { readonly kind: 'anchor'; readonly id: string; readonly pass: number }
  | { readonly kind: 'sign'; readonly event: number; readonly pass: number }
  | { readonly kind: 'repeat'; readonly part: number }
  /** A short opening bar is laid so that the next bar starts down. */
  | { readonly kind: 'opening' };

/** All the demands on a tune met at once, at the least cost; or why they cannot be. */
export type WholeTune =
  | { readonly kind: 'solved'; readonly changes: readonly Edit[]; readonly cost: readonly number[] }
  /**
   * Demands that no bowing meets together: the fewest there are, where at most 20,000 sets have to
   * be looked through to find them.
   */
  | { readonly kind: 'contradiction'; readonly demands: readonly Demand[] }
  /** The demands can be met, but not within the limits of the level. */
  | { readonly kind: 'beyond-limits' }
  /** More parities are free than can be run through. */
  | { readonly kind: 'too-many'; readonly free: number }
  /** Ties make a note begin in one pass and go on in another, so that its cells overlap. */
  | { readonly kind: 'unlike-passes' };

/** The bowing of one tune. */
export interface BowingStudy {
  readonly plan: StrokePlan;
  readonly anchors: readonly Anchor[];
  readonly repeats: readonly RepeatStudy[];
  readonly swaps: readonly Swaps[];
  /** Written notes whose stroke is not the same in every pass. */
  readonly varying: readonly number[];
  /** The whole tune mended at once; left out where nothing is amiss. */
  readonly whole?: WholeTune;
}
