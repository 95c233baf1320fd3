import type { Anchor } from '../bowing/bowing.ts';
import { turned } from '../bowing/lead-in-form.ts';
import type { Dice } from './dice.ts';
import {
  type DrillAsk,
  drillLevels,
  type IntoDrill,
  type IntoStep,
  type NoDrill,
} from './drill.ts';
import type { DrillSource } from './drill-source.ts';

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
  const barPlayed = notes[end]?.barPlayed ?? 0;
  const found: IntoStep[] = [];
  for (const bars of drillLevels.into[ask.level]) {
    const from = startOf(source, barPlayed, bars);
    if (from === null || from >= end || from === found.at(-1)?.from) continue;
    const onWay = strokes.slice(strokeOf[from] ?? 0, strokeOf[end] ?? 0);
    const [first, ...later] = onWay;
    if (!first || (!agrees && (onWay.some(s => s.stated) || restartsOn(source, from, end))))
      continue;
    found.push({
      bars,
      from: notes[from]?.event ?? -1,
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
    if (tune.bars[played.bar]?.pickup === false) left--;
  }
  let from = performance.bars[bar]?.first ?? 0;
  while (from > 0 && from < strokeOf.length && strokeOf[from] === strokeOf[from - 1]) from++;
  return from;
}

/** Strokes start anew somewhere between two sounded notes, since another part begins there. */
function restartsOn(
  { tune, performance, settings }: DrillSource,
  from: number,
  end: number,
): boolean {
  if (settings.restart !== 'part') return false;
  const part = (k: number) =>
    tune.bars[tune.events[performance.notes[k]?.event ?? -1]?.bar ?? -1]?.part;
  return (
    part(from) !== part(end) ||
    (performance.notes[from]?.pass ?? 1) !== (performance.notes[end]?.pass ?? 1)
  );
}
