import type { Anchor, Edit } from '../bowing/bowing.ts';
import { freeStretches } from '../bowing/find-lead-ins.ts';
import { type BowingContext, bowingContext } from '../bowing/lead-in-of.ts';
import { mendRegion } from '../bowing/mend-region.ts';
import { findMends, singleEdits } from '../bowing/mends.ts';
import { flips } from '../bowing/slur-edits.ts';
import { anchorFault } from '../bowing/troubles.ts';
import { at } from '../must.ts';
import type { Dice } from './dice.ts';
import { type ArriveDrill, type DrillAsk, drillLevels, type NoDrill } from './drill.ts';
import type { DrillSource } from './drill-source.ts';
import { type LaidBowing, layWithEdit, missedAt } from './lay-bowing.ts';

/**
 * Mend a wrong arrival with one change. Where the tune itself misses its anchor, that is the drill.
 * Where it arrives, one change that turns the bow is made first, somewhere in the notes shown, so
 * that it no longer does. Shown are the last bars before the anchor, as many as the level has, of a
 * time through that misses; more, where no single change in those would mend it.
 */
export function makeArrive(source: DrillSource, ask: DrillAsk, dice: Dice): ArriveDrill | NoDrill {
  const named = source.bowing.anchors.filter(a => ask.to === null || a.id === ask.to);
  if (named.length === 0) return 'no-anchor';
  const reached = named.filter(a => a.arrivals.length > 0);
  if (reached.length === 0) return 'anchor-not-reached';
  const { tune, performance, fingering, map, settings } = source;
  const context = bowingContext(tune, performance, fingering, map, settings);
  const asWritten = layWithEdit(source, null);
  for (const anchor of dice.shuffle(reached)) {
    const written = missedAt(asWritten, anchor).length > 0;
    const breaks: readonly (Edit | null)[] = written
      ? [null]
      : dice.shuffle(breakingEdits(source, context, asWritten, anchor, ask)).slice(0, mostTries);
    for (const broken of breaks) {
      const drill = drillOn(source, context, ask, anchor, broken);
      if (drill) return drill;
    }
  }
  return 'no-mend';
}

/** Breaks tried before a tune is given up. */
const mostTries = 12;

/** Single slur edits near the anchor that turn the bow on the way to it. */
function breakingEdits(
  source: DrillSource,
  context: BowingContext,
  tune: LaidBowing,
  anchor: Anchor,
  ask: DrillAsk,
): Edit[] {
  const { score, laid, passages } = tune;
  const bars = drillLevels.arrive[ask.level];
  return freeStretches(score, laid, passages, anchor).flatMap(stretch => {
    const from = shownFrom(source, laid.strokeOf, stretch, bars);
    const { form } = mendRegion(context, score, laid, from, stretch.end, ask.level);
    const events = source.performance.notes.slice(from, stretch.end).map(n => n.event);
    return singleEdits(form, events).filter(flips);
  });
}

/** The drill on one anchor with one break made, none where that is null; null where nothing mends it. */
function drillOn(
  source: DrillSource,
  context: BowingContext,
  ask: DrillAsk,
  anchor: Anchor,
  broken: Edit | null,
): ArriveDrill | null {
  const tune = layWithEdit(source, broken);
  const { score, laid, passages } = tune;
  const missed = missedAt(tune, anchor);
  const stretch = freeStretches(score, laid, passages, anchor).find(s => missed.includes(s.end));
  if (!stretch) return null;
  const pass = at(stretch.passes, 0);
  const targets = missed.map(anchorFault);
  for (const bars of [drillLevels.arrive[ask.level], Number.POSITIVE_INFINITY]) {
    const from = shownFrom(source, laid.strokeOf, stretch, bars);
    const region = mendRegion(context, score, laid, from, stretch.end, ask.level);
    const mends = findMends({ score, laid, passages, regions: [region], targets });
    if (mends.length === 0) continue;
    const notes = source.performance.notes.slice(from, stretch.end).map(n => n.event);
    return {
      ...ask,
      kind: 'arrive',
      anchor: anchor.id,
      first: anchor.first,
      wanted: anchor.direction,
      pass,
      notes,
      start: at(laid.strokes, at(laid.strokeOf, from)).direction,
      joined: notes.map((_, i) => i > 0 && laid.strokeOf[from + i] === laid.strokeOf[from + i - 1]),
      lifts: region.lifts.map(k => at(source.performance.notes, k).event),
      broken,
      mends,
    };
  }
  return null;
}

/** First sounded note of the last bars of a stretch, moved back to the beginning of its stroke. */
function shownFrom(
  { performance }: DrillSource,
  strokeOf: readonly number[],
  stretch: { readonly from: number; readonly end: number },
  bars: number,
): number {
  const last = at(performance.notes, stretch.end - 1).barPlayed;
  let from = stretch.end - 1;
  const near = (k: number): boolean => last - at(performance.notes, k).barPlayed < bars;
  while (from > stretch.from && near(from - 1)) from--;
  while (from > stretch.from && strokeOf[from] === strokeOf[from - 1]) from--;
  return from;
}
