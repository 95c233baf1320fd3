import type { Anchor } from '../bowing/bowing.ts';
import { turned } from '../bowing/lead-in-model.ts';
import { at } from '../must.ts';
import type { Dice } from './dice.ts';
import {
  type DrillAsk,
  drillLevels,
  type IntoDrill,
  type IntoStep,
  type NoDrill,
} from './drill.ts';
import { type DrillSource, partOf } from './drill-source.ts';

/**
 * Into the anchor, chaining backward: first the last bar before it, then the last two, four and
 * eight. For each, the stroke to begin on so that the anchor comes on its own stroke.
 *
 * A start d, s strokes and r lifts later the bow is about to move d ⊕ (s + r) mod 2. As laid, the
 * bow comes to the anchor rightly or not; where not, every stroke on the way must be turned, which
 * can only be done by beginning the other way, and only where no sign on the way settles it anew.
 * So such steps end at the last sign. `d2 Bc AG` with one slur, up to an anchor that wants an
 * up-bow: four strokes, an even number, so begin up.
 */
export function makeInto(source: DrillSource, ask: DrillAsk, dice: Dice): IntoDrill | NoDrill {
  const named = source.bowing.anchors.filter(a => ask.to === null || a.id === ask.to);
  if (named.length === 0) return 'no-anchor';
  const reached = named.filter(a => a.arrivals.length > 0);
  if (reached.length === 0) return 'anchor-not-reached';
  for (const anchor of dice.shuffle(reached)) {
    for (const arrival of dice.shuffle(anchor.arrivals)) {
      const steps = stepsInto(source, ask, anchor, arrival);
      if (steps.length === 0) continue;
      const { first, direction: wanted, id } = anchor;
      const { pass, agrees } = arrival;
      return { ...ask, kind: 'into', anchor: id, first, wanted, pass, agrees, steps };
    }
  }
  return 'no-way-there';
}

/** The steps for one arrival, from the nearest bar back; empty where none can be begun so. */
function stepsInto(
  source: DrillSource,
  ask: DrillAsk,
  anchor: Anchor,
  { pass, agrees }: Anchor['arrivals'][number],
): IntoStep[] {
  const { performance, bowing } = source;
  const { strokes, strokeOf } = bowing.plan;
  const { notes } = performance;
  const end = notes.findIndex(n => n.event === anchor.first && n.pass === pass);
  const { barPlayed } = at(notes, end);
  const found: IntoStep[] = [];
  for (const bars of drillLevels.into[ask.level]) {
    const from = startOf(source, barPlayed, bars);
    if (from === null || from >= end || from === found.at(-1)?.from) continue;
    const onWay = strokes.slice(at(strokeOf, from), at(strokeOf, end));
    if (!agrees && (onWay.some(s => s.stated) || restartsOn(source, from, end))) continue;
    const [first, later] = [at(onWay, 0), onWay.slice(1)];
    found.push({
      bars,
      from: at(notes, from).event,
      notes: notes.slice(from, end).map(n => n.event),
      strokes: onWay.length,
      lifts: later.filter(s => s.retake).length,
      start: agrees ? first.direction : turned(first.direction),
    });
  }
  return found;
}

/**
 * Sounded note on which to begin so many full bars before a played bar: the first there that begins
 * a stroke. null where the tune has no more bars before it.
 */
function startOf(source: DrillSource, barPlayed: number, back: number): number | null {
  const { performance, bowing, tune } = source;
  const { strokeOf } = bowing.plan;
  let bar = barPlayed;
  for (let left = back; left > 0; ) {
    bar--;
    const played = performance.bars[bar];
    if (!played) return null;
    if (!at(tune.bars, played.bar).pickup) left--;
  }
  let from = at(performance.bars, bar).first;
  while (from > 0 && from < strokeOf.length && strokeOf[from] === strokeOf[from - 1]) from++;
  return from;
}

/** Whether the strokes start anew between two sounded notes, since another part begins there. */
function restartsOn(
  { tune, performance, settings }: DrillSource,
  from: number,
  end: number,
): boolean {
  if (settings.restart !== 'part') return false;
  const [first, last] = [at(performance.notes, from), at(performance.notes, end)];
  return first.pass !== last.pass || partOf(tune, first.event) !== partOf(tune, last.event);
}
