import { at } from '../must.ts';
import { editedJoins } from './apply-edit.ts';
import type { Direction, Edit, Retake, SlurGroup } from './bowing.ts';
import { type BowingInput, lastEvent } from './bowing-input.ts';
import type { SetPassage } from './find-lead-ins.ts';
import { type LaidStrokes, layScore, strokeAt } from './lay-strokes.ts';
import { type LeadInModel, strokesOf } from './lead-in-model.ts';
import { flips, junctionsChanged } from './slur-edits.ts';
import { bowingCost, strokeTerms } from './stroke-terms.ts';
import { type Troubles, troublesOf } from './troubles.ts';

/**
 * A mend is a single edit that removes a trouble in every pass and causes no new one.
 *
 * Only an edit between the last fixed stroke and the trouble can remove it, and only one that reverses all
 * later strokes: one that changes an odd number of junctions, or a retake. Each of these is made, the strokes
 * of the whole tune are computed again, and the troubles before and after are compared. So an edit that helps
 * in one pass and harms another is not a mend.
 */

/** Sounded notes from `from` to `end` (not included) in which edits are tried. */
export interface MendRegion {
  readonly from: number;
  readonly end: number;
  readonly form: LeadInModel;
  /** Sounded notes in the region or just after it before which the bow may lift. */
  readonly lifts: readonly number[];
}

/** A tune, its troubles, and the regions in which edits are tried. */
export interface MendSearch {
  readonly score: BowingInput;
  readonly laid: LaidStrokes;
  readonly passages: readonly SetPassage[];
  readonly regions: readonly MendRegion[];
  /** Keys of the troubles (`troubles.ts`) that a mend must remove. */
  readonly targets: readonly string[];
  /** Most mends to return; all where missing. */
  readonly most?: number;
  /** Whether an edit that newly reverses a part is no mend; otherwise it only ranks lower. */
  readonly keepRepeats?: boolean;
}

interface Candidate {
  readonly edit: Edit;
  /** Compared from the left; the lower ranks first. */
  readonly rank: readonly number[];
  /** x ⊕ x⁰: junctions that differ from the written bowing; compared last. */
  readonly unlike: string;
}

/**
 * Finds mends, best first: fewest junctions changed, then by cost as plans; retakes after slurs, fewest signs first.
 * Computes the strokes of the tune once for every edit tried.
 */
export function findMends(search: MendSearch): Edit[] {
  const { score, passages } = search;
  const before = troublesOf(score, search.laid, passages);
  const seen = new Set<string>();
  const mends: Candidate[] = [];
  for (const candidate of search.regions.flatMap(r => candidates(search, r)).sort(byRank)) {
    const key = JSON.stringify(candidate.edit);
    if (seen.has(key)) continue;
    seen.add(key);
    const reversed = harmOf(search, before, candidate.edit, editedScore(score, candidate.edit));
    if (reversed === null) continue;
    mends.push({ ...candidate, rank: [reversed, ...candidate.rank] });
    if (search.keepRepeats && mends.length === search.most) break;
  }
  return mends
    .sort(byRank)
    .slice(0, search.most)
    .map(m => m.edit);
}

/**
 * Counts the parts that an edit newly reverses in their second pass. null where the edit is no mend: a target
 * remains, a new trouble appears, or it is a retake at which the bow does not lift.
 */
export function harmOf(
  { passages, targets, keepRepeats }: MendSearch,
  before: Troubles,
  edit: Edit,
  edited: BowingInput,
): number | null {
  const laid = layScore(edited);
  const after = troublesOf(edited, laid, passages);
  if (targets.some(t => after.faults.has(t) || after.reversals.has(t))) return null;
  if ([...after.faults].some(f => !before.faults.has(f))) return null;
  if (edit.kind === 'retake' && !isLift(laid, edited, edit)) return null;
  const reversed = newReversals(before, after);
  return reversed > 0 && keepRepeats ? null : reversed;
}

const newReversals = (before: Troubles, after: Troubles): number =>
  [...after.reversals].filter(r => !before.reversals.has(r)).length;

/** Returns the input with one edit made; its notes and passes stay the same. */
export function editedScore(score: BowingInput, edit: Edit): BowingInput {
  if (edit.kind !== 'retake') return { ...score, joined: editedJoins(score.joined, edit) };
  const marks = [...score.marks];
  marks[edit.before] = edit.direction;
  if (edit.opening) marks[edit.opening.event] = edit.opening.direction;
  const { notes } = score.performance;
  const gaps = score.gaps.map(
    (gap, k) => gap || (k > 0 && lastEvent(at(notes, k - 1)) === edit.after),
  );
  return { ...score, marks, gaps };
}

function byRank(a: Candidate, b: Candidate): number {
  const t = a.rank.findIndex((x, i) => x !== b.rank[i]);
  if (t >= 0) return at(a.rank, t) - at(b.rank, t);
  return a.unlike < b.unlike ? -1 : a.unlike > b.unlike ? 1 : 0;
}

function candidates(search: MendSearch, region: MendRegion): Candidate[] {
  const { score, laid } = search;
  const { form } = region;
  const { notes } = score.performance;
  const events = notes.slice(region.from, region.end).map(n => n.event);
  const terms = strokeTerms(form);
  const alike = '0'.repeat(form.written.length);
  const slurs = singleEdits(form, events)
    .filter(flips)
    .map((edit): Candidate => {
      const joined = editedJoins(score.joined, edit);
      const bowing = form.written.map((_, j) => !joined[at(events, j + 1)]);
      const [, ...rest] = bowingCost(form, bowing, terms);
      const rank = [0, junctionsChanged(edit), ...rest];
      return { edit, rank, unlike: unlikeText(bowing, form.written, alike) };
    });
  const lifts = region.lifts.flatMap<Candidate>(k => {
    const { event } = at(notes, k);
    const edit = liftBefore(score, laid, k);
    const against = score.marks[event] && score.marks[event] !== edit.direction;
    if (score.joined[event] || against) return [];
    const toWrite = (edit.after === null ? 0 : 1) + (edit.opening ? 1 : 0);
    return [{ edit, rank: [1, toWrite, 0, 0, 0, 0], unlike: String(1e6 - k).padStart(8, '0') }];
  });
  return [...slurs, ...lifts];
}

/** Makes a lift before sounded note `k`: in the direction of its anchor or sign, else in that of the stroke before. */
export function liftBefore(score: BowingInput, laid: LaidStrokes, k: number): Retake {
  const { notes } = score.performance;
  const { event } = at(notes, k);
  const after = score.gaps[k] ? null : lastEvent(at(notes, k - 1));
  const stated = score.anchored.get(event) ?? score.marks[event];
  const direction = stated ?? strokeAt(laid, k - 1).direction;
  const opening = openingSign(score, laid, k, direction);
  return { kind: 'retake', after, before: event, direction, opening };
}

/**
 * The sign that the first note after a restart needs for a lift at sounded note `k`, so that the strokes before
 * are not counted back from the lift's sign; null where an earlier sign or `start=` fixes them, or where the
 * note has been played before on that stroke, so that counting back from it changes nothing.
 */
function openingSign(
  score: BowingInput,
  laid: LaidStrokes,
  k: number,
  direction: Direction,
): Retake['opening'] {
  const { restarts, performance, marks, start } = score;
  const stretch = restarts.findLastIndex(from => from <= k);
  const from = at(restarts, stretch);
  if (stretch === 0 && start) return null;
  const { event } = at(performance.notes, k);
  const before = performance.notes.slice(from, k);
  const earlier = before.findIndex(n => n.event === event);
  if (earlier >= 0 && strokeAt(laid, from + earlier).direction === direction) return null;
  if (earlier === 0 || before.some(n => marks[n.event])) return null;
  return { event: at(before, 0).event, direction: strokeAt(laid, from).direction };
}

/** Whether the bow starts again in the same direction there, in at least one pass. */
const isLift = (laid: LaidStrokes, { performance }: BowingInput, { before }: Retake): boolean =>
  performance.notes.some(({ event }, k) => event === before && strokeAt(laid, k).retake);

/** x ⊕ x⁰ of an edit as text. `alike` is that of the written bowing: zeros only. */
function unlikeText(
  bowing: readonly boolean[],
  written: readonly boolean[],
  alike: string,
): string {
  let text = '';
  let from = 0;
  for (let j = 0; j < bowing.length; j++) {
    if (bowing[j] === written[j]) continue;
    text += `${alike.slice(from, j)}1`;
    from = j + 1;
  }
  return text + alike.slice(from);
}

/** Lists every single edit of a bowing that keeps the limits. `events`: event indices of its notes. */
export function singleEdits(form: LeadInModel, events: readonly number[]): Edit[] {
  if (form.notes < 2) return [];
  const { lastFrom } = strokeTerms(form);
  const runs = strokesOf(form.written).filter(([from, last]) => last > from);
  const group = (from: number, last: number): SlurGroup => events.slice(from, last + 1);
  const edits: Edit[] = [];
  for (let i = 0; i < form.notes; i++) {
    const last = lastFrom(i);
    for (let j = i + 1; j <= last; j++) {
      const met = runs.filter(([from, end]) => from <= j && end >= i);
      const [a, b] = met;
      if (!a) edits.push({ kind: 'slur', notes: group(i, j) });
      else if (!b) {
        const grows = i <= a[0] && j >= a[1] && j - i > a[1] - a[0];
        if (grows && (i === a[0] || j === a[1])) {
          edits.push({ kind: 'lengthen', from: group(a[0], a[1]), to: group(i, j) });
        }
      } else if (met.length === 2 && a[0] === i && b[1] === j && a[1] + 1 === b[0]) {
        edits.push({ kind: 'merge', from: met.map(([f, l]) => group(f, l)), to: group(i, j) });
      }
    }
  }
  for (const [from, last] of runs) {
    const whole = group(from, last);
    edits.push({ kind: 'drop', notes: whole });
    for (let j = from + 1; j < last; j++) {
      edits.push({ kind: 'shorten', from: whole, to: group(from, j) });
      edits.push({ kind: 'shorten', from: whole, to: group(j, last) });
      if (j + 1 < last) {
        edits.push({ kind: 'split', from: whole, to: [group(from, j), group(j + 1, last)] });
      }
    }
  }
  return edits;
}
