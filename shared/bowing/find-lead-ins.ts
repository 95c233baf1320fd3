import { at } from '../must.ts';
import type { Direction } from './bowing.ts';
import type { BowingInput } from './bowing-input.ts';
import { type OpeningRule, openingRule } from './first-stroke.ts';
import { type LaidStrokes, strokeAt, strokeGroups } from './lay-strokes.ts';

/** The passage of an anchor, found in the tune. */
export interface SetPassage {
  readonly id: string;
  /** First and last event, both included. */
  readonly first: number;
  readonly last: number;
  readonly direction: Direction;
}

/** The notes before an anchor whose bowing is free: sounded notes from `from` (included) to `end` (not included). */
export interface FreeStretch {
  readonly from: number;
  readonly end: number;
  readonly start: Direction;
  /** Passes of the anchor that these notes lead into. */
  readonly passes: readonly number[];
  /**
   * An edit in these notes would also change the stroke on which they begin, so no plan for them alone is
   * right. Either they are played before that as well, with no fixed stroke between; or their strokes are
   * counted back from a sign after the anchor, and the anchor is missed.
   */
  readonly turnsItself: boolean;
}

/**
 * Finds the sounded notes at which a cell begins: the start of the tune, after a repeat sign, at an ending,
 * and wherever the note played next is not the note written next.
 */
export function cellStarts(score: BowingInput): ReadonlySet<number> {
  const { tune, performance } = score;
  const starts = new Set<number>(score.restarts);
  performance.bars.forEach((played, i) => {
    const bar = tune.bars[played.bar];
    const before = performance.bars[i - 1];
    const last = before && tune.bars[before.bar];
    const cut =
      !last ||
      bar?.opensRepeat ||
      last.closesRepeat > 1 ||
      before.bar + 1 !== played.bar ||
      last.endings.join() !== bar?.endings.join();
    if (cut) starts.add(played.first);
  });
  return starts;
}

/**
 * Finds the free notes before a sounded note: back to the last stroke that a sign, anchor, restart or cell
 * fixes. A repeat sign or ending just before the note does not end them, or there would be none.
 */
export function stretchBefore(
  score: BowingInput,
  laid: LaidStrokes,
  passages: readonly SetPassage[],
  cells: ReadonlySet<number>,
  note: number,
): { from: number; start: Direction } {
  const { notes } = score.performance;
  const inPassage = (k: number): boolean => {
    const e = at(notes, k).event;
    return passages.some(p => p.first <= e && e <= p.last);
  };
  const begins = (k: number): boolean => laid.strokeOf[k] !== laid.strokeOf[k - 1];
  const stated = (k: number): boolean => strokeAt(laid, k).stated !== null;
  const laidDown = downAfterOpening(score, note);
  let from = note;
  while (from > 0 && from !== laidDown) {
    const settledHere = from < note && begins(from) && (stated(from) || cells.has(from));
    if (settledHere || score.restarts.includes(from) || inPassage(from - 1)) break;
    from--;
  }
  // Notes of a slur that begins before the edge belong to what comes before.
  while (from > 0 && from < note && !begins(from)) from++;
  return { from, start: strokeAt(laid, from).direction };
}

/**
 * The note before or at `note` that a short opening bar reaches on a down-bow, however the bar is bowed; null
 * where no such rule holds.
 */
function downAfterOpening(score: BowingInput, note: number): number | null {
  const { from, rule } = openingBefore(score, note);
  return rule.kind === 'laid' && rule.downAt > from && rule.downAt <= note ? rule.downAt : null;
}

/** The strokes between the restarts around a note, and the rule for the first of them. */
function openingBefore(
  score: BowingInput,
  note: number,
): { readonly from: number; readonly groups: readonly number[][]; readonly rule: OpeningRule } {
  const stretch = score.restarts.findLastIndex(from => from <= note);
  const from = at(score.restarts, stretch);
  const end = score.restarts[stretch + 1] ?? score.performance.notes.length;
  const groups = strokeGroups(score, from, end);
  return { from, groups, rule: openingRule(score, groups, stretch === 0) };
}

/** The sign at or after `note` from which the strokes before it are counted back; null where there is none. */
function signCountedFrom(score: BowingInput, note: number): number | null {
  const { groups, rule } = openingBefore(score, note);
  if (rule.kind !== 'counted-back') return null;
  const sign = at(at(groups, rule.strokes), 0);
  return sign >= note ? sign : null;
}

/**
 * Finds the notes between a passage and the sign from which the strokes before it are counted back: an edit
 * there changes the strokes before it too.
 */
export function spansToSign(
  score: BowingInput,
  missed: readonly number[],
  passage: SetPassage,
): { readonly from: number; readonly end: number }[] {
  const { notes } = score.performance;
  return missed.flatMap(note => {
    const end = signCountedFrom(score, note);
    if (end === null) return [];
    let from = note;
    while (from < end && at(notes, from).event <= passage.last) from++;
    return from < end ? [{ from, end }] : [];
  });
}

/** Finds the free notes before every pass of an anchor; passes with the same notes and first stroke share one stretch. */
export function freeStretches(
  score: BowingInput,
  laid: LaidStrokes,
  passages: readonly SetPassage[],
  anchor: SetPassage,
): FreeStretch[] {
  const { notes } = score.performance;
  const cells = cellStarts(score);
  const found = new Map<string, FreeStretch>();
  for (const { note, direction } of laid.reached) {
    if (notes[note]?.event !== anchor.first) continue;
    const { from, start } = stretchBefore(score, laid, passages, cells, note);
    if (from === note) continue;
    const events = notes.slice(from, note).map(n => n.event);
    const key = `${start} ${events.join(' ')}`;
    const same = found.get(key);
    const settled = stretchBefore(score, laid, passages, new Set(), note).from;
    const turnsItself =
      notes.slice(settled, from).some(n => events.includes(n.event)) ||
      (direction !== anchor.direction && signCountedFrom(score, note) !== null);
    found.set(key, {
      from: same?.from ?? from,
      end: same?.end ?? note,
      start,
      passes: [...(same?.passes ?? []), at(notes, note).pass],
      turnsItself: turnsItself || same?.turnsItself === true,
    });
  }
  return [...found.values()];
}
