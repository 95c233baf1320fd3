import { editedBars } from '../music/edited-abc.ts';
import { playedOrder } from '../music/played-order.ts';
import type { Tune } from '../music/tune.ts';
import { applyEdit } from './apply-edit.ts';
import type { Edit } from './bowing.ts';
import { bowingInput, type LayRequest } from './bowing-input.ts';
import { harmOf, type MendSearch } from './mends.ts';
import { editText } from './slur-edits.ts';
import { type Troubles, troublesOf } from './troubles.ts';

/** The mends that are offered for a trouble, and the number of further ones found. */
export interface OfferedMends {
  readonly mends: readonly Edit[];
  readonly more: number;
}

/** No mends. */
export const noMends: OfferedMends = { mends: [], more: 0 };

/** Facts of a message about mends: the first as text (`editText`) and as ABC, both empty for none, and the number of all. */
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

/** Writes the bars of an edit as ABC: `A1: (AB)cd; A2: d2 e2`. */
export const editAbc = (tune: Tune, edit: Edit): string =>
  editedBars(tune, applyEdit(tune, edit))
    .map(({ bar, abc }) => `${bar}: ${abc}`)
    .join('; ');

/** Most mends offered for one trouble. */
const mostMends = 6;

/** What a proof of a mend needs. */
export interface Proof {
  readonly request: LayRequest;
  /** Writes an edited tune as ABC and reads that; null where the result differs from the edited tune. */
  readonly readAgain: (tune: Tune, edited: Tune) => Tune | null;
}

/**
 * Returns the first few changes of slurs and the first retake of a search that hold in ABC: each is written
 * into the tune, the tune is read again, its strokes are computed in every pass, and its troubles are compared
 * as in the search. Costs one reading of the tune for each mend that is tried.
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
