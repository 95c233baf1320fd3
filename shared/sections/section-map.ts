/** How a phrase stands to `of`, the earlier phrase that it is most like. See `kin-of.ts`. */
export type Kin = 'own' | 'same' | 'ending' | 'start' | 'varied' | 'moved';

/** A phrase: its bars, its label, and which earlier phrase it is like. */
export interface Phrase {
  /** Indices of its bars in written order, the pickup that leads into it counted in. */
  readonly bars: readonly number[];
  /** `A1-A2`: pickups left out of the name. */
  readonly name: string;
  readonly part: number;
  /** Event indices: first (included) to end (not included). */
  readonly first: number;
  readonly end: number;
  /** a, b, c; primes for other forms: a′. The teacher's, where given. */
  readonly label: string;
  readonly kin: Kin;
  /** Index of the phrase it is compared with; null when it is its own. */
  readonly of: number | null;
  /** Event index, in this phrase, of the first note that differs from `of`. */
  readonly firstDifference: number | null;
}

/** A phrase that comes more than once, written, and goes on differently. */
export interface Fork {
  readonly label: string;
  readonly goesOn: readonly { readonly after: number; readonly to: number }[];
}

/** The phrases of a tune in written order, and where two of them part ways. */
export interface SectionMap {
  /** Bars a phrase. */
  readonly unit: number;
  readonly phrases: readonly Phrase[];
  readonly forks: readonly Fork[];
  /** Phrase indices in the order in which a learner first needs them; the rest come free. */
  readonly toLearn: readonly number[];
}
