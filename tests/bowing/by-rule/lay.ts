import type { Performance } from '../../../shared/music/performance.ts';
import type { Direction, Tune } from '../../../shared/music/tune.ts';
import { slurredTo } from './slurs.ts';

/** The strokes of a tune as section 4 of the guide counts them, written from its words alone. */
export interface Laid {
  /** Of each sounded note: its stroke's number from 0, and the way the bow goes. */
  readonly strokes: readonly { readonly stroke: number; readonly up: boolean }[];
  /** Of each note that begins an anchor: the way the bow comes to it. */
  readonly arrivals: ReadonlyMap<number, boolean>;
  /** Sounded notes with a sign that the count does not reach. */
  readonly conflicts: readonly number[];
  /** Sounded notes at which an anchor stands against the signs. */
  readonly against: readonly number[];
}

const isUp = (d: Direction): boolean => d === 'up';

export function layByRule(
  tune: Tune,
  { notes, bars }: Performance,
  anchors: ReadonlyMap<number, Direction>,
): Laid {
  const slurred = slurredTo(tune);
  const heads: number[] = [];
  const strokeOf = notes.map((note, k) => {
    const was = notes[k - 1];
    const lastOfWas = was && (was.tied.at(-1) ?? was.event);
    const goesOn = k > 0 && slurred.get(note.event) === lastOfWas && !anchors.has(note.event);
    if (!goesOn) heads.push(k);
    return heads.length - 1;
  });
  const sign = (s: number): boolean | null => {
    const event = tune.events[notes[heads[s] ?? -1]?.event ?? -1];
    return event?.kind === 'note' && event.mark ? isUp(event.mark) : null;
  };
  const signs = heads.map((_, s) => sign(s));
  const hasTime = (s: number): boolean => notes[heads[s] ?? -1]?.afterGap === true;

  const up: boolean[] = [];
  const arrivals = new Map<number, boolean>();
  const conflicts: number[] = [];
  const against: number[] = [];
  let statedBefore = false;
  for (const [s, head] of heads.entries()) {
    const counted: boolean = s === 0 ? firstUp() : !up[s - 1];
    const own = signs[s] ?? null;
    const anchor = anchors.get(notes[head]?.event ?? -1);
    const lifts = statedBefore || hasTime(s);
    if (anchor === undefined) {
      if (own !== null && own !== counted && s > 0 && !lifts) conflicts.push(head);
      up.push(own ?? counted);
      statedBefore = own !== null;
      continue;
    }
    const wanted = isUp(anchor);
    const contradicted = isContradicted(s, wanted, counted);
    if (contradicted) against.push(head);
    arrivals.set(head, own !== null && (lifts || contradicted) ? own : counted);
    up.push(contradicted ? (own ?? counted) : wanted);
    statedBefore = !contradicted || own !== null;
  }
  return {
    strokes: strokeOf.map(stroke => ({ stroke, up: up[stroke] === true })),
    arrivals,
    conflicts,
    against,
  };

  /** Signs say the other stroke: the one on the anchor; or the count, and the next sign counted back. */
  function isContradicted(s: number, wanted: boolean, counted: boolean): boolean {
    const own = signs[s] ?? null;
    if (own !== null) return own !== wanted;
    const next = signs.findIndex((x, t) => t > s && x !== null);
    if (next < 0 || counted === wanted || hasTime(next)) return false;
    const back = (next - s) % 2 === 0 ? signs[next] : !signs[next];
    return back !== wanted;
  }

  function firstUp(): boolean {
    const first = signs.findIndex(x => x !== null);
    if (first >= 0) return first % 2 === 0 ? signs[first] === true : signs[first] !== true;
    const opening = tune.bars[bars[0]?.bar ?? -1];
    if (!opening || !bars[0]) return false;
    const full = opening.meter.beats / opening.meter.unit;
    const short = !opening.meter.free && opening.length.n / opening.length.d < full - 1e-9;
    const rests = tune.events[opening.first]?.kind === 'rest';
    const next = bars[0].end;
    const laidBack = (opening.pickup || short || rests) && next > 0 && next < notes.length;
    return laidBack && (strokeOf[next] ?? 0) % 2 === 1;
  }
}
