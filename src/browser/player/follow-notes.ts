import { at } from '../../../shared/must.ts';
import type { PlayedTune } from '../../../shared/sound/passage.ts';
import type { FollowedNote, SoundingPassage } from '../../../shared/sound/sounding.ts';

/** Highlights the sounding note on the page. */
export interface Follower {
  /** Shows the note at a time of a round, in seconds; null shows none. */
  readonly show: (sounding: SoundingPassage | null, seconds: number) => void;
}

/** Where a tune is drawn and mapped on the page. */
export interface FollowedPlaces {
  readonly notation: Element | null;
  /** The map's blocks, by phrase. */
  readonly blocks: ReadonlyMap<number, readonly Element[]>;
  /** The player itself: it shows which way the bow goes. */
  readonly player: Element;
}

/**
 * Makes a follower, which marks the sounding note and its stroke in the notation, the phrase in the map,
 * and the stroke's direction on the player. It changes the page only when the note changes.
 */
export function followNotes(played: PlayedTune, places: FollowedPlaces): Follower {
  let shownNote: number | null = null;
  let shownLine: Element | null = null;
  let marked: { element: Element; name: string }[] = [];
  const mark = (element: Element, name: string): void => {
    element.classList.add(name);
    marked.push({ element, name });
  };
  const phraseOf = new Map(played.map.phrases.flatMap((p, i) => p.bars.map(b => [b, i] as const)));

  const eventsOf = (note: number): readonly number[] => {
    const { event, tied } = at(played.performance.notes, note);
    return [event, ...tied];
  };
  const drawn = (event: number): readonly Element[] =>
    places.notation ? [...places.notation.querySelectorAll(`[data-n="${event}"]`)] : [];

  const show = (note: FollowedNote | null): void => {
    for (const { element, name } of marked) element.classList.remove(name);
    marked = [];
    shownNote = note?.note ?? null;
    places.player.removeAttribute('data-stroke');
    if (!note) return;
    const stroke = at(played.bowing.plan.strokes, note.stroke);
    for (const n of stroke.notes) {
      for (const e of eventsOf(n)) for (const el of drawn(e)) mark(el, 'in-stroke');
    }
    for (const e of eventsOf(note.note)) for (const el of drawn(e)) mark(el, 'sounding');
    places.player.setAttribute('data-stroke', stroke.direction);
    const { event } = at(played.performance.notes, note.note);
    const phrase = phraseOf.get(at(played.tune.events, event).bar);
    const blocks = phrase === undefined ? [] : (places.blocks.get(phrase) ?? []);
    for (const el of blocks) mark(el, 'sounding-phrase');
    const line = drawn(event)[0]?.closest('.stave') ?? null;
    keepInView(line, shownLine);
    shownLine = line;
  };

  return {
    show: (sounding, seconds) => {
      const note =
        sounding?.notes.findLast(n => n.at <= seconds && seconds < n.until + 0.03) ?? null;
      if ((note?.note ?? null) !== shownNote) show(note);
      if (!sounding) shownLine = null;
    },
  };
}

/**
 * Scrolls the sounding line into view, if the line before it is in view: a reader who has gone elsewhere
 * on the page is left there.
 */
function keepInView(line: Element | null, before: Element | null): void {
  if (!line || !before || line === before || isInView(line) || !isInView(before)) return;
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
  line.scrollIntoView({ block: 'center', behavior: still ? 'instant' : 'smooth' });
}

function isInView(line: Element): boolean {
  const { top, bottom } = line.getBoundingClientRect();
  return top >= 0 && bottom <= innerHeight;
}
