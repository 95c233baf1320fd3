import { editedBars } from '../music/edited-abc.ts';
import { playedOrder } from '../music/played-order.ts';
import type { Tune } from '../music/tune.ts';
import { applyEdit } from './apply-edit.ts';
import type { Edit } from './bowing.ts';
import { bowingInput, type LayRequest } from './bowing-input.ts';
import { harmOf, type MendSearch } from './mends.ts';
import { editText } from './slur-edits.ts';
import { type Troubles, troublesOf } from './troubles.ts';

/** Mends as they are offered: few enough to choose from, and how many more were found. */
export interface OfferedMends {
  readonly mends: readonly Edit[];
  readonly more: number;
}

export const noMends: OfferedMends = { mends: [], more: 0 };

/** The first mend as facts of a message: as `editText` writes it, as ABC, and how many there are. */
export function mendFacts(
  tune: Tune,
  { mends, more }: OfferedMends,
): { readonly mend: string; readonly abc: string; readonly mends: number } {
  const [first] = mends;
  return {
    mend: first ? editText(tune, first) : '',
    abc: first ? editAbc(tune, first) : '',
    mends: mends.length + more,
  };
}

/** What to write for an edit: `A1: (AB)cd; A2: d2 e2`. */
export const editAbc = (tune: Tune, edit: Edit): string =>
  editedBars(tune, applyEdit(tune, edit))
    .map(({ bar, abc }) => `${bar}: ${abc}`)
    .join('; ');

/** Mends offered for one trouble. */
const mostMends = 6;

/** How a mend is proved: what the strokes are laid from besides the tune, and the tune read anew. */
export interface Proof {
  readonly request: LayRequest;
  /** The tune as it reads once an edit is written into its ABC; null where it does not read as edited. */
  readonly readAgain: (tune: Tune, edited: Tune) => Tune | null;
}

/**
 * Of the mends that a search found, the first few changes of slurs and the first lift that hold once they
 * are written down: each is written into the tune, the tune is read and laid again, every time through,
 * and what is wrong with it is compared as the search compared it. Costs a reading of the tune for each that is offered.
 */
export function offeredMends(
  search: MendSearch,
  found: readonly Edit[],
  proof: Proof,
): OfferedMends {
  const before = troublesOf(search.score, search.laid, search.passages);
  let tried = 0;
  const firstOf = (edits: readonly Edit[], most: number): Edit[] => {
    const proved: Edit[] = [];
    for (const edit of edits) {
      if (proved.length === most) break;
      tried++;
      if (isProved(search, before, edit, proof)) proved.push(edit);
    }
    return proved;
  };
  const isLift = (edit: Edit): boolean => edit.kind === 'retake';
  const lift = firstOf(found.filter(isLift), 1);
  const mends = [
    ...firstOf(
      found.filter(e => !isLift(e)),
      mostMends - lift.length,
    ),
    ...lift,
  ];
  return { mends, more: found.length - tried };
}

function isProved(
  search: MendSearch,
  before: Troubles,
  edit: Edit,
  { request, readAgain }: Proof,
): boolean {
  const { tune } = search.score;
  const read = readAgain(tune, applyEdit(tune, edit));
  if (!read) return false;
  const score = bowingInput(read, playedOrder(read), request);
  const notes = score.performance.notes.length;
  return (
    notes === search.score.performance.notes.length && harmOf(search, before, edit, score) !== null
  );
}
